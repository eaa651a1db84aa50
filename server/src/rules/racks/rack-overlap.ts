import { type Placed, type RackFigures, type Side, meet, unitWords } from '../../racks/racks.ts';
import { OPENING } from '../../standards/rack.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { list, millimetres } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rackOverlap: Rule = {
  id: 'rack-overlap',
  severity: 'error',
  due: 'item',
  summary: 'Two devices have the same unit of a rack.',
  why: `What takes the whole width has its units for itself. Move one of them to units that are free. Devices that stand side
by side on a shelf share a unit: with the \`width\` of each given, it is seen whether they fit between the posts. A
device at the front and one at the rear share a unit as long as their depths together fit into the rack.`,
  source: 'IEC 60297-3-100 (450 mm between the posts; from secondary pages)',
  check({ plan }: RuleContext, report: Report): void {
    for (const figures of plan.racks) {
      if (figures.placed.length < 2) continue;
      const sides = { front: byUnit(figures, 'front'), rear: byUnit(figures, 'rear') };
      for (const placed of figures.placed) {
        const found = beside(figures, sides[placed.side], placed) ?? behind(figures, sides, placed);
        if (found !== undefined) report(found);
      }
    }
  },
};

type ByUnit = ReadonlyMap<number, readonly Placed[]>;

function byUnit({ placed }: RackFigures, side: Side): ByUnit {
  const found = new Map<number, Placed[]>();
  for (const one of placed) {
    if (one.side !== side) continue;
    for (let unit = one.first; unit <= one.last; unit++) found.set(unit, [...(found.get(unit) ?? []), one]);
  }
  return found;
}

/** What has one of its units already, at the same side. */
function beside(figures: RackFigures, units: ByUnit, placed: Placed): Finding | undefined {
  for (let unit = placed.first; unit <= placed.last; unit++) {
    const all = units.get(unit) ?? [];
    const [first] = all;
    if (first === undefined || first === placed) continue;
    const widths = all.map(({ device }) => device.mounting.width);
    const wide = widths.reduce<number>((sum, width) => sum + (width ?? 0), 0);
    const isSaid = !widths.includes(undefined);
    if (isSaid && wide <= OPENING) continue;
    const side = placed.side === 'rear' ? ' at the rear' : '';
    const place = `${unitWords({ first: unit, last: unit })} of ${figures.rack.name}${side}`;
    const names = all.map(({ device }) => device.name);
    return {
      at: placeOf(placed.device.item, ['unit']),
      about: [placed.device.name, first.device.name, figures.rack.name],
      message: isSaid
        ? `${list(names)} are ${millimetres(wide)} wide together in ${place}; between the posts are ${OPENING} mm. Move one of them.`
        : `${place} has ${first.device.name} already. Move one of them, or give the \`width\` of each if they stand side by side.`,
      related: [
        { at: placeOf(first.device.item, ['unit']), message: `${first.device.name} is in ${unitWords(first)}` },
      ],
      fixes: () => moves(figures, placed),
    };
  }
  return undefined;
}

/** What is in the way from the other side; told at the one at the rear. */
function behind({ rack }: RackFigures, sides: Record<Side, ByUnit>, placed: Placed): Finding | undefined {
  const own = placed.device.mounting.depth;
  if (placed.side === 'front' || own === undefined || rack.depth === undefined) return undefined;
  for (let unit = placed.first; unit <= placed.last; unit++) {
    for (const { device } of sides.front.get(unit) ?? []) {
      const { depth } = device.mounting;
      if (depth === undefined || depth + own <= rack.depth) continue;
      return {
        at: placeOf(placed.device.item, ['unit']),
        about: [placed.device.name, device.name, rack.name],
        message:
          `${device.name} in front is ${millimetres(depth)} deep and this ${millimetres(own)}; ${rack.name} is ` +
          `${millimetres(rack.depth)} deep. Move one of them to other units.`,
        related: [{ at: placeOf(device.item, ['unit']), message: `${device.name} is in front of it` }],
      };
    }
  }
  return undefined;
}

/** To the nearest units that are free at both sides. */
function moves({ rack, placed }: RackFigures, { device, first, last }: Placed): ReturnType<typeof fixOf> {
  const high = last - first + 1;
  const others = placed.filter((other) => other.device !== device);
  const fits = Array.from({ length: Math.max(0, (rack.units ?? 0) - high + 1) }, (_, index) => index + 1)
    .map((unit) => ({ device, first: unit, last: unit + high - 1, side: device.mounting.side }))
    .filter((wanted) => others.every((other) => !meet(other, wanted)))
    .sort((a, b) => Math.abs(a.first - first) - Math.abs(b.first - first));
  const [nearest] = fits;
  return nearest === undefined
    ? []
    : fixOf(`Move ${device.name} to ${unitWords(nearest)}`, setValue(device.item, ['unit'], String(nearest.first)));
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
