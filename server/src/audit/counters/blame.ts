/** Guesses from rates which stream best explains why a port carried more or less than planned. */

import type { Plan } from '../../plan.ts';
import type { Port, Stream } from '../../site/model.ts';
import { type CountedDirection, sharesIn, straysIn } from './planned.ts';

/**
 * `missing`: it does not come. `again`: it comes twice, or at twice its rate. `stray`: it is not planned there.
 * `changed`: it comes at another rate, as a direction shows that carries only this stream.
 */
export type Happening = 'missing' | 'again' | 'stray' | 'changed';

export interface Suspect {
  readonly stream: Stream;
  readonly happening: Happening;
  /** bit/s; for a changed stream, its change. */
  readonly rate: number;
}

/** One or two suspects whose rates add up to the difference; where several fit equally well, all alternatives. */
export interface Blame {
  readonly alternatives: readonly (readonly Suspect[])[];
  /** All of a kind are suspects: no stream comes, or every group that the switch knows. */
  readonly all: boolean;
}

/** A direction that was measured. */
export interface Seen {
  /** bit/s more than planned. */
  readonly difference: number;
  /** bit/s of each stream that is planned there. */
  readonly shares: ReadonlyMap<Stream, number>;
}

/** Measured directions by the port that frames leave by. */
export type SeenAll = ReadonlyMap<Port, Seen>;

/**
 * @param difference bit/s more than planned; negative where it is less
 * @param all every measured direction: a stream that is missing at its camera too is a likelier suspect
 * @param tolerance the part of the difference by which a rate may miss it
 * @returns `undefined` where nothing fits
 */
export function blame(
  plan: Plan,
  at: CountedDirection,
  difference: number,
  all: SeenAll,
  tolerance: number,
): Blame | undefined {
  const wanted = Math.abs(difference);
  const suspects = difference < 0 ? missingIn(plan, at) : surplusIn(plan, at);
  const misses = (...rates: readonly number[]): number => Math.abs(wanted - rates.reduce((sum, rate) => sum + rate, 0));
  const fits = (miss: number): boolean => miss <= tolerance * wanted;
  const single = suspects.filter(({ rate }) => fits(misses(rate)));
  for (const some of [seenElsewhere(plan, at, difference, all, tolerance), single]) {
    const likeliest = some.map((suspect) => ({
      suspect,
      weight: weightOf(plan, at, suspect, all, tolerance),
      miss: misses(suspect.rate),
    }));
    const weight = Math.max(...likeliest.map((each) => each.weight));
    const miss = Math.min(...likeliest.filter((each) => each.weight === weight).map((each) => each.miss));
    // The measurement cannot distinguish rates as close as that.
    const alike = likeliest.filter((each) => each.weight === weight && each.miss - miss <= 0.01 * wanted);
    if (alike.length > 0) return { alternatives: alike.map(({ suspect }) => [suspect]), all: false };
  }
  for (const kind of ['missing', 'stray'] as const) {
    const groups = suspects.filter(
      ({ happening, stream }) => happening === kind && (kind === 'missing' || stream.group !== undefined),
    );
    if (groups.length > 1 && fits(misses(...groups.map(({ rate }) => rate))))
      return { alternatives: [groups], all: true };
  }
  const pair = nearestPair(suspects, wanted);
  // A pair must fit more closely, as there are so many pairs that one comes near by chance.
  return pair !== undefined && misses(...pair.map(({ rate }) => rate)) <= (tolerance / 5) * wanted
    ? { alternatives: [pair], all: false }
    : undefined;
}

/**
 * Streams whose every measured direction differs by the same amount: at least two directions, or one that carries
 * nothing else. Of several the ones that explain most directions; a stream with just that rate comes before one that
 * has changed by it.
 */
function seenElsewhere(
  plan: Plan,
  at: CountedDirection,
  difference: number,
  all: SeenAll,
  tolerance: number,
): Suspect[] {
  const found = missingIn(plan, at).flatMap(({ stream, rate }) => {
    let [agree, alone] = [0, false];
    for (const { difference: other, shares } of all.values()) {
      const own = shares.get(stream);
      if (own === undefined) continue;
      // The rates differ a little where a direction has tags.
      if (Math.abs(other * (rate / own) - difference) > tolerance * Math.abs(difference)) return [];
      agree++;
      alone ||= shares.size === 1;
    }
    const whole = Math.abs(Math.abs(difference) - rate) <= tolerance * rate;
    if ((!alone && agree < 2) || (!whole && difference < -rate)) return [];
    const happening: Happening = !whole ? 'changed' : difference < 0 ? 'missing' : 'again';
    return [{ agree, whole, suspect: { stream, happening, rate: whole ? rate : Math.abs(difference) } }];
  });
  const rank = ({ agree, whole }: { agree: number; whole: boolean }): number => 2 * agree + (whole ? 1 : 0);
  const best = Math.max(0, ...found.map(rank));
  return found.filter((each) => rank(each) === best).map(({ suspect }) => suspect);
}

function missingIn(plan: Plan, at: CountedDirection): Suspect[] {
  return [...sharesIn(plan, at)].map(([stream, rate]) => ({ stream, happening: 'missing', rate }));
}

function surplusIn(plan: Plan, at: CountedDirection): Suspect[] {
  const again = missingIn(plan, at).map((suspect): Suspect => ({ ...suspect, happening: 'again' }));
  const strays = straysIn(plan, at);
  return [...again, ...strays.map(({ stream, rate }): Suspect => ({ stream, rate, happening: 'stray' }))];
}

/**
 * The number of other directions on the way of the stream, and of those that it carries, that show the same, less those
 * that do not. For a stray, its planned way shows nothing; a group is likelier to stray than a unicast stream.
 */
function weightOf(
  plan: Plan,
  { out }: CountedDirection,
  { stream, happening }: Suspect,
  all: SeenAll,
  tolerance: number,
): number {
  if (happening === 'stray') return stream.group === undefined ? -0.5 : 0;
  let weight = 0;
  const one = carriedBy(plan, stream);
  for (const [other, { difference, shares }] of all) {
    if (other === out) continue;
    for (const each of one) {
      const rate = shares.get(each);
      if (rate === undefined) continue;
      const change = happening === 'missing' ? -difference : difference;
      weight += change >= (1 - 2 * tolerance) * rate ? 1 : -1;
    }
  }
  return weight;
}

/** The stream and those that it carries: where one of these is missing, so is the stream. */
function carriedBy({ site }: Plan, stream: Stream): ReadonlySet<Stream> {
  const all = new Set<Stream>();
  for (let one: Stream | undefined = stream; one !== undefined && !all.has(one);) {
    all.add(one);
    one = one.carries === undefined ? undefined : site.streamByName.get(one.carries);
  }
  return all;
}

/** The two whose rates add up closest to the wanted rate: searched from both ends of the list by rate. */
function nearestPair(suspects: readonly Suspect[], wanted: number): [Suspect, Suspect] | undefined {
  const byRate = [...suspects].sort((a, b) => a.rate - b.rate);
  let best: [Suspect, Suspect] | undefined;
  let least = Infinity;
  for (let [low, high] = [0, byRate.length - 1]; low < high;) {
    const [a, b] = [byRate[low], byRate[high]];
    if (a === undefined || b === undefined) break;
    const sum = a.rate + b.rate;
    if (Math.abs(sum - wanted) < least) [best, least] = [[a, b], Math.abs(sum - wanted)];
    if (sum < wanted) low++;
    else high--;
  }
  return best;
}
