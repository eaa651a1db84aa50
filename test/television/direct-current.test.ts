/** Which supply reaches what, along coax and the parts on it. What parts pass is common practice, no source. */

import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { dropsOf } from '../../server/src/television/voltage-drop.ts';
import { siteOf } from '../site-of.ts';

/** By consumer, who feeds it; `!` before a part that stops a supply. */
function fed(text: string): Record<string, string[]> {
  const { consumers } = planOf(siteOf(text)).television.directCurrent;
  return Object.fromEntries(
    consumers.map(({ device, connector, feeds, stoppedBy }) => [
      `${device.name}/${connector.name}`,
      [...feeds.map(({ supply }) => supply.device.name), ...stoppedBy.map(({ name }) => `!${name}`)],
    ]),
  );
}

/** A mast amplifier above a splitter, with a supply at its second output. */
const split = (passes: string): string => `
devices:
  amp: {kind: amplifier, gain: 20 dB, powered-by: out, supply: 12 V, current: 60 mA}
  splitter: {kind: splitter, ways: 2, ${passes}}
  supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: amp/out, to: splitter/in, type: coax-6, length: 5 m}
  - {from: splitter/out-1, to: tv/rf, type: coax-6, length: 5 m}
  - {from: splitter/out-2, to: supply/aerial, type: coax-6, length: 5 m}
`;

describe('Direct current along coax', () => {
  for (const [passes, expected] of [
    ['power-pass: true', ['supply']],
    ['power-pass: [out-2]', ['supply']],
    ['power-pass: [in, out-2]', ['supply']],
    ['power-pass: [out-1]', ['!splitter']],
    ['power-pass: [in, out-1]', ['!splitter']],
    ['power-pass: false', ['!splitter']],
    ['loss: 4 dB', ['!splitter']],
  ] as const)
    it(`comes from the second output of a splitter with ${passes}: ${expected.join()}`, () => {
      assert.deepEqual(fed(split(passes)), { 'amp/out': expected });
    });

  it('passes a part with two connectors, whichever of them is named', () => {
    for (const passes of ['[in]', '[out]', '[in, out]', 'true'])
      assert.deepEqual(
        fed(`
devices:
  amp: {kind: amplifier, gain: 20 dB, powered-by: out, supply: 12 V, current: 60 mA}
  filter: {kind: filter, passes: 470-694 MHz, power-pass: ${passes}}
  supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
cables:
  - {from: amp/out, to: filter/in, type: coax-6, length: 5 m}
  - {from: filter/out, to: supply/aerial, type: coax-6, length: 5 m}
`),
        { 'amp/out': ['supply'] },
        passes,
      );
  });

  it('does not come from an inserter that stands in front of the amplifier', () => {
    const chain = (at: string): string => `
devices:
  aerial: {kind: aerial}
  amp: {kind: amplifier, gain: 20 dB, powered-by: ${at}, supply: 12 V, current: 60 mA}
  supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: aerial, to: amp/in, type: coax-6, length: 5 m, through: [${at === 'in' ? 'supply' : ''}]}
  - {from: amp/out, to: tv/rf, type: coax-6, length: 5 m, through: [${at === 'out' ? 'supply' : ''}]}
`;
    assert.deepEqual(fed(chain('in')), { 'amp/in': [] });
    assert.deepEqual(fed(chain('out')), { 'amp/out': ['supply'] });
  });

  it('goes to a quattro LNB through a multiswitch, and past no isolator', () => {
    const dish = (through: string): string => `
devices:
  dish: {kind: lnb, type: quattro, current: 180 mA}
  switch: {kind: multiswitch, ways: 4}
  gap: {kind: isolator}
  box: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish/vl, to: switch/vl, type: coax-6, length: 5 m, through: [${through}]}
  - {from: switch/out-1, to: box/sat, type: coax-6, length: 5 m}
`;
    assert.deepEqual(fed(dish(''))['dish/vl'], ['box']);
    assert.deepEqual(fed(dish('gap'))['dish/vl'], ['!gap']);
  });

  it('does not ask the LNB through an amplifier', () => {
    const plan = planOf(
      siteOf(`
devices:
  dish: {kind: lnb, current: 180 mA}
  line-amp: {kind: amplifier, gain: 15 dB}
  box: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish, to: line-amp/in, type: coax-6, length: 5 m}
  - {from: line-amp/out, to: box/sat, type: coax-6, length: 5 m}
`),
    );
    const [cable] = plan.television.lnbCables.values();
    assert.equal(cable?.from.device.name, 'dish');
    assert.equal(cable.blockedBy?.name, 'line-amp');
  });

  // Ohm's law: 40 m of coax with a copper core are 1.6 Ω, by the reference's 4 Ω for 100 m.
  it('loses the voltage of all that draws through the same coax', () => {
    const { consumers } = planOf(
      siteOf(`
devices:
  dish: {kind: lnb, current: 150 mA}
  amp: {kind: amplifier, gain: 20 dB, powered-by: out, current: 60 mA, power-pass: true}
  box: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish, to: amp/in, type: coax-6, length: 40 m, core: copper}
  - {from: amp/out, to: box/sat, type: coax-6, length: 40 m, core: copper}
`),
    ).television.directCurrent;
    const dropTo = dropsOf(consumers);
    const lost = consumers.map((consumer) => consumer.feeds.map((feed) => Math.round(dropTo(consumer, feed).lost)));
    assert.deepEqual(lost, [[1.6 * 150 + 1.6 * (150 + 60)], [1.6 * (150 + 60)]]);
  });

  it('goes from a multiswitch to its LNB, and not to its aerial', () => {
    const { intoAerials, consumers } = planOf(
      siteOf(`
devices:
  roof: {kind: aerial}
  dish: {kind: lnb, type: quattro, current: 150 mA}
  switch: {kind: multiswitch, ways: 4}
  box: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: roof, to: switch/tv, type: coax-6, length: 9 m}
  - {from: dish/vl, to: switch/vl, type: coax-6, length: 9 m}
  - {from: switch/out-1, to: box/sat, type: coax-6, length: 9 m}
`),
    ).television.directCurrent;
    assert.deepEqual(intoAerials, []);
    assert.deepEqual(
      consumers[0]?.feeds.map(({ supply }) => supply.device.name),
      ['box'],
    );
  });
});
