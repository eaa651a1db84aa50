/** Compares the bit rate of recordings with the declared one, with a fix at the declaration. */

import type { Plan } from '../../plan.ts';
import { type Edit, type Fix, nodeAt, setValue } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { Recording, Site, Stream } from '../../site/model.ts';
import { formatQuantity } from '../../text/quantity.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { bitRate, duration, list, percent, asName } from '../../text/words.ts';
import type { Found } from '../../lint/rule.ts';
import { recordingRules as rules } from './rules.ts';
import type { Looked } from './looked.ts';
import type { Rate } from './rate.ts';

/** The part by which a measured rate may differ (common practice, no source). */
const TOLERANCE = 0.1;
/** Nothing is reported from so few whole segments (common practice, no source). */
const FEW = 3;

/** The place of a declared rate that recordings depend on. */
interface Figure {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly stream: string;
  readonly peak: number | undefined;
}

interface Measured {
  readonly name: string;
  readonly rate: Rate;
  /** bit/s of the whole recording, and the part declared elsewhere, its audio. */
  readonly declared: number;
  readonly beside: number;
  readonly over: number;
}

export function ofBitRate(plan: Plan, looked: readonly Looked[]): Found[] {
  const groups = new Map<Item, { figure: Figure; measured: Measured[] }>();
  for (const {
    recording,
    course: { rate, first, end },
  } of looked) {
    const declared = plan.storage.of(recording).rate.nominal;
    const figure = recording.stream === undefined ? undefined : figureOf(plan.site, recording.stream);
    if (rate === undefined || figure === undefined || declared === 0 || end - first <= FEW) continue;
    const video = figure.keyPath[0] === 'video' ? videoRateOf(plan.site, recording) : declared;
    const group = groups.get(figure.item) ?? { figure, measured: [] };
    group.measured.push({ name: recording.name, rate, declared, beside: declared - video, over: rate.milliseconds });
    groups.set(figure.item, group);
  }
  return [...groups.values()].flatMap(({ figure, measured }) => compared(figure, measured));
}

/** The declaration of a stream's rate: its own, or that of the stream that it carries. */
function figureOf({ streamByName }: Site, name: string): Figure | undefined {
  const seen = new Set<Stream>();
  const own = streamByName.get(name);
  for (
    let stream = own;
    stream !== undefined && !seen.has(stream);
    stream = stream.carries === undefined ? undefined : streamByName.get(stream.carries)
  ) {
    seen.add(stream);
    if (stream.video?.rate === undefined) continue;
    const { nominal, peak, peakDeclared } = stream.video.rate;
    if (nodeAt(stream.item, ['video', 'bitrate']) === undefined || nominal === 0) return undefined;
    return {
      item: stream.item,
      keyPath: ['video', 'bitrate'],
      stream: stream.name,
      peak: peakDeclared ? peak : undefined,
    };
  }
  if (own?.muxRate === undefined) return undefined;
  return { item: own.item, keyPath: ['mux-rate'], stream: own.name, peak: undefined };
}

function compared(figure: Figure, measured: readonly Measured[]): Found[] {
  const differing = measured.filter(
    ({ rate, declared }) => Math.abs(rate.mean - declared) > TOLERANCE * declared + rate.error,
  );
  if (differing.length === 0) return [];
  const time = measured.reduce((sum, { over }) => sum + over, 0);
  const figures = measured.map(({ rate, beside }) => rate.mean - beside);
  const together = measured.reduce((sum, { rate, beside, over }) => sum + (rate.mean - beside) * over, 0) / time;
  const agree = figures.every((own) => Math.abs(own - together) <= TOLERANCE * together) && together > 0;
  const more = differing.some(({ rate, declared }) => rate.mean > declared);
  const texts = (agree ? differing : measured).map(
    ({ name, rate, declared }) =>
      `${asName(name)} takes ${bitRate(rate.mean)} over ${duration(Math.round(rate.milliseconds / 1000) * 1000)} ` +
      `(${bitRate(rate.median)} in the middle one of its files), ` +
      `${percent(rate.mean, declared)} of the ${bitRate(declared)} declared`,
  );
  const advice = agree
    ? `Take what was measured into ${figure.stream}, or correct the camera.`
    : `They are said to be of one rate, that of ${figure.stream}, and are not: is one another stream?`;
  return [
    {
      rule: rules.bitRate,
      severity: more ? 'warning' : 'information',
      at: placeOf(figure.item, figure.keyPath),
      message: `${list(texts)}. ${advice}`,
      acceptAt: [...measured.map(({ name }) => name), figure.stream],
      ...(agree
        ? {
            fixes: () => [
              fixOf(figure, together, Math.max(...measured.map(({ rate, beside }) => rate.busiest - beside))),
            ],
          }
        : {}),
    },
  ];
}

function fixOf({ item, keyPath, peak }: Figure, rate: number, busiest: number): Fix {
  const text = formatQuantity(rounded(rate), 'bit-rate');
  const edits: Edit[] = [setValue(item, keyPath, text)];
  // A peak is never below the average.
  const raised = peak !== undefined && peak < rounded(rate);
  if (raised)
    edits.push(
      setValue(item, ['video', 'peak-bitrate'], formatQuantity(Math.max(rounded(busiest), rounded(rate)), 'bit-rate')),
    );
  return {
    title: `Write the measured ${text}${raised ? ', and the most that was measured as its peak' : ''}`,
    safe: false,
    edits,
  };
}

/** Three significant digits. */
function rounded(bitsPerSecond: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(bitsPerSecond)) - 2);
  return Math.round(bitsPerSecond / step) * step;
}

/** bit/s of the picture alone. */
function videoRateOf({ streamByName, media }: Site, { stream: name }: Recording): number {
  const stream = name === undefined ? undefined : streamByName.get(name);
  return stream === undefined ? 0 : (media(stream).video?.rate?.nominal ?? 0);
}
