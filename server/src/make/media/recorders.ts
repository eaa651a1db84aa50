/** Units by which servers record: FFmpeg takes a stream in and writes it to files of a certain length. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { duration } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type MadeFile, type Output, type Refusal, once, refusal, together } from '../output.ts';
import { unitCommand, unitPath, unitWord } from '../quoting/unit.ts';
import { askedTwice } from './asked-twice.ts';
import { CARRIER_NAMES, type Carrier, takes } from './ability.ts';
import { credentialLines, credentialNotes } from './credentials.ts';
import { type NamePattern, namePattern, unconverted } from './name-pattern.ts';
import { pullOf } from './pull.ts';
import { MAKE_FOLDERS, makeFoldersFile } from './scripts.ts';
import { AFTER_NETWORK, ALWAYS, ENDS_IN_ORDER, NEVER_GIVES_UP, serviceFile, timerFile, whereTo } from './service.ts';

export const recorders: Output = {
  kind: 'recorders',
  title: 'Recordings: FFmpeg in systemd units',
  summary: 'systemd units by which a server records streams in segments, with FFmpeg',
  subjects: (plan) => [...new Set(recorded(plan).flatMap(({ recording, host }) => [host.name, recording.name]))].sort(),
  make(plan, subject) {
    const wanted = recorded(plan).filter(({ recording, host }) => subject === undefined || recording.name === subject || host.name === subject);
    const folders = [...new Set(wanted.map(({ host }) => host))].map((host) => foldersOf(plan, host, wanted));
    const made = together([...wanted.map((each) => recorderOf(plan, each)), ...folders]);
    const notes = [...made.notes, ...askedTwice(plan, wanted), PRIVACY];
    return { ...made, files: once(made.files), notes: made.files.length === 0 ? made.notes : notes };
  },
};

const PRIVACY =
  'recorders: people in the picture, and more so their voices, may be recorded only as privacy law where you are allows. Ask before you record ' +
  'a lane, a neighbour, or those who work for you; tell them.';

export interface Recorded {
  readonly recording: Recording;
  readonly volume: Volume;
  readonly host: Device;
}

/** The recordings that have a volume with a host. */
export function recorded({ site }: Plan): readonly Recorded[] {
  return site.recordings.flatMap((recording) => {
    const volume = recording.volume === undefined ? undefined : site.volumeByName.get(recording.volume);
    const host = volume?.host === undefined ? undefined : site.deviceByName.get(volume.host);
    return volume === undefined || host === undefined ? [] : [{ recording, volume, host }];
  });
}

/** The shortest segment, in milliseconds: names tell seconds at best. */
const SHORTEST = 1000;

/** By suffix: FFmpeg's format, and what makes of a file that a crash cuts off one that plays up to there. */
const CONTAINERS: Readonly<Record<string, { readonly carrier: Carrier; readonly options: string }>> = {
  // With each keyframe what came before is complete in the file. The head is written with the first of these parts: only
  // then is it known by how much sound starts before the picture.
  mp4: { carrier: 'mp4', options: 'movflags=frag_keyframe+delay_moov+default_base_moof:flush_packets=1' },
  mkv: { carrier: 'matroska', options: 'flush_packets=1' },
  ts: { carrier: 'mpegts', options: 'flush_packets=1' },
};

function recorderOf(plan: Plan, { recording, volume, host }: Recorded): Made {
  const unnamed = refusedName(recording.item) ?? refusedName(host.item);
  if (unnamed !== undefined) return refusal(unnamed);
  const { item, name } = recording;
  const stream = plan.site.streamByName.get(recording.stream ?? '');
  if (stream === undefined) return refusal({ at: placeOf(item, ['stream']), message: `There is no stream for ${name} to record. Name one of the site.` });
  const names = namePattern(recording, volume);
  if ('message' in names) return refusal(names);
  const write = writing(plan, recording, stream, names);
  if ('message' in write) return refusal(write);
  const pull = pullOf(plan, stream, host);
  if ('message' in pull) return refusal(pull);
  const root = unitPath(names.volume);
  const command = unitCommand([...pull.command, ...write]);
  const folders = unitCommand([MAKE_FOLDERS, names.volume, names.folder]);
  if (root === undefined || command === undefined || folders === undefined) return refusal(unwritable(volume));
  const text = serviceFile(plan.site, {
    command: `make recorders ${name}`,
    description: `Records ${stream.name} to ${visible(names.volume, 100)} as ${name}`,
    unit: [...AFTER_NETWORK, `RequiresMountsFor=${root}`, NEVER_GIVES_UP],
    service: [
      'User=plumbline',
      'Group=plumbline',
      ...zoneLines(plan),
      ...credentialLines(pull.credentials),
      `ExecStartPre=${folders}`,
      `ExecStart=${command}`,
      '# Files are made read-only, so that none can be opened a second time and overwritten: FFmpeg ends instead, and',
      '# begins again two seconds later under another name. Nobody but the user and the group may look at them.',
      'UMask=0227',
      ...ALWAYS,
      ...ENDS_IN_ORDER,
      `ReadWritePaths=${root}`,
    ],
    install: ['WantedBy=multi-user.target'],
  });
  const files: MadeFile[] = [{ path: `${host.name}/plumbline-record-${name}.service`, text }, makeFoldersFile(host.name), ...pull.files];
  return { files, refused: [], notes: [whereTo('recorders', host), ownerNote(host), ...zoneNotes(plan, host), ...credentialNotes(pull.credentials, host)] };
}

export function unwritable({ item, name }: Volume): Refusal {
  return { at: placeOf(item, ['path']), message: `The path of ${name} cannot be written into a unit: it has a control character, quotes of both kinds, or a part of more than 255 bytes. Mount it elsewhere.` };
}

function ownerNote({ name }: Device): string {
  return `recorders: ${name} needs a user plumbline, \`useradd --system plumbline\`, to whom the folders of its volumes belong: \`chown plumbline:plumbline\`. Who is to see recordings joins the group plumbline.`;
}

function zoneNotes({ site }: Plan, { name }: Device): string[] {
  return site.timezone === undefined ? [`recorders: the site says no time zone, so files are named by the clock of ${name}. Say it: \`timezone\`.`] : [];
}

/** Names are by the clock of the site, whatever the machine's is. */
export function zoneLines({ site }: Plan): readonly string[] {
  return site.timezone === undefined ? [] : [`Environment=${unitWord(`TZ=${site.timezone}`) ?? 'TZ=UTC'}`];
}

/**
 * FFmpeg's segment muxer. Segments end at the first keyframe after a multiple of their length by the clock, and not by the
 * timestamps of the stream: these leap where a stream comes in a burst or after a pause, and would begin several files
 * in one second.
 */
function writing(plan: Plan, recording: Recording, stream: Stream, names: NamePattern): readonly string[] | Refusal {
  const { item, name, segment } = recording;
  if (segment === undefined) return { at: headOf(item), message: `${name} does not say how long its files are. Say it: \`segment\`.` };
  if (segment < SHORTEST) return { at: placeOf(item, ['segment']), message: `Files of ${duration(segment)} cannot be told apart by names that tell seconds. Take 1 s or more.` };
  const container = CONTAINERS[names.suffix];
  const at = placeOf(item, ['file']);
  if (container === undefined) return { at, message: `The files of ${name} end in ${names.suffix === '' ? 'nothing' : `.${names.suffix}`}, which says no format. End them in .mp4, .mkv or .ts.` };
  const { video, audio } = plan.site.media[stream.index] ?? { video: undefined, audio: undefined };
  const { carrier, options } = container;
  for (const [medium, codec] of [['video', video?.codec], ['audio', audio?.codec]] as const) {
    if (takes(carrier, medium, codec)) continue;
    return { at, message: `${stream.name} has ${codec ?? medium}, which ${CARRIER_NAMES[carrier]} does not take. Take .mkv, or another codec.` };
  }
  return [
    // A camera whose sound is switched off is still recorded; what the site does not say is not.
    ...(video === undefined && audio !== undefined ? [] : ['-map', '0:v:0']),
    ...(audio === undefined ? [] : ['-map', video === undefined ? '0:a:0' : '0:a:0?']),
    '-c', 'copy',
    '-f', 'segment', '-segment_format', carrier, '-segment_format_options', options,
    '-segment_time', String(segment / 1000), '-segment_atclocktime', '1', '-reset_timestamps', '1',
    '-strftime', '1', `${unconverted(names.volume)}/${names.pattern}`,
  ];
}

/** Folders that bear the date are made every hour, a day ahead. */
function foldersOf(plan: Plan, host: Device, wanted: readonly Recorded[]): Made {
  const dated = wanted.filter((each) => each.host === host).flatMap(({ recording, volume }) => {
    const names = namePattern(recording, volume);
    return 'message' in names || names.folder === names.fixed ? [] : [names];
  });
  const commands = dated.map((names) => unitCommand([MAKE_FOLDERS, names.volume, names.folder]) ?? '').filter((command) => command !== '');
  const roots = [...new Set(dated.flatMap(({ volume }) => unitPath(volume) ?? []))];
  if (commands.length === 0 || roots.length === 0 || refusedName(host.item) !== undefined) return { files: [], refused: [], notes: [] };
  const command = `make recorders ${host.name}`;
  const text = serviceFile(plan.site, {
    command,
    description: 'Makes the folders that recordings are written to tomorrow',
    unit: roots.map((root) => `RequiresMountsFor=${root}`),
    service: ['Type=oneshot', 'User=plumbline', 'Group=plumbline', ...zoneLines(plan), ...commands.map((each) => `ExecStart=${each}`), ...roots.map((root) => `ReadWritePaths=${root}`)],
    install: [],
  });
  const files = [{ path: `${host.name}/plumbline-folders.service`, text }, { path: `${host.name}/plumbline-folders.timer`, text: timerFile(plan.site, command, 'Makes folders for recordings every hour', 'hourly') }, makeFoldersFile(host.name)];
  return { files, refused: [], notes: [] };
}
