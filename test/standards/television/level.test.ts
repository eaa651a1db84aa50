import assert from 'node:assert/strict';
import {
  LEVEL_OF_MILLIVOLT,
  LEVEL_OF_MILLIWATT,
  levelFromField,
  sumOfLevels,
} from '../../../server/src/standards/television/level.ts';
import { near } from './near.ts';

/** Volts across 75 Ω. */
const volts = (level: number): number => 1e-6 * 10 ** (level / 20);

describe('Levels at 75 Ω', () => {
  // P = U²/R, by hand: 1 mW is √0.075 V = 273 861 µV.
  it('are 108.75 dBµV for a milliwatt, 60 dBµV for a millivolt', () => {
    near(LEVEL_OF_MILLIWATT, 20 * Math.log10(273_861), 1e-4);
    near(LEVEL_OF_MILLIWATT, 108.7506, 1e-4);
    near(volts(LEVEL_OF_MILLIVOLT), 0.001, 1e-12);
    near(volts(LEVEL_OF_MILLIWATT) ** 2 / 75, 0.001, 1e-12);
  });

  // A circular of a national standard on receiver testing rounds −49 dBm to 60 dBµV; the sums here are by hand.
  it('go from dBm and back', () => {
    near(74 - LEVEL_OF_MILLIWATT, -34.75);
    near(-25 + LEVEL_OF_MILLIWATT, 83.75);
    near(volts(45), 177.8e-6, 1e-7);
  });

  // ATSC A/74:2010 §5.1: a receiver works from −83 to −5 dBm.
  it('have the range of ATSC A/74', () => {
    near(-83 + LEVEL_OF_MILLIWATT, 25.75);
    near(-5 + LEVEL_OF_MILLIWATT, 103.75);
  });

  it('add up as powers', () => {
    near(sumOfLevels(Array<number>(6).fill(70)), 77.78);
    near(sumOfLevels([80, 80, 76, 76, 70, 70]), 84.77);
    near(sumOfLevels([60, 60]), 63.01);
    assert.equal(sumOfLevels([]), -Infinity);
  });

  // U² = 75 · E²/(120π) · 1.6409 · g · λ²/4π, worked by hand.
  it('follow from the strength of a field', () => {
    near(levelFromField(58, 12, 650e6), 47.43, 0.0101);
    near(levelFromField(55, 7, 205.5e6), 49.43, 0.0101);
  });
});
