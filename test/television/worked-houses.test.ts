import assert from 'node:assert/strict';
import { planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { siteOf } from '../site-of.ts';
import { near } from '../standards/television/near.ts';
import { WORKED } from './worked-houses.ts';

describe('A house that was worked out apart', () => {
  for (const { is, text, points } of WORKED)
    it(`comes to the same levels and noise: ${is}`, () => {
      const { rf } = reportOf(planOf(siteOf(text)));
      for (const [at, multiplex, level, noiseFigure, carrierToNoise] of points) {
        const found = rf.points.find((point) => point.at === at && point.multiplex === multiplex);
        assert.ok(found, `${multiplex} reaches ${at}`);
        near(found.level, level, 0.01);
        near(found.noiseFigure, noiseFigure, 0.01);
        near(found.carrierToNoise ?? NaN, carrierToNoise, 0.01);
      }
    });
});
