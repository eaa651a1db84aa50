/** The load in a direction of a link, as drawings show it: the report's figure, and whether it is over a limit. */

import { type Link, oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { isLoadKnown, shareWords, sumWords } from '../report/answer/words.ts';
import { boundsOf } from '../report/bounds.ts';
import type { Port } from '../site/model.ts';
import type { Look, DrawingOptions } from './drawing.ts';

export interface ShownLoad {
  /** bit/s on the line, as it is wanted. */
  readonly rate: number;
  /** `6.45 Mb/s` */
  readonly rateWords: string;
  /** All that crosses has a rate, and the link a speed. */
  readonly isKnown: boolean;
  /** Share of the link's speed; 0 where the speed is undeclared, and then not shown. */
  readonly share: number;
  /** `54 %`; the rate where the link's speed is undeclared. */
  readonly words: string;
  /** ▲ over the limit, △ over what the site warns at; always judged at peak. */
  readonly sign: '▲' | '△' | '';
}

/** What crosses a link in the direction in which frames leave by `out`. */
export function shownLoad(plan: Plan, link: Link, out: Port, { rate }: DrawingOptions): ShownLoad {
  const { line } = plan.network.load(link, out);
  const isKnown = isLoadKnown(plan, link, out);
  const { capacity } = link;
  const atPeak = capacity === undefined || capacity === 0 ? 0 : line.peak / capacity;
  const { warn, limit } = boundsOf(plan.site.policies.linkLoad);
  const rateWords = sumWords(line[rate], isKnown);
  return {
    rate: line[rate],
    rateWords,
    isKnown: isKnown && capacity !== undefined,
    share: capacity === undefined || capacity === 0 ? 0 : line[rate] / capacity,
    words: capacity === undefined ? rateWords : shareWords(line[rate], capacity, isKnown),
    sign: atPeak > limit ? '▲' : atPeak > warn ? '△' : '',
  };
}

/** Both directions of the link at a port: out of it, and into it. */
export function bothLoads(
  plan: Plan,
  link: Link,
  port: Port,
  wanted: DrawingOptions,
): { out: ShownLoad; into: ShownLoad } {
  return { out: shownLoad(plan, link, port, wanted), into: shownLoad(plan, link, oppositePort(link, port), wanted) };
}

/** The look of what has both loads. */
export function lookOf(loads: readonly ShownLoad[], otherwise: Look): Look {
  if (loads.some(({ sign }) => sign === '▲')) return 'bad';
  return loads.some(({ sign }) => sign === '△') ? 'warn' : otherwise;
}
