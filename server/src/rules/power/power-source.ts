import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Edit, fixOf, remove } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { isPowerSource } from '../../supply/feeding.ts';
import { asName } from '../../text/words.ts';

export const powerSource: Rule = {
  id: 'power-source',
  severity: 'error',
  showAfter: 'value',
  summary: 'A device names something as its power source that is neither a UPS nor a circuit.',
  why: `\`from\` names the UPS or circuit that the device is plugged into. What a switch feeds by PoE follows from the cables and their ports, and need not be declared; without \`from\`, a device that no cable feeds is plugged into a socket of the mains. Until it is corrected, the
device counts as plugged into the mains.`,
  source: 'a rule of this language',
  check({ site }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      const from = device.ownPower?.from;
      const source = from === undefined ? undefined : site.deviceByName.get(from);
      // A device without a kind may be a source.
      if (source?.kind === undefined || isPowerSource(source)) continue;
      const edit: Edit | undefined = remove(device.item, ['power', 'from']);
      report({
        at: placeOf(device.item, ['power', 'from']),
        message:
          `${asName(source.name)} is of kind ${source.kind}, which has no sockets. Name a UPS or a circuit, or leave \`from\` out: PoE ` +
          'follows from the cables.',
        acceptAt: [device.name, source.name],
        related: [{ at: placeOf(source.item, ['kind']), message: `${asName(source.name)} is of kind ${source.kind}` }],
        ...(edit !== undefined && { fixes: () => fixOf('Leave `from` out', edit) }),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, poe-budget: 65 W, ports: {1-8: {poe: af}}}
  gate-cam: {kind: camera, poe: {class: 3}, power: {idle: 6 W, at-most: 12 W, from: core}}
#                                                                                   ^^^^ core is of kind switch, which has no sockets
`,
    fixed: `
devices:
  core: {kind: switch, poe-budget: 65 W, ports: {1-8: {poe: af}}}
  gate-cam: {kind: camera, poe: {class: 3}, power: {idle: 6 W, at-most: 12 W}}
`,
  },
];
