import { COAX, type CoaxType, coaxLoss } from '../../../server/src/standards/television/coax.ts';
import { near } from './near.ts';

/** Metres of a hundred feet. */
const HUNDRED_FEET = 30.48;

describe('Coax', () => {
  // A supplier's table of series 6, dB per 100 ft.
  it('of series 6 loses what a table of a supplier says, within half a decibel over 100 m', () => {
    for (const [megahertz, loss] of [
      [57, 1.5],
      [213, 3.0],
      [473, 4.5],
      [695, 5.6],
      [950, 6.4],
      [2150, 9.7],
    ] as const)
      near(coaxLoss('coax-6', HUNDRED_FEET, megahertz * 1e6), loss, 0.5 * (HUNDRED_FEET / 100) + 0.05);
  });

  // A √f + B f, by hand.
  it('loses so much', () => {
    near(coaxLoss('coax-6', 25, 474e6), 3.687, 0.0006);
    near(coaxLoss('coax-6', 20, 2150e6), 6.465, 0.0006);
    near(coaxLoss('coax-59', 30, 650e6), 6.428, 0.0006);
    near(coaxLoss('coax-11', 40, 2150e6), 8.478, 0.0006);
    near(coaxLoss('coax-6', 18, 205.5e6), 1.733, 0.0006);
  });

  // From the dimensions: A = 868.6/(2 Z₀) · (Rₛ/π)(1/d + k/D), copper core, aluminium foil (k = 1.24), v = 0.85 c,
  // tan δ = 1.5e-4. The table is on the safe side of it by up to 8 % at 1 GHz.
  it('agrees with the physics of its dimensions', () => {
    const PHYSICS: readonly (readonly [CoaxType, number, number])[] = [
      ['coax-59', 0.81, 3.66],
      ['coax-6', 1.02, 4.57],
      ['coax-11', 1.63, 7.11],
    ];
    for (const [type, core, screen] of PHYSICS) {
      const impedance = (59.96 / (1 / 0.85)) * Math.log(screen / core);
      const resistance = Math.sqrt(Math.PI * 4e-7 * Math.PI * 1.724e-8 * 1e6);
      const skin = (868.6 / (2 * impedance)) * (resistance / Math.PI) * (1000 / core + 1240 / screen);
      const dielectric = (868.6 * Math.PI * 1.5e-4 * 1e6) / (0.85 * 299_792_458);
      const byPhysics = skin * Math.sqrt(1000) + dielectric * 1000;
      const byTable = COAX[type].skin * Math.sqrt(1000) + COAX[type].dielectric * 1000;
      near(byTable / byPhysics, 1.06, 0.03);
    }
  });
});
