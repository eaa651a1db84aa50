import { classFor, portTypes, powerClasses } from '../../standards/poe.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import { oppositePort } from '../../network/link.ts';
import { watts, asName } from '../../text/words.ts';
import { placeOfPort } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const poePowerOverClass: Rule = {
  id: 'poe-power-over-class',
  severity: 'warning',
  showAfter: 'value',
  summary: 'A device draws more than its power class allows.',
  why: `A switch may turn off a device that draws more than its class. One of the two figures is wrong: the data sheet
gives the class, and the greatest draw at the device, or at the supply, which is more.`,
  source: 'IEEE 802.3 clauses 33 and 145: power of the classes at the device (secondary)',
  check({ site, network }: RuleContext, report: Report): void {
    for (const port of site.ports) {
      const { device, pd, keyPath } = port;
      if (pd?.milliwatts === undefined) continue;
      const own = pd.class === undefined ? powerClasses[powerClasses.length - 1] : powerClasses[pd.class];
      if (own === undefined || pd.milliwatts <= own.pdMilliwatts) continue;
      const wanted = classFor(pd.milliwatts);
      report({
        at: placeOf(device.item, [...keyPath, 'poe', 'power']),
        message:
          `${asName(device.name)} draws ${watts(pd.milliwatts)}, and ` +
          `${pd.class === undefined ? 'the highest class, 8,' : `class ${own.class}`} allows ` +
          `${watts(own.pdMilliwatts)} at the device. ` +
          (wanted === undefined ? 'It cannot be powered over Ethernet.' : `That would be class ${wanted.class}.`),
        acceptAt: [device.name, portName(port)],
        ...(pd.class === undefined
          ? {}
          : { related: [{ at: placeOfPort(port, 'poe', 'class'), message: `class ${own.class}` }] }),
        fixes: () => {
          // A higher class helps only where the port feeds it.
          if (wanted === undefined || pd.class === undefined || !feeds(network, port, wanted.class)) return [];
          const edits = [setValue(device.item, [...keyPath, 'poe', 'class'], String(wanted.class))];
          return fixOf(`Make it class ${wanted.class}`, ...edits);
        },
      });
    }
  },
};

/** Whether the port at the other end, if that is known, feeds the class. */
function feeds({ topology }: RuleContext['network'], port: Port, wanted: number): boolean {
  const link = topology.linkAt(port);
  const type = link === undefined ? undefined : oppositePort(link, port).pse;
  return type === undefined || portTypes[type].maxClass >= wanted;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  yard-cam: {kind: camera, poe: {class: 3, power: 18 W}}
#                                                 ^^^^ yard-cam draws 18 W, and class 3 allows 13 W
`,
    fixed: `
devices:
  yard-cam: {kind: camera, poe: {class: 4, power: 18 W}}
`,
  },
];
