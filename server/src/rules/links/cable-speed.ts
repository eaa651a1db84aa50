import { cablesOf } from '../../network/link.ts';
import { isEthernetCable, leastCableType, reach } from '../../standards/cabling.ts';
import { moduleNamed } from '../../standards/modules.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { bitRate } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const cableSpeed: Rule = {
  id: 'cable-speed',
  severity: 'error',
  showAfter: 'item',
  summary: "A cable's type does not carry the speed of its link.",
  why: `The ports agree on the highest speed that both support, and neither knows the cable: the link comes up and drops
packets, or stays down. Use a cable of the type named in the message, or set the lower speed at a port.`,
  source: 'IEEE 802.3: least category of each BASE-T (secondary), fibre and direct attach (from memory)',
  check({ network }: RuleContext, report: Report): void {
    for (const { a, b, cable, capacity } of network.topology.links.flatMap(cablesOf)) {
      const { type } = cable;
      if (!isEthernetCable(type) || capacity === undefined || capacity === 0 || reach(type, capacity) !== undefined)
        continue;
      // medium-mismatch reports fibre that a module is not made for.
      const modules = [a, b].flatMap(({ module }) => (module === undefined ? [] : moduleNamed(module)));
      if (modules.some((module) => module?.medium !== 'copper')) continue;
      const better = leastCableType(type, capacity, cable.length);
      const otherwise = type.startsWith('om')
        ? 'take single-mode fibre (os2), or a lower speed'
        : 'take fibre, or another speed';
      const remedy = better === undefined ? otherwise : `${better} does`;
      report({
        at: placeOf(cable.item, ['type']),
        message: `${type} does not carry ${bitRate(capacity)}; ${remedy}.`,
        acceptAt: acceptAtPorts(a, b),
        fixes: () => (better === undefined ? [] : fixOf(`Take ${better}`, setValue(cable.item, ['type'], better))),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 2.5 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
cables:
  - {from: core/1, to: barn/1, type: cat5, length: 20 m}
#                                    ^^^^ cat5 does not carry 2.5 Gb/s; cat5e does
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1: {speed: 2.5 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
cables:
  - {from: core/1, to: barn/1, type: cat5e, length: 20 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {9: {speed: 10 Gb/s, module: 10gbase-t}}}
  editor: {kind: computer, speed: 10 Gb/s}
cables:
  - {from: core/9, to: editor, type: cat5e, length: 30 m}
#                                    ^^^^^ cat5e does not carry 10 Gb/s; cat6 does
`,
    fixed: `
devices:
  core: {kind: switch, ports: {9: {speed: 10 Gb/s, module: 10gbase-t}}}
  editor: {kind: computer, speed: 10 Gb/s}
cables:
  - {from: core/9, to: editor, type: cat6, length: 30 m}
`,
  },
];
