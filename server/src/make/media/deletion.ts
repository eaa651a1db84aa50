/** A timer by which a server deletes recordings that are older than `keep`. */

import type { Plan } from '../../plan.ts';
import { type Place, placeOf } from '../../site/item.ts';
import type { Device, Recording, Volume } from '../../site/model.ts';
import { retentionBoundsOf } from '../../site/retention.ts';
import { visible } from '../../text/visible.ts';
import { duration, asName } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type Output, type Refusal, refusal, together } from '../output.ts';
import { unitCommand, unitPath } from '../quoting/unit.ts';
import { datedFolders, nameExpression } from './name-expression.ts';
import { namePattern } from './name-pattern.ts';
import { type HostedRecording, hostedRecordings } from './recording-consumer.ts';
import { serviceFile, timerFile } from './service.ts';
import { DAY, MINUTE } from '../../standards/time-units.ts';

export const deletion: Output = {
  kind: 'deletion',
  title: 'Deletion of recordings: a systemd timer',
  summary: 'a systemd timer by which a server deletes recordings as `keep` and the retention policies say',
  subjects: (plan) => [...new Set(hostedRecordings(plan).map(({ host }) => host.name))].sort(),
  make(plan, subject) {
    const all = hostedRecordings(plan).filter(({ host }) => subject === undefined || host.name === subject);
    return together(
      [...new Set(all.map(({ host }) => host))].map((host) =>
        deletionForHost(
          plan,
          host,
          all.filter((each) => each.host === host),
        ),
      ),
    );
  },
};

/** Milliseconds between two runs. */
const EVERY = 15 * MINUTE;
const CALENDAR = '*:0/15';

/** Minutes for which an empty dated folder stays: it may have been made a day ahead. */
const EMPTY_FOR = (2 * DAY) / MINUTE;

/** The files of one recording that are deleted, and after how long. */
interface Deletion {
  readonly volume: Volume;
  readonly root: string;
  readonly fixed: string;
  /** POSIX extended regular expressions of whole paths. */
  readonly file: string;
  readonly folders: readonly string[];
  readonly minutes: number;
}

function deletionForHost(plan: Plan, host: Device, all: readonly HostedRecording[]): Made {
  const unnamed = refusedName(host.item);
  if (unnamed !== undefined) return { files: [], refused: [unnamed], notes: [] };
  const refused: Refusal[] = [];
  const deletions: Deletion[] = [];
  for (const { recording, volume } of all) {
    const found = recording.keep === undefined ? undefined : deletionOf(plan, recording, volume);
    if (found === undefined) continue;
    if ('message' in found) refused.push(found);
    else deletions.push(found);
  }
  const made = [...new Set(deletions.map(({ root }) => root))].map((root) =>
    deletionForVolume(
      plan,
      host,
      deletions.filter((each) => each.root === root),
    ),
  );
  const unlimited = all
    .filter(({ recording }) => recording.keep === undefined)
    .map(({ recording }) => `deletion: nothing of ${asName(recording.name)} is deleted, as it says no \`keep\`.`);
  return together([{ files: [], refused, notes: unlimited }, ...made]);
}

/** A unit for each disk, so that a missing or broken one does not let the others fill up. */
function deletionForVolume(plan: Plan, host: Device, here: readonly Deletion[]): Made {
  const [{ root, volume } = { root: '', volume: undefined }] = here;
  if (volume === undefined) return together([]);
  const unnamed = refusedName(volume.item);
  if (unnamed !== undefined) return refusal(unnamed);
  // A path or a pattern that no unit can hold was refused before.
  const path = unitPath(root) ?? '';
  const lines = [
    [MKDIR, '--parents', '--', ...starts(root, here)],
    findFiles(root, here),
    ...findFolders(root, here),
  ].map(unitCommand);
  const command = `make deletion ${host.name}`;
  const unit = `plumbline-deletion-${volume.name}`;
  const text = serviceFile(plan.site, {
    command,
    description: `Deletes recordings in ${visible(root, 100)} whose time is over`,
    unit: ['Wants=time-sync.target', 'After=time-sync.target', `RequiresMountsFor=${path}`],
    service: [
      'Type=oneshot',
      'User=plumbline',
      'Group=plumbline',
      'UMask=0027',
      'Environment=LC_ALL=C',
      'Nice=10',
      'IOSchedulingClass=idle',
      '# The age of a file is the time since it was last written to. Only files called as their recording says are ' +
        'deleted,',
      '# no link is followed, and no other file system entered.',
      ...lines.map((line) => `ExecStart=${line ?? ''}`),
      `ReadWritePaths=${path}`,
    ],
    install: [],
  });
  const timer = timerFile(
    plan.site,
    command,
    `Looks every quarter of an hour for recordings in ${visible(root, 100)} whose time is over`,
    CALENDAR,
  );
  return {
    files: [
      { path: `${host.name}/${unit}.service`, text },
      { path: `${host.name}/${unit}.timer`, text: timer },
    ],
    refused: [],
    notes: notesFor(host),
  };
}

function notesFor({ name }: Device): readonly string[] {
  return [
    `deletion: on ${asName(name)}, plumbline-deletion-*.service and .timer belong in /etc/systemd/system/; then \`systemctl ` +
      'daemon-reload`, and `systemctl enable --now` each .timer. What is deleted is gone. To see what would go, ' +
      'run its commands with -print instead of -delete. A clock that is far ahead deletes everything: let ' +
      'systemd-time-wait-sync.service or the like hold time-sync.target back until the clock is right.',
    'deletion: how long footage of people may be kept, and for how long some of it must be, is for local law to ' +
      'say. Copy evidence elsewhere before its time is over, and keep it by hand.',
  ];
}

/** Refused where a policy contradicts `keep`: nothing is deleted until that is resolved. */
function deletionOf(plan: Plan, recording: Recording, volume: Volume): Deletion | Refusal {
  const names = namePattern(recording, volume);
  if ('message' in names) return names;
  const age = ageOf(plan, recording);
  if (typeof age !== 'number') return age;
  return {
    volume,
    root: names.volume,
    fixed: names.fixed,
    file: nameExpression(names.volume, names.steps),
    folders: datedFolders(names.volume, names.folder),
    minutes: Math.ceil(age / MINUTE),
  };
}

/**
 * Milliseconds after the last write: `keep`, or a little less where the oldest footage of a file would otherwise pass
 * the policy's limit by the next run, but never less than the policy's minimum.
 */
function ageOf({ site }: Plan, { item, name, keep = 0, segment = 0 }: Recording): number | Refusal {
  const { least, most } = retentionBoundsOf(site.policies.retention, name);
  const atLeast = least?.time ?? 0;
  const atMost = most?.time ?? Infinity;
  const at: Place = placeOf(item, ['keep']);
  if (keep < atLeast)
    return {
      rule: 'retention',
      at,
      message:
        `${asName(name)} is kept for ${duration(keep)}, and policy asks for ${duration(atLeast)} at least: nothing of it is ` +
        'deleted before one of them is corrected.',
    };
  if (keep > atMost)
    return {
      rule: 'retention',
      at,
      message:
        `${asName(name)} is kept for ${duration(keep)}, and policy allows ${duration(atMost)} at most: nothing of it is ` +
        'deleted before one of them is corrected.',
    };
  // A file ends at the keyframe after its length, so it is shorter than twice that.
  const latest = atMost - 2 * segment - EVERY;
  if (keep <= latest) return keep;
  if (latest >= atLeast && latest > 0) return latest;
  return {
    rule: 'not-made',
    at,
    message:
      `Policy asks for ${duration(atLeast)} of ${asName(name)} at least and allows ${duration(atMost)} at most: files of ` +
      `${duration(segment)}, looked at every ${duration(EVERY)}, cannot be deleted between. Leave more room.`,
  };
}

/** find does not follow links, except that the slash makes it follow the volume itself. */
function start(root: string, { fixed }: Deletion): string {
  return `${root}/${fixed.split('/')[0] ?? ''}`;
}

/** The folders that hold all files: the whole volume where a recording has no folder of its own. */
function starts(root: string, here: readonly Deletion[]): string[] {
  const all = new Set(here.map((each) => start(root, each)));
  const whole = `${root}/`;
  return all.has(whole) ? [whole] : [...all].sort();
}

const FIND = '/usr/bin/find';
/** Makes the folders that are missing, as find fails without them. */
const MKDIR = '/usr/bin/mkdir';

function findFiles(root: string, here: readonly Deletion[]): readonly string[] {
  const tests = here.flatMap(({ file, minutes }, index) => [
    ...(index === 0 ? [] : ['-o']),
    '-regex',
    file,
    '-mmin',
    `+${minutes}`,
  ]);
  return [
    FIND,
    ...starts(root, here),
    '-ignore_readdir_race',
    '-xdev',
    '-type',
    'f',
    '-regextype',
    'posix-extended',
    '(',
    ...tests,
    ')',
    '-delete',
  ];
}

function findFolders(root: string, here: readonly Deletion[]): readonly (readonly string[])[] {
  const folders = [...new Set(here.flatMap((each) => each.folders))];
  if (folders.length === 0) return [];
  const dated = here.filter((each) => each.folders.length > 0);
  const tests = folders.flatMap((folder, index) => [...(index === 0 ? [] : ['-o']), '-regex', folder]);
  return [
    [
      FIND,
      ...starts(root, dated),
      '-ignore_readdir_race',
      '-mindepth',
      '1',
      '-xdev',
      '-type',
      'd',
      '-mmin',
      `+${EMPTY_FOR}`,
      '-empty',
      '-regextype',
      'posix-extended',
      '(',
      ...tests,
      ')',
      '-delete',
    ],
  ];
}
