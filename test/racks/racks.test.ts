import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import type { RackFigures } from '../../server/src/racks/racks.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { explain } from '../../server/src/report/explain.ts';
import { folderOf } from '../site.ts';
import { siteOf } from '../site-of.ts';

const SITE = `
racks:
  cupboard: {units: 6, depth: 450 mm, bears: 20 kg}
  loft: {units: 4, numbered-from: top}
devices:
  recorder: {kind: server, rack: cupboard, unit: 1, units: 2, weight: 14 kg}
  panel-a: {kind: patch-panel, rack: cupboard, unit: 6, weight: 900 g}
  strip: {kind: patch-panel, rack: cupboard, unit: 6, side: rear}
  router: {kind: router, rack: cupboard}
  core: {kind: switch, rack: cupboard, unit: 6, units: 3}
  elsewhere: {kind: switch, unit: 1}
`;

describe('What is in a rack', () => {
  const [cupboard, loft] = planOf(siteOf(SITE)).racks;
  const names = (figures: RackFigures | undefined): string[] =>
    (figures?.placed ?? []).map(({ device, first, last, side }) => `${device.name} ${first}-${last} ${side}`);

  it('stands in its units, from the first on', () =>
    assert.deepEqual(names(cupboard), ['recorder 1-2 front', 'panel-a 6-6 front', 'strip 6-6 rear', 'core 6-8 front']));

  it('is known without its unit', () =>
    assert.deepEqual(
      cupboard?.elsewhere.map(({ name }) => name),
      ['router'],
    ));

  // By hand: six units without 1, 2 and 6; at the rear all but 6.
  it('leaves the others free', () => {
    assert.deepEqual(cupboard?.free, { front: [3, 4, 5], rear: [1, 2, 3, 4, 5] });
    assert.deepEqual(loft?.free, { front: [1, 2, 3, 4], rear: [1, 2, 3, 4] });
  });

  // By hand: 14 kg and 0.9 kg.
  it('weighs what it says', () => {
    assert.equal(cupboard?.weight, 14_900);
    assert.deepEqual(
      cupboard?.unweighed.map(({ name }) => name),
      ['strip', 'router', 'core'],
    );
  });

  it('is in the report', () => {
    const { racks } = reportOf(planOf(siteOf(SITE)));
    assert.deepEqual(
      racks.map(({ name, units, weight, bears }) => [name, units, weight, bears]),
      [
        ['cupboard', 6, 14.9, 20],
        ['loft', 4, 0, null],
      ],
    );
    assert.deepEqual(racks[0]?.devices.at(-1), { name: 'router', unit: null, units: 1, side: 'front' });
  });

  it('is explained', () => {
    const found = explain(planOf(siteOf(SITE)), ['racks', 'cupboard']);
    assert.ok('explanations' in found);
    assert.equal(
      found.explanations[0]?.answer,
      '3 of 6 U free at the front, 5 at the rear · 5 devices · 14.9 kg + ? of 20 kg',
    );
  });
});

// A number of units that no rack has is reported where it stands, and must not fill memory here.
describe('A rack of more units than there are', () => {
  it('has no units', () => {
    const [rack] = planOf(folderOf({ 'file:///a.site.yaml': 'racks: {tower: {units: 4000000000}}\n' }).site()).racks;
    assert.deepEqual(rack?.free, { front: [], rear: [] });
  });
});
