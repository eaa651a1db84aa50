// What holds for the power of any site: what sources give is what devices draw, over what is lost on the way; and more
// on a battery empties it sooner.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';

interface Load {
  readonly watts: number;
  /** Of a switch what hangs on it by PoE, of 0 to 3 cameras. */
  readonly cameras: readonly number[];
  readonly efficiency: number;
  readonly from: 'ups-1' | 'ups-2' | undefined;
}

const load: fc.Arbitrary<Load> = fc.record({
  watts: fc.integer({ min: 1, max: 80 }),
  cameras: fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 3 }),
  efficiency: fc.integer({ min: 50, max: 100 }),
  from: fc.constantFrom('ups-1', 'ups-2', undefined),
});

function planWith(loads: readonly Load[], chemistry: string): Plan {
  const devices = loads.flatMap(({ watts, cameras, efficiency, from }, index) => [
    `  s${index}: {kind: switch, power: {at-most: ${watts} W, poe-efficiency: ${efficiency} %${from === undefined ? '' : `, from: ${from}`}}, ports: {1-8: {poe: at}}}`,
    ...cameras.map((own, at) => `  c${index}-${at}: {kind: camera, poe: {class: 3, power: ${own} W}}`),
  ]);
  const cables = loads.flatMap(({ cameras }, index) =>
    cameras.map((_, at) => `  - {from: s${index}/${at + 1}, to: c${index}-${at}}`),
  );
  return planOf(
    siteOf(`
devices:
  ups-1: {kind: ups, rated: 9000 VA, battery: 500 Wh, chemistry: ${chemistry}}
  ups-2: {kind: ups, rated: 9000 VA, battery: 100 Wh, chemistry: ${chemistry}, power: {from: ups-1}}
${devices.join('\n')}
${cables.length === 0 ? '' : `cables:\n${cables.join('\n')}`}
`),
  );
}

const near = (a: number, b: number): void => assert.ok(Math.abs(a - b) < 1e-6 * Math.max(1, a, b), `${a} and ${b}`);

describe('the power of a site', () => {
  it('from the mains is what all devices draw, over what is lost in the supplies', () => {
    fc.assert(
      fc.property(fc.array(load, { maxLength: 6 }), (loads) => {
        const { total } = planWith(loads, 'lithium').supply();
        const sum = loads.reduce(
          (all, { watts, cameras, efficiency }) =>
            all + watts + cameras.reduce((own, camera) => own + camera, 0) / (efficiency / 100),
          0,
        );
        near(total.most, sum * 1000);
      }),
      { numRuns: 50 },
    );
  });

  for (const chemistry of ['lithium', 'lead-acid'])
    it(`falls sooner with anything more on it, on ${chemistry}`, () => {
      fc.assert(
        fc.property(fc.array(load, { minLength: 1, maxLength: 5 }), load, (loads, more) => {
          const of = (plan: Plan): (number | undefined)[] => plan.supply().upses.map(({ runtime }) => runtime);
          const [before, after] = [of(planWith(loads, chemistry)), of(planWith([...loads, more], chemistry))];
          after.forEach((runtime, index) => {
            const then = before[index];
            // The second hangs on the first, so what is on it is on both.
            const isOn = more.from === `ups-${index + 1}` || (index === 0 && more.from === 'ups-2');
            if (then === undefined) return;
            assert.ok(runtime !== undefined && (isOn ? runtime < then : runtime === then), `${then} to ${runtime}`);
          });
        }),
        { numRuns: 50 },
      );
    });
});
