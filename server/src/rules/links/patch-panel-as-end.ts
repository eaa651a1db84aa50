import {
  type Edit,
  type Fix,
  addElement,
  addEntry,
  fixOf,
  nameText,
  nodeAt,
  removeItem,
  setValue,
} from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { isUncabled } from '../../network/delivery.ts';
import { type Cable, type CableEnd, type Device, type Site, endName } from '../../site/model.ts';
import { formatQuantity } from '../../text/quantity.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const patchPanelAsEnd: Rule = {
  id: 'patch-panel-as-end',
  severity: 'error',
  showAfter: 'value',
  summary: 'A cable ends at a patch panel.',
  why: `A patch panel passes a cable on and sends nothing itself. A cable in a site is the whole run from port to port:
name the devices at both ends, the positions in between under \`through\`, and the length with its patch cords.`,
  source: 'common practice, no source',
  check({ site, network }: RuleContext, report: Report): void {
    const cabled = new Set(site.cables.flatMap(({ from, to }) => [from?.device, to?.device]));
    const isBare = ({ name }: Device): boolean => !cabled.has(name);
    for (const cable of site.cables) {
      for (const end of [cable.from, cable.to]) {
        if (end === undefined || !isPanel(site, end)) continue;
        const { device } = end;
        const position = endName(end);
        const followed = consequencesOf(network.causes, [cable.item]);
        // The device behind the panel must be one without a cable.
        const cutOff = lossesAt(network, site.devices.filter(isBare)).obstacles.filter(isUncabled);
        report({
          at: placeOf(cable.item, end.keyPath),
          message:
            `${device} is a patch panel, and a cable runs through it: name the devices at both ends of the whole ` +
            `run, and write \`through: [${position}]\`.`,
          acceptAt: [position, device],
          ...followed,
          entails: [...followed.entails, ...cutOff],
          fixes: () => joined(site, cable, end, position),
        });
      }
    }
  },
};

function isPanel(site: Site, { device }: CableEnd): boolean {
  return site.deviceByName.get(device)?.kind === 'patch-panel';
}

/** Joins the cable with the only other one that ends at the position. */
function joined(site: Site, cable: Cable, end: CableEnd, position: string): Fix[] {
  const others = site.cables.flatMap((other) =>
    [other.from, other.to].flatMap((at) =>
      at !== undefined && at !== end && at.device === end.device && at.port === end.port ? [{ other, at }] : [],
    ),
  );
  const [match] = others;
  if (match === undefined || others.length > 1 || match.other === cable || end.port === undefined) return [];
  const [first, firstEnd, second, secondEnd] =
    site.cables.indexOf(cable) < site.cables.indexOf(match.other)
      ? [cable, end, match.other, match.at]
      : [match.other, match.at, cable, end];
  const beyond = secondEnd === second.from ? second.to : second.from;
  if (beyond === undefined) return [];
  const edits: (Edit | undefined)[] = [setValue(first.item, firstEnd.keyPath, nameText(endName(beyond)))];
  if (first.length !== undefined && second.length !== undefined) {
    edits.push(setValue(first.item, ['length'], formatQuantity(first.length + second.length, 'length')));
  }
  const through = [position, ...second.through.map(endName)].map(nameText);
  edits.push(
    nodeAt(first.item, ['through'])?.kind === 'sequence'
      ? addElement(first.item, ['through'], through.join(', '))
      : addEntry(first.item, [], 'through', `[${through.join(', ')}]`),
  );
  if (first.type === undefined && second.type !== undefined) edits.push(addEntry(first.item, [], 'type', second.type));
  edits.push(removeItem(second.item));
  return fixOf(`Make one cable of the two at ${position}`, ...edits);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: panel-a/1, length: 2 m}
#                      ^^^^^^^^^ panel-a is a patch panel, and a cable runs through it
  - {from: panel-a/1, to: paddock-cam, type: cat6, length: 38 m}
#          ^^^^^^^^^ panel-a is a patch panel, and a cable runs through it
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, length: 40 m, type: cat6, through: [panel-a/1]}
`,
  },
];
