/** Measures a stream from its packets. */

import type { Packet, ProbedPart } from './ffprobe.ts';

export interface MeasuredStream {
  /** Pictures per second. */
  readonly frameRate: number | undefined;
  /** Milliseconds from one keyframe to the next: the median, the shortest and the longest. */
  readonly keyframes: { readonly middle: number; readonly shortest: number; readonly longest: number } | undefined;
  /** Milliseconds that were measured; with at most one keyframe, the interval is at least as long. */
  readonly milliseconds: number;
  readonly keyframeCount: number;
  /** bit/s on average. */
  readonly bitRate: number | undefined;
  /** bit/s in the busiest stretch of that length. */
  peakOver(milliseconds: number): number | undefined;
}

/** Seconds below which an average is unreliable, as it depends on two or three keyframes. */
const LEAST = 5;

export function measure(part: ProbedPart): MeasuredStream {
  const { packets } = part;
  const shown = packets.flatMap((packet) => packet.shown ?? []).sort((a, b) => a - b);
  const [first, last] = [shown[0], shown[shown.length - 1]];
  const seconds = first === undefined || last === undefined ? 0 : last - first;
  const counted = seconds >= 1 ? (shown.length - 1) / seconds : undefined;
  const timed = inOrder(packets);
  const span = spanOf(timed);
  const bytes = timed.reduce((total, packet) => total + packet.bytes, 0);
  const keys = packets
    .filter(({ key }) => key)
    .flatMap((packet) => packet.shown ?? packet.decoded ?? [])
    .sort((a, b) => a - b);
  return {
    frameRate: part.kind === 'video' ? (counted ?? part.frameRate) : undefined,
    keyframes: keyframesOf(keys),
    milliseconds: Math.round(seconds * 1000),
    keyframeCount: keys.length,
    bitRate: span >= LEAST ? (bytes * 8) / span : part.bitRate,
    peakOver: (milliseconds) => (span >= LEAST ? peakOf(timed, milliseconds / 1000) : undefined),
  };
}

interface Timed {
  readonly time: number;
  readonly bytes: number;
}

function inOrder(packets: readonly Packet[]): Timed[] {
  return packets
    .flatMap(({ shown, decoded, bytes }): Timed[] => {
      const time = decoded ?? shown;
      return time === undefined ? [] : [{ time, bytes }];
    })
    .sort((a, b) => a.time - b.time);
}

/** Seconds; the last packet counts with the average duration. */
function spanOf(packets: readonly Timed[]): number {
  const [first, last] = [packets[0], packets[packets.length - 1]];
  if (first === undefined || last === undefined || packets.length < 2) return 0;
  const between = last.time - first.time;
  return between + between / (packets.length - 1);
}

function keyframesOf(times: readonly number[]): MeasuredStream['keyframes'] {
  const between = times
    .slice(1)
    .map((time, index) => (time - (times[index] ?? time)) * 1000)
    .sort((a, b) => a - b);
  const [middle, shortest, longest] = [between[between.length >> 1], between[0], between[between.length - 1]];
  return middle === undefined || shortest === undefined || longest === undefined || middle <= 0
    ? undefined
    : { middle, shortest, longest };
}

/**
 * The peak over stretches from every packet; an incomplete one at the end does not count. A stretch ends half a packet
 * early, as the keyframe after it may come a moment too soon.
 */
function peakOf(packets: readonly Timed[], seconds: number): number | undefined {
  const half = spanOf(packets) / packets.length / 2;
  let most: number | undefined;
  let [end, bytes] = [0, 0];
  for (const [start, first] of packets.entries()) {
    for (let next = packets[end]; next !== undefined && next.time < first.time + seconds - half; next = packets[++end])
      bytes += next.bytes;
    if (end >= packets.length) break;
    most = Math.max(most ?? 0, (bytes * 8) / seconds);
    bytes -= packets[start]?.bytes ?? 0;
  }
  return most;
}
