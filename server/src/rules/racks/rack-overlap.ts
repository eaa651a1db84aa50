import { type Crowded, type TooDeep, clashesIn, freePlace } from '../../racks/clashes.ts';
import { type MountedDevice, type RackFigures, unitWords } from '../../racks/racks.ts';
import { OPENING } from '../../standards/rack.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { few, millimetres, asName } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rackOverlap: Rule = {
  id: 'rack-overlap',
  severity: 'error',
  showAfter: 'item',
  summary: 'Two devices have the same unit of a rack.',
  why: `What takes the whole width has its units for itself. Move one of them to units that are free. Devices that stand side
by side on a shelf share a unit: give the \`width\` of each, and it is checked whether they fit between the posts. A
device at the front and one at the rear share a unit as long as their depths together fit into the rack.`,
  source: 'IEC 60297-3-100 (450 mm between the posts; from secondary pages)',
  check({ plan }: RuleContext, report: Report): void {
    for (const figures of plan.racks) {
      if (figures.placed.length < 2) continue;
      const clashes = clashesIn(figures);
      for (const placed of figures.placed) {
        const crowded = clashes.crowded(placed);
        if (crowded !== undefined) {
          report(besideIt(figures, placed, crowded));
          continue;
        }
        const tooDeep = clashes.tooDeep(placed);
        if (tooDeep !== undefined) report(inFront(figures, placed, tooDeep));
      }
    }
  },
};

function besideIt(figures: RackFigures, placed: MountedDevice, { unit, all, width }: Crowded): Finding {
  const { rack } = figures;
  const { device, side } = placed;
  const [first = placed] = all;
  const names = all.map((one) => one.device.name);
  const place = `U ${unit} of ${asName(rack.name)}${side === 'rear' ? ' at the rear' : ''}`;
  return {
    at: placeOf(device.item, ['unit']),
    acceptAt: [device.name, first.device.name, rack.name],
    message:
      width === undefined
        ? `${place} has ${asName(first.device.name)} already. Move one of them, or give the \`width\` of each if they stand side by side.`
        : `${few(names, 4)} are ${millimetres(width)} wide together in ${place}; between the posts are ${OPENING} mm. Move one of them.`,
    related: [
      { at: placeOf(first.device.item, ['unit']), message: `${asName(first.device.name)} is in ${unitWords(first)}` },
    ],
    fixes: () => {
      const unitThere = freePlace(figures, placed);
      return unitThere === undefined
        ? []
        : fixOf(`Move ${asName(device.name)} to U ${unitThere}`, setValue(device.item, ['unit'], String(unitThere)));
    },
  };
}

function inFront(
  { rack }: RackFigures,
  { device }: MountedDevice,
  { front, depths: [before, behind] }: TooDeep,
): Finding {
  const other = front.device;
  return {
    at: placeOf(device.item, ['unit']),
    acceptAt: [device.name, other.name, rack.name],
    message:
      `${asName(other.name)} in front is ${millimetres(before)} deep and this ${millimetres(behind)}; ${asName(rack.name)} is ` +
      `${millimetres(rack.depth ?? 0)} deep. Move one of them to other units.`,
    related: [{ at: placeOf(other.item, ['unit']), message: `${asName(other.name)} is in front of it` }],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 12}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2}
  core: {kind: switch, rack: cupboard, unit: 3}
#                                            ^ U 3 of cupboard has recorder already. Move one of them
`,
    fixed: `
racks: {cupboard: {units: 12}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2}
  core: {kind: switch, rack: cupboard, unit: 4}
`,
  },
  {
    bad: `
racks: {cupboard: {units: 12}}
devices:
  router: {kind: router, rack: cupboard, unit: 3, width: 260 mm}
  core: {kind: switch, rack: cupboard, unit: 3, width: 210 mm}
#                                            ^ router and core are 470 mm wide together in U 3 of cupboard; between the posts are 450 mm
`,
    good: `
racks: {cupboard: {units: 12}}
devices:
  router: {kind: router, rack: cupboard, unit: 3, width: 220 mm}
  core: {kind: switch, rack: cupboard, unit: 3, width: 210 mm}
`,
  },
  {
    bad: `
racks: {cupboard: {units: 12, depth: 450 mm}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, depth: 400 mm}
  panel-b: {kind: patch-panel, rack: cupboard, unit: 2, side: rear, depth: 80 mm}
#                                                    ^ recorder in front is 400 mm deep and this 80 mm; cupboard is 450 mm deep
`,
    good: `
racks: {cupboard: {units: 12, depth: 450 mm}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, depth: 400 mm}
  core: {kind: switch, rack: cupboard, unit: 3, depth: 240 mm}
  panel-b: {kind: patch-panel, rack: cupboard, unit: 3, side: rear, depth: 80 mm}
`,
  },
];
