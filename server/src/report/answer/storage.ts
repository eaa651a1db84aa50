import type { Plan } from '../../plan.ts';
import { isRateKnown } from '../../site/media.ts';
import type { Recording, Site } from '../../site/model.ts';
import { DAY } from '../../standards/time-units.ts';
import type { RecordingFigures, VolumeFigures } from '../../storage/storage.ts';
import { bytes, days, percent } from '../../text/words.ts';
import { answer } from './words.ts';

/** Whether the stream of a recording has a rate. */
export function isSizeKnown(site: Site, { stream }: Recording): boolean {
  const own = stream === undefined ? undefined : site.streamByName.get(stream);
  return own !== undefined && isRateKnown(site, own);
}

/** `65.8 GB`; with `+ ?` where a part of it is not known, and `?` where nothing is. */
export function sizeWords(amount: number, isKnown: boolean): string {
  if (isKnown) return bytes(amount);
  return amount === 0 ? '?' : `${bytes(amount)} + ?`;
}

/** `12 % of 7.6 TB needed · 65.8 GB a day · full after 115 d if nothing is deleted` */
export function volumeAnswer({ site }: Plan, figures: VolumeFigures): string {
  const { recordings, usableBytes, bytesKept, bytesPerDay, daysUntilFull } = figures;
  if (recordings.length === 0)
    return answer(usableBytes === undefined ? '? usable' : `${bytes(usableBytes)} usable`, 'nothing is recorded to it');
  const isKnown = recordings.every(({ recording }) => isSizeKnown(site, recording));
  const isKept = recordings.every(({ recording }) => recording.keep !== undefined);
  return answer(
    needWords(usableBytes, bytesKept, isKnown && isKept),
    `${sizeWords(bytesPerDay, isKnown)} a day`,
    daysUntilFull === undefined || !isKnown
      ? 'full after ?'
      : `full after ${days(daysUntilFull)} if nothing is deleted`,
  );
}

function needWords(usable: number | undefined, kept: number, isKnown: boolean): string {
  if (usable === undefined) return `${sizeWords(kept, isKnown)} of ? needed`;
  if (!isKnown || usable === 0) return `? of ${bytes(usable)} needed`;
  return `${percent(kept, usable)} of ${bytes(usable)} needed`;
}

/** `922 GB for 14 d · 65.8 GB a day · 12 % of archive` */
export function recordingAnswer({ site, storage }: Plan, figures: RecordingFigures): string {
  const { recording, bytesKept, bytesPerDay, volume } = figures;
  const isKnown = isSizeKnown(site, recording);
  const usable = volume === undefined ? undefined : storage.on(volume).usableBytes;
  const { keep } = recording;
  return answer(
    keep === undefined || bytesKept === undefined
      ? 'never deleted'
      : `${sizeWords(bytesKept, isKnown)} for ${days(keep / DAY)}`,
    `${sizeWords(bytesPerDay, isKnown)} a day`,
    usable === undefined || usable === 0 || bytesKept === undefined || !isKnown
      ? undefined
      : `${percent(bytesKept, usable)} of ${volume?.name ?? ''}`,
  );
}
