/** The pieces of an answer: the first line of a hover, with the most important facts of a thing. */

import type { Link } from '../../network/link.ts';
import type { Load } from '../../network/rates.ts';
import type { Plan } from '../../plan.ts';
import type { Port } from '../../site/model.ts';
import { isRateKnown } from '../../site/media.ts';
import { bitRate, bitRateUpTo, percent } from '../../text/words.ts';

/** `6.5 Mb/s · reaches recorder`; missing parts are left out. */
export function answer(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join(' · ');
}

/** Whether all that crosses a direction of a link has a declared rate; if not, the real load is greater. */
export function isLoadKnown({ site, network }: Plan, link: Link, out: Port): boolean {
  return (
    network.copies(link, out).every(({ stream }) => isRateKnown(site, stream)) &&
    network.trafficCopies(link, out).every(({ traffic }) => traffic.rate !== undefined)
  );
}

/** `6.45 Mb/s, at most 9.67`; with `+ ?` where a part of it is not known, and `?` where nothing is. */
export function rateWords({ nominal, peak }: Load, isKnown: boolean): string {
  if (isKnown) return bitRateUpTo(nominal, peak);
  return peak === 0 ? '?' : `${bitRateUpTo(nominal, peak)} + ?`;
}

/** As `rateWords`, for one rate. */
export function sumWords(rate: number, isKnown: boolean): string {
  if (isKnown) return bitRate(rate);
  return rate === 0 ? '?' : `${bitRate(rate)} + ?`;
}

/** `95 %` of a whole, likewise. */
export function shareWords(part: number, whole: number, isKnown: boolean): string {
  if (whole === 0) return '?';
  if (isKnown) return percent(part, whole);
  return part === 0 ? '?' : `${percent(part, whole)} + ?`;
}
