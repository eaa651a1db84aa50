/** What a volume holds, how much is written to it, and when it is full. */

import type { Plan } from '../../plan.ts';
import type { Volume } from '../../site/model.ts';
import { usableDisks } from '../../standards/raid.ts';
import { type RecordingFigures, type VolumeFigures, isTransportStream } from '../../storage/storage.ts';
import { binaryBytes, count, days, duration, percent, threshold } from '../../text/words.ts';
import { streamWords } from './stream.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { type Figure, digitsGrouped } from './figure.ts';
import { recordingAnswer, volumeAnswer } from '../answer/storage.ts';
import { DAY } from '../../standards/time-units.ts';

const SIZES = 'IEC 80000-13';

function size(value: number): Figure {
  return { value, unit: 'B' };
}

export function usableExplained({ volume, usableBytes }: VolumeFigures): Explanation {
  return {
    title: `${volume.name}: usable`,
    columns: [],
    lines: usableLines(volume, usableBytes),
    total: usableLine(usableBytes),
  };
}

function usableLines(
  { capacity, disks, redundancy, reserve }: Volume,
  usableBytes: number | undefined,
): ExplanationLine[] {
  if (capacity === undefined || usableBytes === undefined) return [{ label: 'capacity', cells: ['not declared'] }];
  const lines: ExplanationLine[] = [
    {
      label: disks === undefined ? 'capacity' : 'capacity of a disk',
      cells: [size(capacity)],
      formula: binaryBytes(capacity),
      source: SIZES,
    },
  ];
  let held = capacity;
  if (disks !== undefined) {
    const holding = usableDisks(redundancy, disks) ?? 0;
    held = capacity * holding;
    const lost =
      redundancy === 'none'
        ? count(disks, 'disk')
        : `${redundancy} over ${count(disks, 'disk')} leaves ${holding} for data`;
    lines.push({ label: 'after redundancy', cells: [size(held)], formula: lost });
  }
  if (reserve > 0)
    lines.push({ label: 'reserve', cells: [size(usableBytes - held)], formula: `${threshold(reserve)} kept free` });
  return lines;
}

function usableLine(usableBytes: number | undefined): ExplanationLine {
  return usableBytes === undefined
    ? { label: 'usable', cells: ['unknown'] }
    : { label: 'usable', cells: [size(usableBytes)], formula: binaryBytes(usableBytes) };
}

export function perDayExplained({ volume, recordings, bytesPerDay }: VolumeFigures): Explanation {
  return {
    title: `${volume.name}: written in a day`,
    columns: [],
    lines: recordings.map(dayLine),
    total: { label: 'a day', cells: [size(bytesPerDay)] },
  };
}

function dayLine({ recording, rate, bytesPerDay }: RecordingFigures): ExplanationLine {
  return {
    label: recording.name,
    cells: [size(bytesPerDay)],
    formula: `${digitsGrouped(rate.nominal)} b/s × 86,400 s ÷ 8`,
  };
}

export function daysExplained(plan: Plan, figures: VolumeFigures): Explanation {
  const { volume, usableBytes, bytesPerDay, daysUntilFull, recordings, bytesKept } = figures;
  const after: ExplanationLine[] = [];
  if (bytesKept > 0) {
    const fill =
      usableBytes === undefined || usableBytes === 0 ? '' : `${percent(bytesKept, usableBytes)} of what is usable`;
    after.push({ label: 'needed', cells: [size(bytesKept)], formula: fill });
  }
  if (figures.writeRate.peak > 0) {
    const sustained =
      volume.sustainedWrite === undefined
        ? ''
        : `${percent(figures.writeRate.peak, volume.sustainedWrite)} of what it can sustain`;
    after.push({
      label: 'written at peak',
      cells: [{ value: figures.writeRate.peak, unit: 'B/s' }],
      formula: sustained,
    });
  }
  if (figures.filesPerDay > 0)
    after.push({
      label: 'files',
      cells: [{ value: figures.filesPerDay, unit: 'files/d' }],
      formula: `${digitsGrouped(figures.filesKept)} kept`,
    });
  return {
    answer: volumeAnswer(plan, figures),
    title: `${volume.name}: days until it is full`,
    columns: [],
    lines: [
      ...usableLines(volume, usableBytes),
      usableLine(usableBytes),
      ...recordings.map(dayLine),
      {
        label: 'a day',
        cells: [size(bytesPerDay)],
        formula: `${count(recordings.length, 'recording')}, without what the file format adds, but for .ts`,
      },
    ],
    total: {
      label: 'full after',
      cells: [daysUntilFull === undefined ? 'unknown' : { value: daysUntilFull, unit: 'd' }],
      formula:
        daysUntilFull === undefined
          ? bytesPerDay === 0
            ? 'nothing is written to it'
            : 'its capacity is not declared'
          : 'usable ÷ a day, if nothing were deleted',
    },
    after,
  };
}

export function recordingExplained(plan: Plan, figures: RecordingFigures): Explanation {
  const { recording, rate, bytesPerDay, bytesKept, filesPerDay, filesKept, volume } = figures;
  const stream = recording.stream === undefined ? undefined : plan.site.streamByName.get(recording.stream);
  const lines: ExplanationLine[] = [
    {
      label: isTransportStream(recording.file) ? 'transport stream' : 'payload',
      cells: [{ value: rate.nominal, unit: 'b/s' }],
      formula: `of ${recording.stream ?? 'no stream'}, nominal`,
    },
    {
      label: 'a day',
      cells: [size(bytesPerDay)],
      formula: isTransportStream(recording.file)
        ? 'with headers, tables and stuffing, × 86,400 s ÷ 8'
        : 'payload × 86,400 s ÷ 8, without what the file format adds',
    },
  ];
  const after: ExplanationLine[] = [];
  if (filesPerDay !== undefined && recording.segment !== undefined) {
    const kept = filesKept === undefined ? '' : `; ${digitsGrouped(filesKept)} kept`;
    after.push({
      label: 'files',
      cells: [{ value: filesPerDay, unit: 'files/d' }],
      formula: `one in ${duration(recording.segment)}${kept}`,
    });
  }
  const usable = volume === undefined ? undefined : plan.storage.on(volume).usableBytes;
  if (bytesKept !== undefined && usable !== undefined && usable > 0) {
    after.push({
      label: `of ${volume?.name ?? ''}`,
      cells: [{ value: (bytesKept / usable) * 100, unit: '%' }],
      formula: 'of what is usable',
    });
  }
  return {
    answer: recordingAnswer(plan, figures),
    title: `${recording.name}: recording of ${recording.stream ?? 'no stream'} to ${recording.volume ?? 'no volume'}`,
    ...(stream !== undefined && { sentences: [`${stream.name} is ${streamWords(stream)}.`] }),
    columns: [],
    lines,
    total:
      bytesKept === undefined || recording.keep === undefined
        ? { label: 'kept', cells: ['never deleted'], formula: 'the recording has no `keep`' }
        : { label: 'kept', cells: [size(bytesKept)], formula: `a day × ${days(recording.keep / DAY)}` },
    after,
  };
}
