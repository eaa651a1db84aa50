// What has been recorded is what was planned, but for the time when a camera was unplugged.
import assert from 'node:assert/strict';
import { it } from 'mocha';
import { plumbline } from '../../cli/run.ts';
import type { House } from '../house.ts';
import { played } from '../recorded.ts';
import type { Recorder } from '../recorder.ts';

/** Milliseconds by which a time that is taken from names in whole seconds may be off. */
const WHOLE_SECONDS = 1000;

export function recordings(house: () => House): void {
  it('has recorded under the names that are planned, what plays from its first picture on', async () => {
    const recorder = await house().over();
    const planned = house().plan.site.recordings;
    for (const recording of planned) {
      const files = recorder.filesOf(recording);
      assert.ok(files.length >= 2, recording.name);
      for (const path of files) {
        const instant = recorder.instantOf(recording, path);
        assert.ok(instant >= recorder.begun - 1000 && instant <= Date.now(), path);
      }
    }
    // All of what was unplugged; of the others the first and the last, as all would take minutes.
    const chosen = planned.flatMap((recording) => {
      const files = recorder.filesOf(recording);
      return recording.name === 'gate' ? files : [...files.slice(0, 1), ...files.slice(-2)];
    });
    const each = await played(chosen);
    const pictures = each.reduce((sum, file) => sum + file.pictures, 0);
    const count = planned.flatMap((recording) => recorder.filesOf(recording)).length;
    console.log(`      ${count} files, in ${chosen.length} of them ${pictures} pictures`);
    // What was being written when the camera was unplugged may end in half a picture.
    const { from } = await house().outage();
    const gate = recorder.recording('gate');
    const cut = recorder.filesOf(gate).findLast((path) => recorder.instantOf(gate, path) <= from);
    assert.deepEqual(
      each.filter(({ path, broken }) => broken !== undefined && path !== cut),
      [],
    );
  });

  it('is found by the audit of recordings to lack just what was unplugged', async () => {
    const recorder = await house().over();
    const { from: unplugged, to: pluggedIn } = await house().outage();
    const found = ['archive', 'entrance'].flatMap((volume) => audited(house().site, recorder, volume));
    const gaps = found.filter(({ rule }) => rule === 'recording-gap').map(({ message }) => message);
    assert.equal(gaps.length, 1, JSON.stringify(found));
    const [, from = '', to = ''] =
      /^gate lacks \d+ s in 1 gap: from (\S+) to (\S+),/.exec(gaps[0] ?? '') ?? assert.fail(gaps[0]);
    const events = `${gaps[0]} Unplugged ${new Date(unplugged).toISOString()}, back ${new Date(pluggedIn).toISOString()}`;
    // Names are of whole seconds, rounded down; a busy machine may be two seconds behind with what it records.
    const late = Date.parse(from) - unplugged;
    assert.ok(late > -3 * WHOLE_SECONDS && late <= WHOLE_SECONDS, events);
    assert.ok(Date.parse(to) >= pluggedIn - WHOLE_SECONDS, events);
    // What was being written then is shorter than planned, and so may be reported.
    const short = found.filter(
      ({ rule, message }) => rule === 'segment-short' && message.startsWith('1 file of gate '),
    );
    const rest = found.filter((each) => each.rule !== 'recording-gap' && !short.includes(each));
    assert.deepEqual(
      rest.map(({ rule, message }) => `${rule}: ${message}`),
      [],
    );
  });
}

interface Diagnostic {
  readonly rule: string;
  readonly message: string;
}

function audited(site: string, recorder: Recorder, volume: string): readonly Diagnostic[] {
  const since = new Date(recorder.begun).toISOString();
  const how = ['--now', 'newest', '--since', since, '--probe', 'all', '--format', 'json'];
  const folder = recorder.volume(volume);
  const { out, err } = plumbline(['audit', 'recordings', folder, '--volume', volume, '--site', site, ...how]);
  assert.notEqual(out, '', err);
  return (JSON.parse(out) as { diagnostics: Diagnostic[] }).diagnostics;
}
