// Harrow Lane as it is rehearsed: the sample with the changes made here.
import { parse, stringify } from 'yaml';
import { sampleTexts } from '../make/made.ts';

/** Rates of video are an eighth of the sample's: eighteen pictures are decoded beside all that is sent and recorded. */
export const SCALE = 1 / 8;

/** Pictures are small for the same reason. */
export const SIZE = '320x180';

/** Where a camera of the rehearsal has its stream. */
export const PATH = '/camera';

export interface Access {
  /** How the camera asks: RFC 7617, or RFC 7616. */
  readonly scheme: 'basic' | 'digest';
  readonly user: string;
  readonly password: string;
}

/** Cameras that ask for user and password, with characters that mean something in an address, a shell and a unit. */
export const ACCESS: ReadonlyMap<string, Access> = new Map([
  ['gate-cam', { scheme: 'digest', user: 'gate-viewer', password: 'k@y:t/o st%41#?é\'"\\$;&+' }],
  ['drive-cam', { scheme: 'digest', user: 'drive viewer@1', password: '%p$HOME`id`' }],
  ['porch-cam', { scheme: 'basic', user: 'porch-viewer', password: 'knock, knock: who?' }],
  ['paddock-cam', { scheme: 'digest', user: 'paddock.viewer', password: 'oats & "hay"' }],
  ['hayloft-cam', { scheme: 'basic', user: 'hayloft%viewer', password: 'tu/whit\\tu+whoo' }],
]);

/** What must be seen nowhere: user and password, as they are, percent-encoded (RFC 3986), and in Base64 (RFC 7617). */
export function secretsOf({ user, password }: Access): string[] {
  return [user, password, encodeURIComponent(password), Buffer.from(`${user}:${password}`).toString('base64')];
}

/** bit/s that the video of each camera came to, by name of the stream. */
export type Rates = ReadonlyMap<string, number>;

interface Written {
  readonly streams: Record<string, WrittenStream>;
  readonly devices: Record<string, { decoders?: number }>;
  readonly recordings: Record<string, { stream: string; segment: string }>;
  readonly [section: string]: unknown;
}

interface WrittenStream {
  readonly 'carries'?: string;
  readonly 'transport': string;
  readonly 'video'?: { 'size'?: string; 'bitrate': string; 'peak-bitrate'?: string; 'keyframe-interval'?: string };
  readonly 'audio'?: { bitrate: string };
  readonly 'source': string;
  'path'?: string;
  'credentials'?: string;
  'mux-rate'?: string;
  'service'?: string;
}

/** The sample as it is written, all of its files in one. */
export function declared(): Written {
  const written: Record<string, unknown> = {};
  for (const text of Object.values(sampleTexts('harrow-lane'))) {
    for (const [section, items] of Object.entries(parse(text) as Record<string, object>)) {
      const before = written[section] as object | undefined;
      written[section] = Array.isArray(items)
        ? [...((before ?? []) as unknown[]), ...(items as unknown[])]
        : { ...before, ...items };
    }
  }
  return written as unknown as Written;
}

/**
 * The sample, changed by rule:
 * - A camera's video is small, of the rate that its film came to, and found at a path that the test's cameras know.
 * - Some cameras ask for user and password.
 * - Television comes at the same part of its rates.
 * - A screen shows all of its streams at a time.
 * - Segments are short: 8 s, or two keyframe intervals.
 */
export function rehearsed(rates: Rates): string {
  const site = declared();
  for (const device of Object.values(site.devices)) delete device.decoders;
  for (const [name, stream] of Object.entries(site.streams)) {
    const { video } = stream;
    const rate = rates.get(name);
    const mux = stream['mux-rate'];
    if (video !== undefined && rate !== undefined) {
      stream.path = PATH;
      if (ACCESS.has(stream.source)) stream.credentials = stream.source;
      Object.assign(video, { 'size': SIZE, 'bitrate': kilobits(rate), 'peak-bitrate': kilobits(1.5 * rate) });
    } else if (video !== undefined && mux !== undefined) {
      stream['mux-rate'] = kilobits(bitsOf(mux) * SCALE);
      // A film stands in for the programme.
      delete stream['service'];
      // What is left of so small a multiplex beside its sound, with room for headers.
      Object.assign(video, {
        'size': SIZE,
        'bitrate': kilobits(televised(mux)),
        'peak-bitrate': kilobits(televised(mux)),
      });
      Object.assign(stream.audio ?? {}, { bitrate: kilobits(TELEVISION_SOUND) });
    }
  }
  for (const recording of Object.values(site.recordings)) {
    const interval =
      site.streams[recording.stream]?.video?.['keyframe-interval'] ??
      sourceOf(site, recording.stream)?.video?.['keyframe-interval'] ??
      '2 s';
    recording.segment = `${Math.max(8, 2 * Number.parseFloat(interval))} s`;
  }
  return stringify(site, { lineWidth: 0 });
}

/** The wiring alone: switches, hosts and cables, without streams. */
export function wiring(text: string): string {
  const whole = Object.entries(parse(text) as Written);
  const wires = whole.filter(([section]) => !['streams', 'recordings', 'volumes'].includes(section));
  return stringify(Object.fromEntries(wires), { lineWidth: 0 });
}

/** bit/s of each sound of television. */
export const TELEVISION_SOUND = 64_000;

/** bit/s of video in a multiplex of a declared rate, as it is scaled. */
export function televised(mux: string): number {
  return bitsOf(mux) * SCALE * 0.75 - 1.2 * TELEVISION_SOUND;
}

function sourceOf({ streams }: Written, name: string): WrittenStream | undefined {
  const { carries } = streams[name] ?? {};
  return carries === undefined ? undefined : streams[carries];
}

/** Of a rate as the sample writes them. */
export function bitsOf(text: string): number {
  const [, figure, prefix] = /^([\d.]+) ([kM])b\/s$/.exec(text) ?? [];
  if (figure === undefined) throw new Error(`${text} is no rate that the sample writes`);
  return Number(figure) * (prefix === 'M' ? 1_000_000 : 1000);
}

function kilobits(rate: number): string {
  return `${(rate / 1000).toFixed(3)} kb/s`;
}
