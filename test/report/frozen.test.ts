// A whole site of release 0.1, with its figures as that release computed them, but that the last packet of a picture
// ends with it now. They guard against a change that nobody meant, and prove no figure: those are held against counters
// and standards elsewhere. Its findings, none, are held by test/fixtures.test.ts.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import frozen from './harrow-lane-0.1.report.json' with { type: 'json' };

// Source: `report --format json` of commit 8a3bfed.
describe('harrow-lane as of 0.1', () => {
  const { folder } = readSite('test/fixtures/harrow-lane-0.1');
  const report = JSON.parse(JSON.stringify(reportOf(planOf(folder.site())))) as Record<string, unknown>;

  for (const [part, figures] of Object.entries(frozen))
    it(`has the figures that it had: ${part}`, () => assert.deepEqual(report[part], figures));

  // What later releases compute besides.
  it('has figures of nothing else', () =>
    assert.deepEqual(
      Object.keys(report).sort(),
      [...Object.keys(frozen), 'racks', 'power', 'air', 'rf', 'traffic', 'uplinks'].sort(),
    ));
});
