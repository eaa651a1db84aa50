import assert from 'node:assert/strict';
import { derating, intermodulationRatio } from '../../../server/src/standards/television/amplifier.ts';
import { idealSplit, idealThroughLoss, typicalSplit } from '../../../server/src/standards/television/splitting.ts';
import { USB2_BULK } from '../../../server/src/standards/television/usb.ts';
import { near } from './near.ts';

describe('Parts of an aerial system', () => {
  // Two makers' tables of derating by number of channels.
  it('put out less with more carriers, within a decibel of two makers’ tables', () => {
    for (const [carriers, fall] of [
      [2, 0],
      [3, 2],
      [4, 3],
      [5, 4],
      [6, 5],
      [7, 5.5],
      [8, 6],
      [10, 7],
      [12, 8],
      [16, 9],
      [24, 11],
      [32, 12],
      [36, 12.5],
    ] as const)
      near(derating(carriers), fall, 1);
    assert.equal(derating(1), 0);
    near(98 - derating(6), 92.758, 0.0006);
  });

  // The third-order term grows with the cube of the carriers.
  it('distort 2 dB less for each decibel below their limit', () => {
    assert.equal(intermodulationRatio(3) - intermodulationRatio(2), 2);
  });

  it('divide a signal', () => {
    near(idealSplit(2), 3.01);
    near(idealSplit(4), 6.02);
    near(idealSplit(8), 9.03);
    near(idealThroughLoss(10), 0.46);
    near(idealThroughLoss(6), 1.26);
    for (const ways of [2, 3, 4, 5, 6, 8, 16])
      for (const frequency of [474e6, 2150e6]) assert.ok(typicalSplit(ways, frequency) > idealSplit(ways));
  });

  // USB 2.0 §5.8.4: 13 packets of 512 bytes in each of 8000 microframes.
  it('fill a bus', () => {
    assert.equal(USB2_BULK, 425_984_000);
  });
});
