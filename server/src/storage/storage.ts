/** What the recordings write and keep, and how long the volumes last. Bytes are exact; only days are rounded. */

import { usableDisks } from '../standards/raid.ts';
import type { Network } from '../network/network.ts';
import { type Load, transportStreamOf } from '../network/rates.ts';
import type { Recording, Site, Stream, Volume } from '../site/model.ts';
import { DAY, SECOND } from '../standards/time-units.ts';

/** The rate of an undeclared stream. */
const NOTHING: Load = { nominal: 0, peak: 0 };

export interface RecordingFigures {
  readonly recording: Recording;
  readonly volume: Volume | undefined;
  /**
   * The rate of the files, bit/s: the media, in a transport stream with its headers. Other formats add about a
   * hundredth, which is left out.
   */
  readonly rate: Load;
  readonly bytesPerDay: number;
  /** The bytes once the retention is reached; `undefined` where no retention is declared. */
  readonly bytesKept: number | undefined;
  readonly filesPerDay: number | undefined;
  readonly filesKept: number | undefined;
}

export interface VolumeFigures {
  readonly volume: Volume;
  /** After redundancy and reserve; `undefined` without a capacity. */
  readonly usableBytes: number | undefined;
  readonly bytesPerDay: number;
  /** The bytes that its recordings keep; one without a retention has no such figure and counts as 0. */
  readonly bytesKept: number;
  /** Days if nothing is deleted. */
  readonly daysUntilFull: number | undefined;
  /** Days if each recording is deleted by its retention; `undefined` where the volume never fills. */
  readonly daysUntilFullKept: number | undefined;
  /** bytes/s */
  readonly writeRate: Load;
  readonly filesPerDay: number;
  readonly filesKept: number;
  readonly recordings: readonly RecordingFigures[];
}

export interface Storage {
  readonly recordings: readonly RecordingFigures[];
  readonly volumes: readonly VolumeFigures[];
  of(recording: Recording): RecordingFigures;
  on(volume: Volume): VolumeFigures;
}

/** The parts of a site and its network that decide its storage. */
export interface Stored
  extends Pick<Site, 'recordings' | 'volumeByName' | 'streamByName' | 'media'>, Pick<Network, 'rates'> {}

export function storageOf(stored: Stored): Storage {
  const recordings = stored.recordings.map((recording) => recordingFigures(stored, recording));
  const onVolume = new Map<Volume, RecordingFigures[]>();
  for (const volume of stored.volumeByName.values()) onVolume.set(volume, []);
  for (const figures of recordings) if (figures.volume !== undefined) onVolume.get(figures.volume)?.push(figures);
  const volumes = [...onVolume].map(([volume, own]) => volumeFigures(volume, own));
  const byRecording = new Map(recordings.map((figures) => [figures.recording, figures]));
  const byVolume = new Map(volumes.map((figures) => [figures.volume, figures]));
  return {
    recordings,
    volumes,
    of: (recording) => known(byRecording.get(recording)),
    on: (volume) => known(byVolume.get(volume)),
  };
}

function known<T>(figures: T | undefined): T {
  if (figures === undefined) throw new Error('a figure was asked for of something that is not of this site');
  return figures;
}

function recordingFigures(stored: Stored, recording: Recording): RecordingFigures {
  const stream = recording.stream === undefined ? undefined : stored.streamByName.get(recording.stream);
  const volume = recording.volume === undefined ? undefined : stored.volumeByName.get(recording.volume);
  const rate = stream === undefined ? NOTHING : writtenRate(stored, recording, stream);
  const bytesPerDay = (rate.nominal * (DAY / SECOND)) / 8;
  const days = recording.keep === undefined ? undefined : recording.keep / DAY;
  const filesPerDay = filesPerDayOf(
    recording,
    stream === undefined ? undefined : stored.media(stream).video?.keyframeInterval,
  );
  return {
    recording,
    volume,
    rate,
    bytesPerDay,
    bytesKept: days === undefined ? undefined : Math.round(bytesPerDay * days),
    filesPerDay,
    filesKept: days === undefined || filesPerDay === undefined ? undefined : Math.ceil(filesPerDay * days),
  };
}

/** In a .ts file each picture begins a new packet of 188 bytes, which makes a few per cent (ISO/IEC 13818-1 §2.4.3). */
function writtenRate({ rates, media }: Stored, { file }: Recording, stream: Stream): Load {
  const { payload } = rates(stream);
  const multiplexed = isTransportStream(file) ? transportStreamOf(media(stream)) : payload;
  return multiplexed.peak > payload.peak ? multiplexed : payload;
}

/** Whether a recording is a transport stream, by the ending of its files. */
export function isTransportStream(file: string | undefined): boolean {
  return file?.toLowerCase().endsWith('.ts') === true;
}

/** A file ends at a keyframe, so there are no more files than keyframes. */
function filesPerDayOf({ segment }: Recording, keyframeInterval: number | undefined): number | undefined {
  return segment === undefined || segment === 0 ? undefined : DAY / Math.max(segment, keyframeInterval ?? 0);
}

function volumeFigures(volume: Volume, recordings: readonly RecordingFigures[]): VolumeFigures {
  const sum = (of: (figures: RecordingFigures) => number | undefined): number =>
    recordings.reduce((total, figures) => total + (of(figures) ?? 0), 0);
  const usableBytes = usableBytesOf(volume);
  const bytesPerDay = sum(({ bytesPerDay: bytes }) => bytes);
  return {
    volume,
    usableBytes,
    bytesPerDay,
    bytesKept: sum(({ bytesKept }) => bytesKept),
    daysUntilFull: usableBytes === undefined || bytesPerDay === 0 ? undefined : usableBytes / bytesPerDay,
    daysUntilFullKept: usableBytes === undefined ? undefined : daysUntilFullKept(usableBytes, recordings),
    writeRate: { nominal: sum(({ rate }) => rate.nominal) / 8, peak: sum(({ rate }) => rate.peak) / 8 },
    filesPerDay: sum(({ filesPerDay }) => filesPerDay),
    filesKept: sum(({ filesKept }) => filesKept),
    recordings,
  };
}

/** All recordings grow together; each stops growing when its retention is reached. */
function daysUntilFullKept(usableBytes: number, recordings: readonly RecordingFigures[]): number | undefined {
  const daysKept = ({ recording: { keep } }: RecordingFigures): number => (keep === undefined ? Infinity : keep / DAY);
  const growing = [...recordings].sort((a, b) => daysKept(a) - daysKept(b));
  let perDay = growing.reduce((total, { bytesPerDay }) => total + bytesPerDay, 0);
  let written = 0;
  let day = 0;
  for (const figures of growing) {
    const until = daysKept(figures);
    const full = perDay === 0 ? Infinity : day + (usableBytes - written) / perDay;
    if (full < until) return full;
    if (until === Infinity) return undefined;
    written += (until - day) * perDay;
    day = until;
    perDay -= figures.bytesPerDay;
  }
  return undefined;
}

/** Capacity of the disks that hold data, less the reserve; rounded down to whole bytes. */
export function usableBytesOf({ capacity, disks, redundancy, reserve }: Volume): number | undefined {
  if (capacity === undefined) return undefined;
  const holding = usableDisks(redundancy, disks ?? (redundancy === 'none' ? 1 : 0)) ?? (disks === undefined ? 1 : 0);
  // The product has more digits than a number keeps exactly.
  return Number((BigInt(holding) * BigInt(capacity) * BigInt(Math.max(0, 10_000 - reserve))) / 10_000n);
}
