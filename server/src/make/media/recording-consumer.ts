/** A stream that a server records: FFmpeg writes it in segments of a certain length. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import { duration } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import type { Refusal } from '../output.ts';
import { unitCommand, unitPath } from '../quoting/unit.ts';
import { CARRIER_NAMES, type Carrier, supports } from './codec-support.ts';
import type { Consumer } from './consumer.ts';
import { type Destination, directOutput } from './destination.ts';
import { type NamePattern, namePattern, unconverted } from './name-pattern.ts';

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

export function recordingConsumer(plan: Plan, { recording, volume, host }: HostedRecording): Consumer | Refusal {
  const { item, name } = recording;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const input = plan.site.streamByName.get(recording.stream ?? '');
  if (input === undefined)
    return {
      at: placeOf(item, ['stream']),
      message: `There is no stream for ${name} to record. Name one of the site.`,
    };
  const names = namePattern(recording, volume);
  if ('message' in names) return names;
  const destination = segmentDestination(plan, recording, input, names);
  if ('message' in destination) return destination;
  if (unitPath(names.volume) === undefined || unitCommand([...directOutput(destination), names.folder]) === undefined)
    return unwritablePath(volume);
  return { kind: 'recorders', name, host, input, destinations: [destination], store: { recording, volume, names } };
}

export function unwritablePath({ item, name }: Volume): Refusal {
  return {
    at: placeOf(item, ['path']),
    message:
      `The path of ${name} cannot be written into a unit: it has a control character, quotes of both kinds, or a ` +
      'part of more than 255 bytes. Mount it elsewhere.',
  };
}

/** Milliseconds. Names have no more than seconds. */
const SHORTEST_SEGMENT = 1000;

/** By suffix: FFmpeg's format, and options that keep a file playable up to the point where a crash ends it. */
const CONTAINERS: Readonly<Record<string, { readonly carrier: Carrier; readonly options: string }>> = {
  // Each keyframe completes a fragment with what came before. The header is written with the first one: only then is it
  // known how long before the picture the audio starts.
  mp4: { carrier: 'mp4', options: 'movflags=frag_keyframe+delay_moov+default_base_moof:flush_packets=1' },
  mkv: { carrier: 'matroska', options: 'flush_packets=1' },
  ts: { carrier: 'mpegts', options: 'flush_packets=1' },
};

/**
 * FFmpeg's segment muxer. A segment ends at the first keyframe after a multiple of its length on the clock. The
 * timestamps of the stream would not do: they leap where it comes in a burst or after a pause, and start several files
 * in one second.
 */
function segmentDestination(
  plan: Plan,
  recording: Recording,
  stream: Stream,
  names: NamePattern,
): Destination | Refusal {
  const { item, name, segment } = recording;
  if (segment === undefined)
    return { at: headOf(item), message: `${name} does not say how long its files are. Say it: \`segment\`.` };
  if (segment < SHORTEST_SEGMENT)
    return {
      at: placeOf(item, ['segment']),
      message: `Files of ${duration(segment)} cannot be told apart by names that tell seconds. Take 1 s or more.`,
    };
  const container = CONTAINERS[names.suffix];
  const at = placeOf(item, ['file']);
  if (container === undefined)
    return {
      at,
      message:
        `The files of ${name} end in ${names.suffix === '' ? 'nothing' : `.${names.suffix}`}, which says no format. ` +
        'End them in .mp4, .mkv or .ts.',
    };
  const { video, audio } = plan.site.media(stream);
  const { carrier, options } = container;
  for (const [medium, codec] of [
    ['video', video?.codec],
    ['audio', audio?.codec],
  ] as const) {
    if (supports(carrier, medium, codec)) continue;
    return {
      at,
      message:
        `${stream.name} has ${codec ?? medium}, which ${CARRIER_NAMES[carrier]} does not take. Take .mkv, or ` +
        'another codec.',
    };
  }
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
