/** A stream that a server records: FFmpeg writes it in segments of a certain length. */

import { perObject } from '../../memo.ts';
import type { Plan } from '../../plan.ts';
import { placeOf } from '../../site/item.ts';
import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import { MINUTE } from '../../standards/time-units.ts';
import { duration, list, asName } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import type { Refusal } from '../output.ts';
import { CARRIER_NAMES, type Carrier, supports } from './codec-support.ts';
import type { MediaConsumer } from './consumer.ts';
import type { MediaDestination } from './destination.ts';
import { type NamePattern, filePatternText, namePattern, unconverted } from './name-pattern.ts';
import { unpullable } from './pull.ts';

export interface HostedRecording {
  readonly recording: Recording;
  readonly volume: Volume;
  readonly host: Device;
}

/** The recordings that have a volume with a host. */
export function hostedRecordings({ site }: Plan): readonly HostedRecording[] {
  return site.recordings.flatMap((recording) => {
    const volume = recording.volume === undefined ? undefined : site.volumeByName.get(recording.volume);
    const host = volume?.host === undefined ? undefined : site.deviceByName.get(volume.host);
    return volume === undefined || host === undefined ? [] : [{ recording, volume, host }];
  });
}

export function recordingConsumer(plan: Plan, hosted: HostedRecording): MediaConsumer | Refusal {
  const recordable = recordableOf(plan, hosted);
  if ('message' in recordable) return recordable;
  const { recording, volume, host } = hosted;
  const { input, names } = recordable;
  const destinations = [segmentDestination(plan, recording, input, names)];
  return { kind: 'recorders', name: recording.name, host, input, destinations, store: { recording, volume, names } };
}

/** Why a recording cannot be made; `undefined` where it can. */
export function unrecordable(plan: Plan, hosted: HostedRecording): Refusal | undefined {
  const recordable = recordableOf(plan, hosted);
  return 'message' in recordable ? recordable : unpullable(plan, recordable.input, hosted.host);
}

interface Recordable {
  readonly input: Stream;
  readonly names: NamePattern;
}

function recordableOf(plan: Plan, { recording, volume, host }: HostedRecording): Recordable | Refusal {
  const { item, name } = recording;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const input = plan.site.streamByName.get(recording.stream ?? '');
  if (input === undefined)
    return {
      rule: 'unknown-name',
      at: placeOf(item, ['stream']),
      message: `There is no stream for ${asName(name)} to record. Name one of the site.`,
    };
  const names = namePattern(recording, volume);
  if ('message' in names) return names;
  return unfitFormat(plan, recording, input) ?? tooShort(recording) ?? { input, names };
}

/** Milliseconds, as names have whole seconds. */
const SHORTEST_SEGMENT = 1000;

/** The length of files where the site declares none, in milliseconds. */
const USUAL_SEGMENT = MINUTE;

/** Notes on assumed values of a recording, which audits and footage need in the site too. */
export function usualNotes(recording: Recording): string[] {
  const { name, file, segment } = recording;
  const usual = [
    ...(segment === undefined ? [`segment: ${duration(USUAL_SEGMENT)}`] : []),
    ...(file === undefined ? [`file: "${filePatternText(recording)}"`] : []),
  ];
  if (usual.length === 0) return [];
  return [
    `recorders: ${asName(name)} does not declare its files: ${list(usual)} is assumed. Write it into the site, so that ` +
      'audits and footage find the files.',
  ];
}

interface Container {
  readonly carrier: Carrier;
  readonly options: string;
}

const MATROSKA: Container = { carrier: 'matroska', options: 'flush_packets=1' };

/** FFmpeg's formats by suffix, with options that keep a file playable up to the point where a crash ends it. */
const CONTAINERS: Readonly<Record<string, Container>> = {
  // Each keyframe completes a fragment with what came before. The header is written with the first one: only then is it
  // known how long before the picture the audio starts.
  mp4: { carrier: 'mp4', options: 'movflags=frag_keyframe+delay_moov+default_base_moof:flush_packets=1' },
  mkv: MATROSKA,
  ts: { carrier: 'mpegts', options: 'flush_packets=1' },
};

const suffixOf = perObject((recording: Recording): string => {
  return /\.([A-Za-z0-9]+)$/.exec(filePatternText(recording))?.[1]?.toLowerCase() ?? '';
});

/** Why the files of a recording cannot hold its stream; `undefined` where they can. */
export function unfitFormat(plan: Plan, recording: Recording, stream: Stream): Refusal | undefined {
  const { item, name } = recording;
  const suffix = suffixOf(recording);
  const container = Object.hasOwn(CONTAINERS, suffix) ? CONTAINERS[suffix] : undefined;
  const refuse = (message: string): Refusal => ({ rule: 'file-format', at: placeOf(item, ['file']), message });
  if (container === undefined)
    return refuse(
      `The files of ${asName(name)} end in ${suffix === '' ? 'nothing' : `.${suffix}`}, a format that nothing is recorded in. ` +
        'End them in .mkv, .mp4 or .ts.',
    );
  const { video, audio } = plan.site.media(stream);
  const { carrier } = container;
  const codec = !supports(carrier, 'video', video?.codec)
    ? video?.codec
    : supports(carrier, 'audio', audio?.codec)
      ? undefined
      : audio?.codec;
  if (codec === undefined) return undefined;
  return refuse(
    `${asName(stream.name)} has ${codec}, which ${CARRIER_NAMES[carrier]} does not take. Take .mkv, or another codec.`,
  );
}

function tooShort({ item, file, segment = USUAL_SEGMENT }: Recording): Refusal | undefined {
  if (segment >= SHORTEST_SEGMENT) return undefined;
  return {
    rule: file === undefined ? 'not-made' : 'file-name-collision',
    at: placeOf(item, ['segment']),
    message: `Files of ${duration(segment)} cannot be distinguished by names to the second. Take 1 s or more.`,
  };
}

/**
 * FFmpeg's segment muxer. A segment ends at the first keyframe after a multiple of its length on the clock. The
 * timestamps of the stream would not do: they leap where it comes in a burst or after a pause, and start several files
 * in one second.
 */
function segmentDestination(plan: Plan, recording: Recording, stream: Stream, names: NamePattern): MediaDestination {
  const { segment = USUAL_SEGMENT } = recording;
  const { video, audio } = plan.site.media(stream);
  const { carrier, options } = CONTAINERS[suffixOf(recording)] ?? MATROSKA;
  return {
    mapping: [
      // A camera whose audio is switched off is still recorded; media that the site does not declare are not.
      ...(video === undefined && audio !== undefined ? [] : ['-map', '0:v:0']),
      ...(audio === undefined ? [] : ['-map', video === undefined ? '0:a:0' : '0:a:0?']),
      '-c',
      'copy',
    ],
    format: 'segment',
    options: [
      ['segment_format', carrier],
      ['segment_format_options', options],
      ['segment_time', String(segment / 1000)],
      ['segment_atclocktime', '1'],
      ['reset_timestamps', '1'],
      ['strftime', '1'],
    ],
    to: `${unconverted(names.volume)}/${names.pattern}`,
  };
}
