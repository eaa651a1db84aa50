// Footage of a span of time that two files hold.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { it } from 'mocha';
import { plumbline } from '../../cli/run.ts';
import type { House } from '../house.ts';
import { played } from '../recorded.ts';

export function footage(house: () => House): void {
  it('gives footage of two files of a recording with all of their pictures', async () => {
    const recorder = await house().over();
    const drive = recorder.recording('drive');
    const files = recorder.filesOf(drive).slice(1, 4);
    const [from = 0, , to = 0] = files.map((path) => recorder.instantOf(drive, path));
    const out = join(house().folder, 'drive.mp4');
    // A second within: names have whole seconds, and footage is cut at keyframes, two seconds apart.
    const span = ['--from', new Date(from + 1000).toISOString(), '--to', new Date(to - 1000).toISOString()];
    const folder = recorder.volume(drive.volume);
    const args = ['footage', house().site, '--recording', 'drive', '--recordings', folder, ...span, '--out', out];
    const { status, out: told, err } = plumbline(args);
    assert.equal(status, 0, told + err);
    const [joined = 0, ...parts] = (await played([out, ...files.slice(0, 2)])).map(({ pictures }) => pictures);
    assert.equal(
      joined,
      parts.reduce((sum, count) => sum + count, 0),
    );
  });
}
