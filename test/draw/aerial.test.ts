// The aerial system: every figure is the report's, every outlet and receiver is there, and it can be read.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import fc from 'fast-check';
import { readSite } from '../../server/src/cli/sites.ts';
import { aerialSystem } from '../../server/src/draw/aerial.ts';
import { type Cell, type Drawing, USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { decibels, level } from '../../server/src/text/radio-words.ts';
import { planFrom } from '../report/paddock.ts';
import { faults } from './geometry.ts';
import { type Picture, picture } from './picture.ts';

function draw(plan: Plan): Picture {
  return picture(svgFile(aerialSystem.draw(plan, '', USUAL_OPTIONS)));
}

function text(cell: Cell | undefined): string {
  if (cell === undefined || typeof cell === 'string') return cell ?? '';
  return 'figure' in cell ? cell.figure : cell.names.map(({ name }) => name).join(', ');
}

function tableOf({ tables }: Drawing, title: string): string[][] {
  return (tables.find((table) => table.title === title)?.rows ?? []).map(({ cells }) => cells.map(text));
}

for (const sample of ['harrow-lane', 'first-draft'])
  describe(`the aerial system of ${sample}`, () => {
    const plan = planOf(readSite(`samples/${sample}`).folder.site());
    const { rf } = reportOf(plan);
    const ends = rf.points.filter(({ place }) => place !== 'way');
    const drawing = aerialSystem.draw(plan, '', USUAL_OPTIONS);
    const { things } = draw(plan);

    it('has the figures of the report in its table', () => {
      const known = (value: number | null): string => (value === null ? '?' : decibels(value));
      assert.deepEqual(
        tableOf(drawing, 'Outlets and receivers')
          .map((row) => row.slice(0, 6))
          .sort(),
        ends
          .map((point) => [
            point.at,
            point.multiplex,
            level(point.level),
            known(point.carrierToNoise),
            known(point.needed),
            known(point.margin),
          ])
          .sort(),
      );
    });

    it('has at each outlet and receiver the least margin of the report, and the levels', () => {
      for (const at of new Set(ends.map((point) => point.at))) {
        const own = ends.filter((point) => point.at === at);
        const said = things.find(({ names, at: name }) => names === 'ports' && name === at)?.texts.join(' ') ?? '';
        const least = Math.min(...own.map(({ margin }) => margin ?? Infinity));
        assert.ok(said.includes(`margin ${decibels(least)}`), `${at}: ${said}`);
        for (const of of [Math.min, Math.max])
          assert.ok(
            said.includes(level(of(...own.map((point) => point.level))).replace(' dBµV', '')),
            `${at}: ${said}`,
          );
      }
    });

    it('has the headroom of amplifiers of the report', () =>
      assert.deepEqual(
        tableOf(drawing, 'Amplifiers').map(([name, , strongest]) => [name, strongest]),
        rf.amplifiers.map(({ name, strongest }) => [name, level(strongest)]),
      ));

    it('has every device on coax', () => {
      const drawn = new Set(things.map(({ at }) => at.split('/')[0]));
      for (const { name, connectorByName } of plan.site.devices)
        assert.equal(drawn.has(name), connectorByName.size > 0, name);
    });

    it('can be read', () => assert.deepEqual(faults(draw(plan)), []));
  });

/** Splitters behind splitters, with outlets or receivers where nothing follows. */
type Wood = readonly Wood[];

function woods(depth: number): fc.Arbitrary<Wood> {
  return depth === 0 ? fc.constant([]) : fc.array(woods(depth - 1), { maxLength: 4 });
}

function siteOf(wood: Wood, level: number, name: string): string {
  const devices: string[] = [];
  const cables: string[] = [];
  let number = 0;
  const grow = (branch: Wood, from: string): void => {
    const own = `${name}-${number++}`;
    const cable = (to: string): string => `  - {from: ${from}, to: ${to}, type: coax-6, length: ${number} m}`;
    if (branch.length === 0) {
      devices.push(number % 2 === 0 ? `  ${own}: {kind: outlet}` : `  ${own}: {kind: display, inputs: {rf: {}}}`);
      cables.push(cable(`${own}/${number % 2 === 0 ? 'in' : 'rf'}`));
      return;
    }
    devices.push(`  ${own}: {kind: splitter, ways: ${branch.length}, loss: 4 dB}`);
    cables.push(cable(`${own}/in`));
    branch.forEach((next, index) => grow(next, `${own}/out-${index + 1}`));
  };
  grow(wood, 'mast');
  return `multiplexes: {a: {system: dvb-t, channel: 23, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}}
devices:
  mast: {kind: aerial, receives: {a: ${level} dBµV}}
${devices.join('\n')}
cables:
${cables.join('\n')}
`;
}

describe('a picture of an aerial system', () => {
  it('can be read, whatever tree it is, and has each device once', () => {
    fc.assert(
      fc.property(
        woods(4),
        fc.integer({ min: 20, max: 110 }),
        fc.stringMatching(/^[a-z]{1,30}$/),
        (wood, strong, name) => {
          const plan = planFrom(siteOf(wood, strong, name));
          const drawn = draw(plan);
          assert.deepEqual(faults(drawn), []);
          const names = drawn.things.map(({ at }) => at.split('/')[0]);
          assert.deepEqual(names.toSorted(), plan.site.devices.map((device) => device.name).toSorted());
        },
      ),
      { numRuns: 80 },
    );
  });

  // Source: EN 60728-1 by a handbook: of DVB-T with 64-QAM an outlet gets no less than some 45 dBµV, no more than 74.
  it('marks by a sign and words what is too low, and what is too high', () => {
    const outlet = (strong: number): readonly string[] =>
      draw(planFrom(siteOf([[]], strong, 'x'))).things.find(({ at }) => at.endsWith('/tv'))?.texts ?? [];
    assert.ok(outlet(30).some((line) => line.startsWith('▲ too low: a')));
    assert.ok(outlet(100).some((line) => line.startsWith('▲ too high: a')));
    assert.ok(!outlet(65).some((line) => line.includes('▲')));
  });

  it('draws what two coaxes lead into once', () => {
    const plan = planFrom(`
devices:
  north: {kind: aerial}
  south: {kind: aerial}
  join: {kind: combiner, inputs: {a: 470-600 MHz, b: 610-694 MHz}}
  set: {kind: display, inputs: {rf: {}}}
cables:
  - {from: north, to: join/a, type: coax-6}
  - {from: south, to: join/b, type: coax-6}
  - {from: join/out, to: set/rf, type: coax-6}
`);
    const { things } = draw(plan);
    assert.equal(things.filter(({ at }) => at === 'set/rf').length, 1);
    const [whole, again] = things.filter(({ at }) => at === 'join');
    assert.ok(whole && again?.texts.some((line) => line.includes('drawn above')));
  });
});
