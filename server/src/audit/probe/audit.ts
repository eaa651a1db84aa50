/** Compares ffprobe's readings of a stream with its declaration. */

import type { Site, Stream } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { bitRate, duration, frequency } from '../../text/words.ts';
import type { Audited } from '../audited.ts';
import { diagnose } from '../../lint/diagnose.ts';
import { Unreadable } from '../unreadable.ts';
import { codecWord } from './codecs.ts';
import { probeDifferences } from './compare.ts';
import type { Probed, ProbedPart } from './ffprobe.ts';
import { measure } from './measure.ts';
import { probedStream } from './which-stream.ts';

/** Ten-thousandths by which bit rates may differ. Common practice, no source. */
export const USUAL_TOLERANCE = 1000;

/**
 * @param named the stream; where absent, the probed address or file shows it
 * @throws Unreadable where nothing shows which stream it is
 */
export function auditProbe(site: Site, probed: Probed, named: string | undefined, tolerance: number): Audited {
  const stream = named === undefined ? probedStream(site, probed.filename) : site.streamByName.get(named);
  if (stream === undefined) throw new Unreadable(`the site has no stream ${visible(named ?? '', 40)}.`);
  if (probed.parts.length === 0) throw new Unreadable('it has neither video nor audio.');
  return {
    found: diagnose(site.lint, probeDifferences(site, stream, probed.parts, tolerance)),
    summary: [summaryOf(stream, probed.parts)],
  };
}

function summaryOf({ name }: Stream, parts: readonly ProbedPart[]): string {
  return `${name}: ${parts.map(partWords).join('; ')}.`;
}

function partWords(part: ProbedPart): string {
  const { kind, codec, width, height, sampleRate, channels } = part;
  const { frameRate, keyframes, bitRate: rate, milliseconds } = measure(part);
  return [
    codec === undefined ? kind : `${kind} ${codecWord(codec) ?? visible(codec, 40)}`,
    width === undefined || height === undefined ? undefined : `${width}x${height}`,
    frameRate === undefined ? undefined : `${Number(frameRate.toFixed(2))} pictures/s`,
    kind === 'audio' || keyframes === undefined
      ? undefined
      : `a keyframe every ${duration(Math.round(keyframes.middle))}`,
    kind === 'video' || sampleRate === undefined ? undefined : frequency(sampleRate),
    kind === 'video' || channels === undefined ? undefined : `${channels} ${channels === 1 ? 'channel' : 'channels'}`,
    rate === undefined ? undefined : bitRate(rate),
    milliseconds === 0 ? undefined : `over ${duration(milliseconds)}`,
  ]
    .filter((words) => words !== undefined)
    .join(', ');
}
