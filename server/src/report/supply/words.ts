/** Power in a line. */

import type { Plan } from '../../plan.ts';
import type { CameraRuntime } from '../../supply/camera-runtimes.ts';
import { QUERY_INTERVAL, QUERY_RESPONSE_INTERVAL } from '../../standards/igmp.ts';
import { timeToReconverge } from '../../standards/spanning-tree.ts';
import { count, few, list, runtime } from '../../text/words.ts';

/** A time without mains; `?` where a battery on the way is undeclared. */
export function lastsWords(lasts: number | undefined): string {
  return lasts === undefined ? '?' : lasts === 0 ? 'ends at once' : runtime(lasts);
}

/** When pictures go another way: `at once`, `after 44 min and 1 h 51 min`; empty where they never do. */
export function turnsWords(turns: readonly number[]): string {
  const later = turns.filter((turn) => turn > 0).map(runtime);
  return list([
    ...(later.length < turns.length ? ['at once'] : []),
    ...(later.length > 0 ? [`after ${list(later)}`] : []),
  ]);
}

/** A note on pictures that change to another way. */
export const TURN_NOTE =
  'another way: of the ring, once a switch of the one before is dark; pictures are away for at most ' +
  `${timeToReconverge(false)} s, groups for ${QUERY_INTERVAL + QUERY_RESPONSE_INTERVAL} s more`;

/** `8 of 12 cameras end at once when the mains fails: …; the other 4 go on for 44 min at least.` */
export function outageWords(plan: Plan): string {
  const lives = plan.cameraRuntimes().filter(({ chain }) => chain.length > 0);
  if (lives.length === 0) return 'No camera is recorded or seen.';
  const dark = lives.filter(({ lasts }) => lasts === 0);
  const going = lives.filter(({ lasts }) => lasts !== 0);
  if (going.length === 0) {
    const end = `${all(lives.length)} ${lives.length === 1 ? 'ends' : 'end'} at once`;
    return plan.supply().isDeclared
      ? `When the mains fails, ${end}.`
      : `The site does not declare what feeds its devices. If that is the mains alone, ${end} when it fails.`;
  }
  const rest = goingWords(going);
  if (dark.length === 0) return `When the mains fails, ${all(lives.length)} go on for ${rest}.`;
  const names = few(dark.map(({ camera }) => camera.name));
  const others = going.length === 1 ? 'the other one goes' : `the other ${going.length} go`;
  return (
    `When the mains fails, ${dark.length} of ${count(lives.length, 'camera')} ` +
    `${dark.length === 1 ? 'ends' : 'end'} at once (${names}); ${others} on for ${rest}.`
  );
}

function all(number: number): string {
  return number === 1 ? 'the camera' : number === 2 ? 'both cameras' : `all ${number} cameras`;
}

function goingWords(going: readonly CameraRuntime[]): string {
  const known = going.flatMap(({ lasts }) => lasts ?? []);
  if (known.length < going.length) return 'an unknown time, as a battery on the way is undeclared';
  const [least, most] = [Math.min(...known), Math.max(...known)];
  return runtime(least) === runtime(most) ? runtime(least) : `${runtime(least)} to ${runtime(most)}`;
}
