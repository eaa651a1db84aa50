import { placeOf } from '../../site/item.ts';
import { isCoax } from '../../standards/television/coax.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const throughNotPanel: Rule = {
  id: 'through-not-panel',
  severity: 'error',
  showAfter: 'value',
  summary: 'A cable runs through something that is not a patch panel.',
  why: `Only a patch panel passes a cable on as it is. At a switch or a media converter a cable ends
and another begins: write two cables.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, through, type } of site.cables) {
      for (const { device, keyPath } of through) {
        const kind = site.deviceByName.get(device)?.kind;
        if (kind === undefined || kind === 'patch-panel' || (ON_COAX.includes(kind) && isCoax(type))) continue;
        report({
          at: placeOf(item, keyPath),
          message:
            `${device} is ${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind.replace('-', ' ')}, and a cable ends there: it runs through patch panels only. ` +
            'Write a second cable from there on.',
          acceptAt: [device],
        });
      }
    }
  },
};

/** Kinds of device that a coax is led through. */
const ON_COAX: readonly string[] = ['power-inserter', 'isolator', 'earth-block'];

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  barn: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, through: [barn/1]}
#                                             ^^^^^^ barn is a switch
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, through: [panel-a/1]}
`,
  },
];
