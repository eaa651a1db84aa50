import assert from 'node:assert/strict';
import { readSite } from '../../server/src/cli/sites.ts';
import { billOfMaterials } from '../../server/src/make/purchases/bill-of-materials.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { cutLength, stockLength } from '../../server/src/purchases/cut-length.ts';
import { purchasesOf } from '../../server/src/purchases/purchases.ts';
import { siteOf } from '../site-of.ts';

function bought(plan: Plan, group: string): string[] {
  return purchasesOf(plan)
    .lines.filter((line) => line.group === group)
    .map(({ what, count, length }) => `${count} × ${what}${length === undefined ? '' : ` (${length / 1000} m)`}`);
}

describe('Lengths that are bought', () => {
  // By hand: a tenth more, at least 2 m, in whole metres.
  for (const [planned, cut] of [
    [8, 10],
    [15, 17],
    [19, 21],
    [20, 22],
    [21, 24],
    [24, 27],
    [84, 93],
    [100, 110],
    [180, 198],
  ] as const)
    it(`${planned} m are cut from ${cut} m`, () => assert.equal(cutLength(planned * 1000), cut * 1000));

  it('a lead is the next that is sold, up to 5 m', () => {
    assert.deepEqual([100, 250, 900, 1000, 1001, 4000, 5000, 5001].map(stockLength), [
      250,
      250,
      1000,
      1000,
      1500,
      5000,
      5000,
      undefined,
    ]);
  });
});

describe('What a site takes', () => {
  const plan = planOf(readSite('test/fixtures/harrow-lane-0.1').folder.site());
  const { site } = plan;

  it('has each cable once, as a lead or as a cable to be laid', () => {
    const { lines, notSaid } = purchasesOf(plan);
    const pieces = lines
      .filter(({ group, what }) => group === 'cable' || (group === 'lead' && !what.includes('rack')))
      .reduce((sum, { count }) => sum + count, 0);
    assert.equal(pieces, site.cables.length);
    assert.deepEqual(notSaid, []);
  });

  // Counted in the files: three cables of 1 m; glass of 120 m and 180 m; 55 m of cat6a, 55 + 5.5 → 61.
  it('of the frozen sample are three leads of 1 m, two cables of glass and one of cat6a', () => {
    assert.deepEqual(
      bought(plan, 'lead').filter((text) => !text.includes('rack')),
      ['3 × cat6, 1 m'],
    );
    assert.deepEqual(
      bought(plan, 'cable').filter((text) => !text.includes('cat6,')),
      ['1 × cat6a, 61 m (61 m)', '1 × os2, 132 m (132 m)', '1 × os2, 198 m (198 m)'],
    );
  });

  it('is five disks of two sizes, and one spare of each', () => {
    const volumes = site.volumes.map(({ name, disks }) => [name, disks]);
    assert.deepEqual(volumes, [
      ['archive', 3],
      ['entrance', 2],
    ]);
    assert.deepEqual(bought(plan, 'disk'), ['2 × 6 TB', '1 × 6 TB, spare', '3 × 8 TB', '1 × 8 TB, spare']);
  });

  it('counts the ports of a panel that are needed, beside those that it has', () => {
    // Cables of the sample that name a port of panel-a, of its 24.
    const through = site.cables.flatMap((cable) => cable.through);
    assert.deepEqual(bought(plan, 'panel port'), [`${through.length} × panel-a, which has 24`]);
  });

  it('needs a pair of modules for a cable of glass whose modules are not said, and none at a converter', () => {
    const text = `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, medium: single-mode}, 2: {speed: 1 Gb/s, module: 1000base-lx10}}}
  barn: {kind: switch, ports: {1: {speed: 1 Gb/s, medium: single-mode}}}
  gate: {kind: media-converter, ports: {fibre: {speed: 1 Gb/s, medium: single-mode}, copper: {}}}
cables:
  - {from: core/1, to: barn/1, type: os2, length: 180 m}
  - {from: core/2, to: gate/fibre, type: os2, length: 300 m}`;
    assert.deepEqual(bought(planOf(siteOf(text)), 'module'), ['2 × 1 Gb/s over os2, 180 m', '1 × 1000base-lx10']);
  });

  it('says what is not said', () => {
    const text =
      'devices: {core: {kind: switch, ports: {1: {}}}, cam: {kind: camera}}\ncables: [{from: core/1, to: cam}]';
    assert.deepEqual(purchasesOf(planOf(siteOf(text))).notSaid, [
      'core/1 – cam: the length of the cable',
      'core/1 – cam: the type of the cable',
    ]);
  });

  it('is made as CSV and as a page, without a price', () => {
    const { files } = billOfMaterials.make(plan);
    assert.deepEqual(
      files.map(({ path }) => path),
      ['bill-of-materials.csv', 'bill-of-materials.html'],
    );
    for (const { text } of files) assert.doesNotMatch(text, /price|[€$£]/i);
  });
});
