import { portTypes } from '../../standards/poe.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { portName } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

/** Devices that take power and feed nobody. */
const POWERED: readonly string[] = ['camera', 'display', 'tuner', 'computer'];

export const poeOfSwitch: Rule = {
  id: 'poe-of-switch',
  severity: 'warning',
  summary: 'A powered device has the PoE type of a switch port, instead of a class.',
  why: `\`af\`, \`at\` and \`bt\` say what a port can feed. A powered device has a class, \`poe: {class: 3}\`, which
is on its label; without one, its power is missing from every sum.`,
  source: 'IEEE 802.3 clauses 33 and 145: power sourcing equipment has a type, a powered device a class (from memory)',
  check({ site }: RuleContext, report: Report): void {
    for (const port of site.ports) {
      const { device, pse, keyPath } = port;
      if (pse === undefined || device.kind === undefined || !POWERED.includes(device.kind)) continue;
      const most = portTypes[pse].maxClass;
      report({
        at: placeOf(device.item, [...keyPath, 'poe']),
        message:
          `${pse} says what a port of a switch can feed, and ${asName(device.name)} is a ${device.kind}, which takes power: how ` +
          `much is not said, so it is in no sum. Write the class on its label, such as \`poe: {class: ${most}}\`, the ` +
          `most that ${pse} feeds.`,
        acceptAt: [device.name, portName(port)],
        fixes: () =>
          fixOf(
            `Say that it is of class ${most}, the highest that ${pse} feeds`,
            setValue(device.item, [...keyPath, 'poe'], `{class: ${most}}`),
          ),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, poe: at}}}
  paddock-cam: {kind: camera, poe: at}
#                                  ^^ at says what a port of a switch can feed, and paddock-cam is a camera
cables:
  - {from: core/1, to: paddock-cam}
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: paddock-cam}
`,
  },
];
