import assert from 'node:assert/strict';
import { energyFor, hoursOf, peukertEnergyFor, peukertHours } from '../../server/src/standards/battery.ts';

const near = (got: number, wanted: number, digits = 1): void =>
  assert.equal(got.toFixed(digits), wanted.toFixed(digits));

// Hand sums of a battery of 24 V and 9 Ah at 158.95 W through an inverter of 85 %.
describe('A battery under load', () => {
  const label = { energy: 216_000, efficiency: 8500, depth: 10_000, health: 10_000 };
  const planned = { ...label, depth: 8000, health: 8000 };

  it('lasts energy over power: 216 Wh · 0.85 ÷ 158.95 W is 69.3 min, and 44.4 with 80 % depth and 80 % health', () => {
    near(hoursOf(label, 158_950) * 60, 69.3);
    near(hoursOf(planned, 158_950) * 60, 44.4);
    near(hoursOf(planned, 83_950) * 60, 84.0);
  });

  // I = 158.95 W ÷ 0.85 ÷ 24 V = 7.79 A; t = 20 h · (9 Ah ÷ (7.79 A · 20 h))^k.
  it('lasts less where it is of lead and emptied fast (Peukert): 45.2 min with k = 1.15, 52.1 with 1.1, 39.2 with 1.2', () => {
    near(peukertHours(label, 158_950) * 60, 45.2);
    near(peukertHours(label, 158_950, 1.1) * 60, 52.1);
    near(peukertHours(label, 158_950, 1.2) * 60, 39.2);
  });

  it('gives its rated capacity in the 20 h it is rated for, whatever the exponent', () => {
    near(peukertHours({ energy: 200_000, efficiency: 10_000 }, 10_000, 1.3), 20, 6);
  });

  it('must hold 367.6 Wh for an hour of 200 W', () => near(energyFor(1, 200_000, planned) / 1000, 367.6));

  it('holds what is needed for just as long as it lasts, by either law', () => {
    near(hoursOf({ ...planned, energy: energyFor(1.5, 90_000, planned) }, 90_000), 1.5, 9);
    near(peukertHours({ ...planned, energy: peukertEnergyFor(1.5, 90_000, planned) }, 90_000), 1.5, 9);
  });
});
