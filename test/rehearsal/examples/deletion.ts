// Recordings go when their time is over, and nothing else does.
import assert from 'node:assert/strict';
import { chownSync, existsSync, mkdirSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { it } from 'mocha';
import type { Recording } from '../../../server/src/site/model.ts';
import { run } from '../../lab/run.ts';
import type { House } from '../house.ts';
import { USER } from '../service.ts';

const HOUR = 3_600_000;
const YEAR = 365 * 24 * HOUR;

export function deletion(house: () => House): void {
  it('deletes files whose time is over, and nothing else', async () => {
    const recorder = await house().over();
    const { recordings, timezone = '' } = house().plan.site;
    const recorded = recordings.flatMap((recording) => recorder.filesOf(recording));
    /** A file that was started so long ago, named by its pattern: strftime(3), by date(1). */
    const planned = async ({ file = '', volume }: Recording, age: number): Promise<string> => {
      const at = `--date=@${Math.floor((Date.now() - age) / 1000)}`;
      const below = await run('date', [at, `+${file}`], { environment: { TZ: timezone, LC_ALL: 'C' } });
      return written(join(recorder.volume(volume), below.trim()), age);
    };
    // `keep` of each; those at the gate go some minutes sooner, as no picture of theirs may be older than that.
    const over: string[] = [];
    const due: string[] = [];
    for (const each of recordings) {
      over.push(await planned(each, (each.keep ?? 0) + HOUR), await planned(each, YEAR));
      due.push(await planned(each, (each.keep ?? 0) - HOUR));
    }
    const gate = recorder.volume(recorder.recording('gate').volume);
    const nobodys = [
      written(join(gate, 'gate/notes.txt'), YEAR),
      written(join(gate, 'gate/2020-01-01_00-00-00+0000.mp4.part'), YEAR),
      written(join(gate, 'gate/copies/2020-01-01_00-00-00+0000.mp4'), YEAR),
      written(join(gate, 'visitors/2020-01-01_00-00-00+0000.mp4'), YEAR),
      written(join(gate, '2020-01-01_00-00-00+0000.mp4'), YEAR),
      written(join(house().folder, 'elsewhere/kept.mp4'), YEAR),
    ];
    const link = join(gate, 'gate/2020-01-01_00-00-00+0000.mp4');
    symlinkSync(join(house().folder, 'elsewhere/kept.mp4'), link);
    const volumes = [...new Set(recordings.flatMap(({ volume }) => volume ?? []))];
    for (const volume of volumes) await recorder.server.finish(`plumbline-deletion-${volume}.service`);
    assert.deepEqual(over.filter(existsSync), []);
    assert.deepEqual(
      [...recorded, ...due, ...nobodys, link].filter((path) => !existsSync(path)),
      [],
    );
    for (const volume of volumes)
      assert.equal(recorder.server.unit(`plumbline-deletion-${volume}.timer`).one('Timer', 'OnCalendar'), '*:0/15');
  });
}

/** A file of that age, in milliseconds, that the user of the services could delete. */
function written(path: string, age: number): string {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, 'footage');
  for (const each of [dirname(path), path]) chownSync(each, USER, USER);
  const at = (Date.now() - age) / 1000;
  utimesSync(path, at, at);
  return path;
}
