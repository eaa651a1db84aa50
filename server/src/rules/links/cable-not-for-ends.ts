import { connectorAt, connectorName, portAt, portName } from '../../site/model.ts';
import type { CableEnd, Site } from '../../site/model.ts';
import { placeOf } from '../../site/item.ts';
import { isCoax } from '../../standards/television/coax.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const cableNotForEnds: Rule = {
  id: 'cable-not-for-ends',
  severity: 'error',
  showAfter: 'item',
  summary: 'A cable joins a network port and a coax connector, or its type does not fit its ends.',
  why: `A network port takes copper or fibre, a television connector takes 75 Ω coax; one does not work with the
other. Correct the end, or the type.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, from, to, type } of site.cables) {
      const [a, b] = [sortOf(site, from), sortOf(site, to)];
      if (a === undefined || b === undefined) continue;
      if (a.sort !== b.sort) {
        const [network, coax] = a.sort === 'network' ? [a, b] : [b, a];
        report({
          at: placeOf(item, ['from']),
          message: `${network.name} is a network port, and ${coax.name} a connector for coax. Correct one of the ends.`,
          acceptAt: acceptAtItem(item),
        });
      } else if (type !== undefined && isCoax(type) !== (a.sort === 'coax')) {
        report({
          at: placeOf(item, ['type']),
          message:
            a.sort === 'coax'
              ? `${a.name} and ${b.name} are connectors for coax, and ${type} is a network cable. Take coax-6.`
              : `${a.name} and ${b.name} are network ports, and ${type} is a coax for television. Take a network cable.`,
          acceptAt: acceptAtItem(item),
        });
      }
    }
  },
};

/** The sort of cable that an end takes, and its name; `undefined` where it leads nowhere. */
function sortOf(site: Site, end: CableEnd | undefined): { sort: 'network' | 'coax'; name: string } | undefined {
  const port = portAt(site, end);
  if (port !== undefined) return { sort: 'network', name: portName(port) };
  const connector = connectorAt(site, end);
  return connector === undefined ? undefined : { sort: 'coax', name: connectorName(connector) };
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  parlour-outlet: {kind: outlet}
  parlour-tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: core/1, to: parlour-outlet/in}
#          ^^^^^^ core/1 is a network port, and parlour-outlet/in a connector for coax. Correct one of the ends.
  - {from: parlour-outlet/tv, to: parlour-tv/rf, type: cat6}
#                                                      ^^^^ parlour-outlet/tv and parlour-tv/rf are connectors for coax, and cat6 is a network cable. Take coax-6.
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  parlour-outlet: {kind: outlet}
  parlour-tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: core/1, to: parlour-tv, type: cat6}
  - {from: parlour-outlet/tv, to: parlour-tv/rf, type: coax-59, length: 2 m}
`,
  },
];
