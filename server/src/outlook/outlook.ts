/** The outlook of a plan: how many more cameras fit at each switch, and what is lost with each element. */

import { elementsOf } from '../failure/element.ts';
import { type Ranked, finished, rankingSteps } from '../failure/ranking.ts';
import { heaviestAt } from '../headroom/heaviest.ts';
import { type Headroom, headroomOf } from '../headroom/headroom.ts';
import { triedAtOnce } from '../headroom/tried-at-once.ts';
import type { Plan } from '../plan.ts';
import type { Device } from '../site/model.ts';

export interface Outlook {
  /** The headroom for the camera that sends most at each switch. */
  readonly headroom: readonly Headroom[];
  /** The switches that were not tried, as there is too much. */
  readonly untried: readonly Device[];
  /** The worst first; `undefined` where there are too many elements to try. */
  readonly failures: readonly Ranked[] | undefined;
}

/** Beyond so many switches, or elements that may fail, they must be asked for one by one. */
const MOST_SWITCHES = 24;
const MOST_ELEMENTS = 500;

/** Computes the outlook in steps of some tens of milliseconds, so that a server can answer others in between. */
export function* outlookSteps(plan: Plan): Generator<undefined, Outlook, undefined> {
  const headroom: Headroom[] = [];
  const switches = plan.site.devices.filter(({ kind }) => kind === 'switch');
  const tried = Math.min(MOST_SWITCHES, triedAtOnce(plan));
  for (const at of switches.slice(0, tried)) {
    const camera = heaviestAt(plan, at);
    if (camera === undefined) continue;
    headroom.push(headroomOf(plan, camera, at));
    yield;
  }
  const outlook = { headroom, untried: switches.slice(tried) };
  if (elementsOf(plan).length > MOST_ELEMENTS) return { ...outlook, failures: undefined };
  const { ranked, untried } = yield* rankingSteps(plan);
  return { ...outlook, failures: untried.length === 0 ? ranked : undefined };
}

export function outlookOf(plan: Plan): Outlook {
  return finished(outlookSteps(plan));
}
