import { placeOf } from '../../site/item.ts';
import { canCarryPower, carriesPower } from '../../network/poe.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfPort } from '../../site/places.ts';
import { oppositePort } from '../../network/link.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const poeOverFibre: Rule = {
  id: 'poe-over-fibre',
  severity: 'error',
  summary: 'A device is to be powered over a cable that carries no power.',
  why: `Power over Ethernet needs the copper pairs of a category cable; fibre and direct attach carry none. Power the
device at its own end: by a media converter or small switch that feeds PoE there, or a listed supply of its own. Never
look into a fibre or connector. Work on mains wiring is for licensed people; outdoors and between buildings follow local
codes.`,
  source: 'IEEE 802.3 clauses 33 and 145: power over balanced cabling (from memory)',
  check({ network: { topology } }: RuleContext, report: Report): void {
    for (const link of topology.links) {
      const { type, item } = link.cable;
      if (canCarryPower(link)) continue;
      for (const powered of [link.a, link.b]) {
        if (powered.pd === undefined) continue;
        const { name } = powered.device;
        report({
          at: placeOf(item, [type === undefined ? 'to' : 'type']),
          message: `${asName(name)} stays dark: ${type === undefined || carriesPower(type) ? 'fibre' : type} carries no power. Feed it at its own end, or take copper.`,
          acceptAt: acceptAtPorts(powered, oppositePort(link, powered)),
          related: [{ at: placeOfPort(powered, 'poe'), message: `${asName(name)} is powered over its cable` }],
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: os2, length: 180 m}
#                                         ^^^ paddock-cam stays dark: os2 carries no power
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 80 m}
`,
  },
];
