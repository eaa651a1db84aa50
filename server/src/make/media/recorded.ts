/** What a server records: a stream, written to files of a certain length. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import { duration } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import type { Refusal } from '../output.ts';
import { unitCommand, unitPath } from '../quoting/unit.ts';
import { CARRIER_NAMES, type Carrier, takes as carries } from './ability.ts';
import type { Consumer } from './consumer.ts';
import { type Destination, alone } from './destination.ts';
import { type NamePattern, namePattern, unconverted } from './name-pattern.ts';

export interface Recorded {
  readonly recording: Recording;
  readonly volume: Volume;
  readonly host: Device;
}

/** The recordings that have a volume with a host. */
export function recordings({ site }: Plan): readonly Recorded[] {
  return site.recordings.flatMap((recording) => {
    const volume = recording.volume === undefined ? undefined : site.volumeByName.get(recording.volume);
    const host = volume?.host === undefined ? undefined : site.deviceByName.get(volume.host);
    return volume === undefined || host === undefined ? [] : [{ recording, volume, host }];
  });
}

export function recorded(plan: Plan, { recording, volume, host }: Recorded): Consumer | Refusal {
  const { item, name } = recording;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const takes = plan.site.streamByName.get(recording.stream ?? '');
  if (takes === undefined)
    return {
      at: placeOf(item, ['stream']),
      message: `There is no stream for ${name} to record. Name one of the site.`,
    };
  const names = namePattern(recording, volume);
  if ('message' in names) return names;
  const destination = writing(plan, recording, takes, names);
  if ('message' in destination) return destination;
  if (unitPath(names.volume) === undefined || unitCommand([...alone(destination), names.folder]) === undefined)
    return unwritable(volume);
  return { kind: 'recorders', name, host, takes, destinations: [destination], store: { recording, volume, names } };
}

export function unwritable({ item, name }: Volume): Refusal {
  return {
    at: placeOf(item, ['path']),
    message: `The path of ${name} cannot be written into a unit: it has a control character, quotes of both kinds, or a part of more than 255 bytes. Mount it elsewhere.`,
  };
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

/**
 * FFmpeg's segment muxer. Segments end at the first keyframe after a multiple of their length by the clock, and not by the
 * timestamps of the stream: these leap where a stream comes in a burst or after a pause, and would begin several files
 * in one second.
 */
function writing(plan: Plan, recording: Recording, stream: Stream, names: NamePattern): Destination | Refusal {
  const { item, name, segment } = recording;
  if (segment === undefined)
    return { at: headOf(item), message: `${name} does not say how long its files are. Say it: \`segment\`.` };
  if (segment < SHORTEST)
    return {
      at: placeOf(item, ['segment']),
      message: `Files of ${duration(segment)} cannot be told apart by names that tell seconds. Take 1 s or more.`,
    };
  const container = CONTAINERS[names.suffix];
  const at = placeOf(item, ['file']);
  if (container === undefined)
    return {
      at,
      message: `The files of ${name} end in ${names.suffix === '' ? 'nothing' : `.${names.suffix}`}, which says no format. End them in .mp4, .mkv or .ts.`,
    };
  const { video, audio } = plan.site.mediaOf(stream);
  const { carrier, options } = container;
  for (const [medium, codec] of [
    ['video', video?.codec],
    ['audio', audio?.codec],
  ] as const) {
    if (carries(carrier, medium, codec)) continue;
    return {
      at,
      message: `${stream.name} has ${codec ?? medium}, which ${CARRIER_NAMES[carrier]} does not take. Take .mkv, or another codec.`,
    };
  }
  return {
    media: [
      // A camera whose sound is switched off is still recorded; what the site does not say is not.
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
