import { type MountedDevice, unitWords } from '../../racks/racks.ts';
import { UNIT } from '../../standards/rack.ts';
import { placeOf } from '../../site/item.ts';
import type { Cable } from '../../site/model.ts';
import { metres, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const leadTooShort: Rule = {
  id: 'lead-too-short',
  severity: 'error',
  showAfter: 'value',
  summary: 'A lead is shorter than the way between its ends in the rack.',
  why: `Even pulled straight it does not reach; a lead that just reaches pulls at its plugs, and one across the faces is in
the way of all that is between. Count the way out to the side of the rack, along the post and back in: half a metre
more than the distance, as a rule.`,
  source: 'IEC 60297-3-100 (44.45 mm a unit); common practice',
  check({ plan, site }: RuleContext, report: Report): void {
    if (plan.racks.length === 0) return;
    const places = new Map(plan.racks.flatMap(({ placed }) => placed.map((one) => [one.device.name, one] as const)));
    for (const cable of site.cables) {
      if (cable.length === undefined) continue;
      const stops = stopsOf(cable, places);
      const least = wayAlong(stops);
      if (cable.length >= least) continue;
      const [from, to] = [stops[0], stops[stops.length - 1]];
      if (from === undefined || to === undefined) continue;
      report({
        at: placeOf(cable.item, ['length']),
        acceptAt: [from.device.name, to.device.name],
        message:
          `This lead is ${metres(cable.length)} long; from ${asName(from.device.name)} in ${unitWords(from)} to ${asName(to.device.name)} ` +
          `in ${unitWords(to)} are ${metres(Math.ceil(least / 10) * 10)} between the two, straight. Take a longer one, or move one of them.`,
      });
    }
  },
};

/** The devices along a cable that have a place in a rack. */
function stopsOf({ from, through, to }: Cable, places: ReadonlyMap<string, MountedDevice>): MountedDevice[] {
  return [from, ...through, to].flatMap((end) => (end === undefined ? [] : (places.get(end.device) ?? [])));
}

/** The least millimetres that the cable needs: the units in between, in one rack. */
function wayAlong(stops: readonly MountedDevice[]): number {
  let units = 0;
  for (const [index, b] of stops.entries()) {
    const a = stops[index - 1];
    if (a === undefined || a.device.mounting.rack !== b.device.mounting.rack) continue;
    units += Math.max(0, b.first - a.last - 1, a.first - b.last - 1);
  }
  return units * UNIT;
}

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 24}}
devices:
  panel-a: {kind: patch-panel, rack: cupboard, unit: 22, ports: {1-24: {}}}
  core: {kind: switch, rack: cupboard, unit: 20, ports: {1-8: {}}}
  recorder: {kind: server, rack: cupboard, unit: 1, units: 2}
cables:
  - {from: core/1, to: recorder, length: 0.5 m}
#                                        ^^^^^ This lead is 0.5 m long; from core in U 20 to recorder in U 1–2 are 0.76 m between the two
`,
    good: `
racks: {cupboard: {units: 24}}
devices:
  panel-a: {kind: patch-panel, rack: cupboard, unit: 22, ports: {1-24: {}}}
  core: {kind: switch, rack: cupboard, unit: 20, ports: {1-8: {}}}
  recorder: {kind: server, rack: cupboard, unit: 1, units: 2}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: recorder, length: 1.5 m}
  - {from: core/2, to: paddock-cam, through: [panel-a/2], length: 38 m}
`,
  },
];
