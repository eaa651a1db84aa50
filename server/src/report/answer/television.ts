import type { Plan } from '../../plan.ts';
import { type Connector, connectorName } from '../../site/model.ts';
import type { Multiplex, Occasion, Service } from '../../site/television/facts.ts';
import { netRateOf } from '../../site/television/channel.ts';
import type { Point } from '../../television/reception.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { bitRate, bitRateUpTo, count, few } from '../../text/words.ts';
import { answer } from './words.ts';

/** `3 multiplexes, weakest hill-1 at outlet/tv: 61.2 dBµV, margin 22.3 dB` */
export function weakestWords({ television: { reception } }: Plan, connectors: readonly Connector[]): string {
  const points = connectors.flatMap((connector) => reception.pointsAt(connector));
  const weakest = weakestOf(points);
  if (weakest === undefined) return 'no multiplex arrives';
  const all = new Set(points.map(({ signal }) => signal.multiplex)).size;
  const many = all === 1 ? '' : `${count(all, 'multiplex', 'multiplexes')}, weakest `;
  return `${many}${weakest.signal.multiplex.name}${connectors.length === 1 ? '' : ` at ${weakest.signal.at.name}`}: ${pointWords(weakest)}`;
}

/** The point with the least margin, or the lowest level where no margin is known. */
export function weakestOf(points: readonly Point[]): Point | undefined {
  const [weakest] = [...points].sort(
    (a, b) => (a.margin ?? Infinity) - (b.margin ?? Infinity) || a.signal.level - b.signal.level,
  );
  return weakest;
}

/** `61.2 dBµV, margin 22.3 dB` */
export function pointWords({ signal, margin }: Point): string {
  return `${level(signal.level)}, margin ${margin === undefined ? '?' : decibels(margin)}`;
}

/** `24.1 Mb/s · weakest at loft/tv: 61.2 dBµV, margin 22.3 dB` */
export function multiplexAnswer({ site, television: { reception } }: Plan, multiplex: Multiplex): string {
  const rate = netRateOf(site, multiplex);
  const places = [...reception.outlets, ...reception.receivers].flatMap(({ points }) => points);
  const own = places.filter(({ signal }) => signal.multiplex === multiplex);
  const weakest = weakestOf(own);
  return answer(
    rate === undefined ? '? b/s' : bitRate(rate.rate),
    weakest === undefined
      ? 'arrives at no outlet or tuner'
      : `weakest at ${connectorName(weakest.signal.at)}: ${pointWords(weakest)}`,
  );
}

/** `4.2 Mb/s, at most 6 · in hill-1` */
export function serviceAnswer({ rate, peakRate, multiplexes }: Service): string {
  return answer(
    rate === undefined ? '? b/s' : bitRateUpTo(rate, peakRate ?? rate),
    multiplexes.length === 0 ? 'in no multiplex' : `in ${few(multiplexes)}`,
  );
}

/** `needs 3 tuners at once · all are there` */
export function occasionAnswer({ television: { tuning } }: Plan, occasion: Occasion): string {
  const { asked, unmet } = tuning.of(occasion);
  if (asked.length === 0) return 'needs no tuner';
  const missing =
    unmet.length === 0 ? 'all are there' : `${few(unmet.map(({ multiplex }) => multiplex.name))} cannot be had`;
  return answer(`needs ${count(asked.length, 'tuner')} at once`, missing);
}
