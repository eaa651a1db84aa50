import assert from 'node:assert/strict';
import fc from 'fast-check';
import { flowOf, lostIn } from '../../../server/src/audit/counters/flow.ts';
import type { Sample } from '../../../server/src/audit/counters/sample.ts';
import { type Counter, advance } from '../../../server/src/standards/if-mib.ts';

const counter = (value: number | bigint, bits: 32 | 64 = 32): Counter => ({ value: BigInt(value), bits });

function sample(time: number, received: Counter | undefined, more: Partial<Sample> = {}): Sample {
  return {
    time,
    device: undefined,
    names: ['1'],
    received,
    sent: undefined,
    lost: new Map(),
    withFcs: true,
    speed: undefined,
    since: '',
    upTime: undefined,
    virtual: undefined,
    over: undefined,
    ...more,
  };
}

const received = ({ received: own }: Sample): Counter | undefined => own;
const GIGABIT = 1e9;

describe('A counter between two readings', () => {
  // 4,294,967,296 octets at 1 Gb/s take 34.36 s: arithmetic.
  const in30s = (30 * GIGABIT) / 8;
  const in40s = (40 * GIGABIT) / 8;

  it('has come as far as it shows', () =>
    assert.deepEqual(advance(counter(1000), counter(5000), in30s), { octets: 4000 }));

  it('has wrapped once where it shows less, and that fits its speed', () =>
    assert.deepEqual(advance(counter(2 ** 32 - 1000), counter(500), in30s), { octets: 1500 }));

  it('has begun anew where a wrap would be more than its speed allows', () =>
    assert.deepEqual(advance(counter(1000), counter(500), in30s), { unknown: 'began-anew' }));

  it('may have wrapped twice where the time allows it', () => {
    assert.deepEqual(advance(counter(1000), counter(2000), in40s), { unknown: 'too-far' });
    assert.deepEqual(advance(counter(0), counter(2 ** 30), in40s), { octets: 2 ** 30 });
  });

  it('says nothing with 32 bits where nobody knows its speed', () =>
    assert.deepEqual(advance(counter(1000), counter(2000), undefined), { unknown: 'too-far' }));

  it('of 64 bits does not wrap, whatever its speed', () => {
    assert.deepEqual(advance(counter(1000, 64), counter(2 ** 40, 64), undefined), { octets: 2 ** 40 - 1000 });
    assert.deepEqual(advance(counter(1000, 64), counter(1, 64), undefined), { unknown: 'began-anew' });
    assert.deepEqual(advance(counter(1000, 64), counter(1, 64), in40s), { unknown: 'began-anew' });
    assert.deepEqual(advance(counter((1n << 64n) - 10n, 64), counter(5, 64), in40s), { octets: 15 });
  });

  it('cannot be followed from 32 bits to 64', () =>
    assert.deepEqual(advance(counter(1000), counter(2000, 64), in30s), { unknown: 'began-anew' }));
});

describe('What an interface carried', () => {
  it('is the sum of what is known, over the time in which it is known', () => {
    const flow = flowOf(
      [sample(0, counter(0)), sample(10_250, counter(1_281_250)), sample(20_250, counter(5_031_250))],
      received,
      GIGABIT,
      10_000,
    );
    assert.equal(flow.octets, 5_031_250);
    assert.equal(Math.round(flow.mean), Math.round((5_031_250 * 8) / 20.25));
    assert.equal(flow.busiest, 3_000_000);
    assert.equal(flow.quietest, 1_000_000);
  });

  it('is not more than it was where times are in whole seconds: the busiest stretch may be a second longer', () => {
    const flow = flowOf(
      [sample(0, counter(0)), sample(10_000, counter(1_375_000)), sample(20_000, counter(2_500_000))],
      received,
      GIGABIT,
      10_000,
    );
    assert.equal(flow.mean, 1_000_000);
    assert.equal(flow.busiest, 1_000_000);
  });

  it('has no stretch over a gap, and none shorter than asked for', () => {
    const samples = [
      sample(250, counter(0)),
      sample(5_250, counter(625_000)),
      sample(10_250, undefined),
      sample(15_250, counter(5_625_000)),
      sample(20_250, counter(6_250_000), { since: 'later' }),
      sample(25_250, counter(16_250_000), { since: 'later' }),
    ];
    const flow = flowOf(samples, received, GIGABIT, 10_000);
    assert.equal(flow.beginnings, 1);
    assert.equal(flow.milliseconds, 20_000);
    assert.equal(flow.octets, 5_625_000 + 10_000_000);
    // From 5.25 s to 15.25 s; the faster one at the end is only 5 s long.
    assert.equal(flow.busiest, Math.max(flow.mean, 4_000_000));
  });

  for (const [title, more] of [
    ['the time of its discontinuity changes', [{ since: '100' }, { since: '200' }]],
    ['the equipment has begun anew', [{ upTime: 90_000 }, { upTime: 1000 }]],
    ['both of its counters fall at once', [{ sent: counter(4e9) }, { sent: counter(7) }]],
  ] as const) {
    it(`is not known where ${title}, although a wrap would fit`, () => {
      const flow = flowOf(
        [sample(250, counter(4e9), more[0]), sample(10_250, counter(5e8), more[1])],
        received,
        GIGABIT,
        10_000,
      );
      assert.deepEqual([flow.octets, flow.milliseconds, flow.beginnings], [0, 0, 1]);
    });
  }

  it('is known through a wrap where the equipment says that it went on', () => {
    const flow = flowOf(
      [
        sample(250, counter(4e9), { sent: counter(4e9), upTime: 1000 }),
        sample(10_250, counter(5e8), { sent: counter(7), upTime: 2000 }),
      ],
      received,
      GIGABIT,
      10_000,
    );
    assert.equal(flow.octets, 2 ** 32 - 4e9 + 5e8);
  });

  it('goes by the speed that the equipment says', () => {
    const samples = [sample(250, counter(1000), { speed: 1e7 }), sample(40_250, counter(2000), { speed: 1e7 })];
    assert.equal(flowOf(samples, received, GIGABIT, 10_000).octets, 1000);
    assert.deepEqual(
      flowOf(
        samples.map((one) => ({ ...one, speed: undefined })),
        received,
        GIGABIT,
        10_000,
      ).tooFar,
      { count: 1, longest: 40_000 },
    );
  });

  /**
   * The reference is a counter as RFC 2578 §7.1.6 has it (from memory): it is counted up by every octet, begins at any
   * value, wraps at 2³², and is set to 0 where the equipment begins anew, which its up time shows.
   */
  it('is what a counter of 32 bits has really counted, or is said not to be known', () => {
    const step = fc.record({
      seconds: fc.integer({ min: 6, max: 60 }),
      part: fc.double({ min: 0, max: 1, noNaN: true }),
      restart: fc.boolean(),
      speed: fc.constantFrom(10e6, 100e6, 1e9, 10e9),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 32 - 1 }),
        fc.array(step, { minLength: 1, maxLength: 12 }),
        (first, steps) => {
          let [time, up, value, octets, milliseconds, restarts, dubious] = [250, 1_000_000, BigInt(first), 0, 0, 0, 0];
          const samples = [sample(time, counter(value), { upTime: up })];
          for (const { seconds, part, restart, speed } of steps) {
            const most = (speed * seconds) / 8;
            const carried = Math.floor(part * most);
            time += seconds * 1000;
            value = ((restart ? 0n : value) + BigInt(carried)) % (1n << 32n);
            // It begins anew in the middle.
            up = restart ? seconds * 50 : up + seconds * 100;
            if (restart) restarts++;
            // Nobody who reads the counter can tell these apart: it shows the same after 2³² octets more.
            else if ((carried % 2 ** 32) + 2 ** 32 <= most) dubious++;
            else [octets, milliseconds] = [octets + carried, milliseconds + seconds * 1000];
            samples.push(sample(time, counter(value), { upTime: up, speed }));
          }
          const flow = flowOf(samples, received, undefined, 10_000);
          assert.deepEqual(
            [flow.octets, flow.milliseconds, flow.beginnings, flow.tooFar.count],
            [octets, milliseconds, restarts, dubious],
          );
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('Lost frames', () => {
  const lost = (...values: readonly number[]): number | undefined =>
    lostIn(
      values.map((value, index) => sample(index * 1000, undefined, { lost: new Map([['ifInErrors', value]]) })),
    ).get('ifInErrors');

  it('are how many more there are', () => assert.equal(lost(5, 5, 9), 4));
  it('are none where the counter stands', () => assert.equal(lost(5, 5, 5), undefined));
  it('are counted on after it has begun anew', () => assert.equal(lost(5, 9, 0, 2), 6));
});
