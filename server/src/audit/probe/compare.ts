/** Compares a measured stream with its declaration; each difference is reported at the key that declares it. */

import { type Declared, declaredOf, isInBraces } from './declared.ts';
import { visible } from '../../text/visible.ts';
import { durationLike, formatQuantity } from '../../text/quantity.ts';
import { bitRate, duration, frequency, asName } from '../../text/words.ts';
import { scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import type { Found, RuleInfo } from '../../lint/rule.ts';
import { codecWord } from './codecs.ts';
import { probeRules } from './rules.ts';
import type { ProbedPart } from './ffprobe.ts';
import { type MeasuredStream, measure } from './measure.ts';

/** Ten-thousandths by which frame rate and keyframes may differ. Common practice, no source. */
const EXACT = 200;
/** Milliseconds: the shortest stretch that counts for a peak. */
const PEAK_OVER = 1000;

/** @param tolerance ten-thousandths by which bit rates may differ */
export function probeDifferences(site: Site, stream: Stream, parts: readonly ProbedPart[], tolerance: number): Found[] {
  const media = site.media(stream) ?? { video: undefined, audio: undefined };
  return (['video', 'audio'] as const).flatMap((kind) => {
    const part = parts.find((each) => each.kind === kind);
    if (part === undefined) return media[kind] === undefined ? [] : missing(site, stream, kind);
    if (media[kind] === undefined) return undeclared(stream, part);
    const compared = new Compared(site, stream, kind);
    const measured = measure(part);
    compared.codec(part);
    if (kind === 'video') {
      compared.size(part);
      compared.frameRate(measured);
      compared.keyframes(measured);
    } else {
      compared.sampleRate(part);
      compared.channels(part);
    }
    compared.bitRate(measured, tolerance);
    compared.peak(measured, tolerance);
    return compared.found;
  });
}

class Compared {
  readonly found: Found[] = [];
  private readonly stream: Stream;
  private readonly kind: 'video' | 'audio';
  private readonly declared: (key: string) => Declared | undefined;

  constructor(site: Site, stream: Stream, kind: 'video' | 'audio') {
    this.stream = stream;
    this.kind = kind;
    this.declared = (key) => declaredOf(site, stream, kind, key);
  }

  codec({ codec }: ProbedPart): void {
    const declared = this.declared('codec');
    if (codec === undefined || declared === undefined) return;
    const word = codecWord(codec);
    if (word === declared.text) return;
    const name = word ?? visible(codec, 40);
    this.report(probeRules.codec, declared, `is encoded as ${asName(name)}, not as ${declared.text}`, word);
  }

  size({ width, height }: ProbedPart): void {
    const declared = this.declared('size');
    if (width === undefined || height === undefined || declared === undefined) return;
    const text = `${width}x${height}`;
    if (text !== declared.text)
      this.report(probeRules.size, declared, `has pictures of ${text}, not ${declared.text}`, text);
  }

  frameRate({ frameRate }: MeasuredStream): void {
    const declared = this.declared('frame-rate');
    if (frameRate === undefined || declared?.value === undefined || isNear(frameRate, declared.value, EXACT)) return;
    const text = String(usualRate(frameRate));
    this.report(probeRules.frameRate, declared, `has ${text} pictures per second, not ${declared.text}`, text);
  }

  keyframes({ keyframes, frameRate, milliseconds, keyframeCount }: MeasuredStream): void {
    const declared = this.declared('keyframe-interval');
    if (declared?.value === undefined) return;
    // Keyframes may be off by up to half a picture: more is another picture.
    const slack = Math.max((declared.value * EXACT) / 10_000, frameRate === undefined ? 0 : 500 / frameRate);
    if (keyframes === undefined) {
      if (keyframeCount > 1 || milliseconds <= 2 * declared.value + slack) return;
      this.report(
        probeRules.keyframeInterval,
        declared,
        `had ${keyframeCount === 0 ? 'no' : 'one'} keyframe in ${duration(milliseconds)}, and not one every ${declared.text}`,
      );
      return;
    }
    const { middle, shortest, longest } = keyframes;
    if (Math.abs(middle - declared.value) <= slack) return;
    const text = durationLike(roundTime(middle), declared.text);
    const range =
      longest - shortest > 2 * slack
        ? ` for the most part (${duration(Math.round(shortest))} to ${duration(Math.round(longest))})`
        : '';
    this.report(
      probeRules.keyframeInterval,
      declared,
      `has a keyframe every ${text}${range}, not every ${declared.text}`,
      text,
    );
  }

  bitRate({ bitRate: rate }: MeasuredStream, tolerance: number): void {
    const declared = this.declared('bitrate');
    if (rate === undefined || declared?.value === undefined || isNear(rate, declared.value, tolerance)) return;
    const more = rate > declared.value;
    const text = formatQuantity(threeDigits(rate), 'bit-rate');
    const difference = `${bitRate(Math.abs(rate - declared.value))} ${more ? 'more' : 'less'} than ${declared.text}`;
    const what = `sends ${bitRate(rate)} of ${this.kind} on average, ${difference}`;
    this.report(probeRules.bitRate, declared, what, text, more ? undefined : 'information');
  }

  peak({ peakOver }: MeasuredStream, tolerance: number): void {
    const declared = this.declared('peak-bitrate');
    const over = Math.max(PEAK_OVER, this.declared('keyframe-interval')?.value ?? 0);
    const rate = peakOver(over);
    if (rate === undefined || declared?.value === undefined || rate <= declared.value * (1 + tolerance / 10_000))
      return;
    const text = formatQuantity(threeDigits(rate), 'bit-rate');
    this.report(
      probeRules.peak,
      declared,
      `sends ${bitRate(rate)} of ${this.kind} in its busiest ${duration(over)}, more than ${declared.text}`,
      text,
    );
  }

  sampleRate({ sampleRate }: ProbedPart): void {
    const declared = this.declared('sample-rate');
    if (sampleRate === undefined || declared?.value === undefined || sampleRate === declared.value) return;
    this.report(
      probeRules.sampleRate,
      declared,
      `has ${frequency(sampleRate)} of audio, not ${declared.text}`,
      formatQuantity(sampleRate, 'frequency'),
    );
  }

  channels({ channels }: ProbedPart): void {
    const declared = this.declared('channels');
    if (channels === undefined || declared?.value === undefined || channels === declared.value) return;
    this.report(
      probeRules.channels,
      declared,
      `has ${channels} channels of audio, not ${declared.text}`,
      String(channels),
    );
  }

  private report(
    rule: RuleInfo,
    { by, keyPath, text: declared }: Declared,
    what: string,
    text?: string,
    severity?: 'information',
  ): void {
    const inFlow = isInBraces(by.item, keyPath.slice(0, -1));
    const of = by === this.stream ? '' : `, as ${asName(by.name)} declares, which it carries`;
    this.found.push({
      rule,
      ...(severity !== undefined && { severity }),
      at: placeOf(by.item, keyPath),
      message: `${asName(this.stream.name)} ${what}${of}. Correct the encoder, or the site.`,
      acceptAt: [this.stream.name, ...(by === this.stream ? [] : [by.name])],
      ...(text !== undefined &&
        text !== declared && {
          fixes: () => [
            {
              title: `Declare ${text} as ${keyPath[keyPath.length - 1] ?? ''} of ${asName(by.name)}`,
              safe: false,
              edits: [setValue(by.item, keyPath, /^[\d.]+$/.test(text) ? text : scalarText(text, inFlow))],
            },
          ],
        }),
    });
  }
}

const SPOKEN = 'Turn it off where nobody needs it: what is said is often protected by stricter law than what is seen. ';

function missing(site: Site, stream: Stream, kind: 'video' | 'audio'): Found[] {
  const declared = declaredOf(site, stream, kind);
  if (declared === undefined) return [];
  return [
    {
      rule: probeRules.missing,
      at: placeOf(declared.by.item, declared.keyPath, 'key'),
      message:
        `${asName(stream.name)} has no ${kind}, although it is declared to. ` +
        'Turn it on at its source, or take it out of the site.',
      acceptAt: [stream.name],
    },
  ];
}

function undeclared(stream: Stream, { kind, codec, sampleRate }: ProbedPart): Found[] {
  const what = [
    codec === undefined ? undefined : (codecWord(codec) ?? visible(codec, 40)),
    sampleRate === undefined ? undefined : frequency(sampleRate),
  ];
  const known = what.filter((each) => each !== undefined);
  return [
    {
      rule: probeRules.undeclared,
      at: placeOf(stream.item, [], 'key'),
      message:
        `${asName(stream.name)} has ${kind}${known.length === 0 ? '' : ` (${known.join(', ')})`} that the site does not declare. ` +
        `${kind === 'audio' ? SPOKEN : ''}Else declare it.`,
      acceptAt: [stream.name],
    },
  ];
}

function isNear(value: number, declared: number, tenThousandths: number): boolean {
  return Math.abs(value - declared) * 10_000 <= tenThousandths * declared;
}

/** The standard rate nearest to a counted one: a whole number or n·1000/1001 (SMPTE, from memory). */
function usualRate(rate: number): number {
  const whole = Math.round(rate);
  const near = [whole, (whole * 1000) / 1001].sort((a, b) => Math.abs(a - rate) - Math.abs(b - rate))[0] ?? rate;
  return Number((whole > 0 && Math.abs(near - rate) <= 0.002 * rate ? near : rate).toFixed(2));
}

/** Rounded to tenths of a second where that is close enough. */
function roundTime(milliseconds: number): number {
  const tenths = Math.round(milliseconds / 100) * 100;
  return Math.abs(tenths - milliseconds) <= 0.005 * milliseconds ? tenths : Math.round(milliseconds);
}

function threeDigits(value: number): number {
  return Number(value.toPrecision(3));
}
