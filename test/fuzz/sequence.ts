/** Tries sequences of edits at random, and makes one that fails shorter. */

import type { Texts } from '../site.ts';
import { corpus, samples } from './corpus.ts';
import { editing } from './edits.ts';
import { KeptSite, compare } from './incremental.ts';
import { Random } from './random.ts';

export interface FailedSequence {
  readonly seed: number;
  readonly message: string;
  readonly states: readonly Texts[];
}

const EDITS = 25;
const others = corpus.flatMap((texts) => Object.values(texts));

/** Sequences of `seed`, `seed` + 1 and so on, as long as `goesOn` says so and none fails. */
export function searchSequences(
  seed: number,
  goesOn: (edits: number) => boolean,
): { readonly edits: number; readonly failure: FailedSequence | undefined } {
  let edits = 0;
  for (let at = seed; goesOn(edits); at++) {
    const random = new Random(at);
    const begin = random.chance(0.4) ? random.pick(samples) : random.pick(corpus);
    const states = [...editing(begin ?? {}, random, EDITS, others)];
    const message = failureOf(states, at);
    if (message !== undefined) return { edits, failure: { seed: at, message, states } };
    edits += states.length - 1;
  }
  return { edits, failure: undefined };
}

function failureOf(states: readonly Texts[], seed: number): string | undefined {
  const kept = new KeptSite();
  try {
    for (const [step, state] of states.entries()) compare(kept, state, seed + step);
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

/** Fewer states that fail, and lines left out of all of them that are not needed. */
export function shrinkSequence({ seed, message, states }: FailedSequence, milliseconds = 30_000): FailedSequence {
  const end = Date.now() + milliseconds;
  let last = message;
  const fails = (candidate: readonly Texts[]): boolean => {
    const again = Date.now() < end ? failureOf(candidate, seed) : undefined;
    last = again ?? last;
    return again !== undefined;
  };
  let left = states;
  for (let length = 1; length < left.length; length++) if (fails(left.slice(0, length))) left = left.slice(0, length);
  for (let at = left.length - 2; at >= 0; at--) {
    const without = left.filter((_, index) => index !== at);
    if (fails(without)) left = without;
  }
  for (const line of new Set(left.flatMap((texts) => Object.values(texts).flatMap((text) => text.split('\n'))))) {
    const without = left.map((texts) => withoutLine(texts, line));
    if (fails(without)) left = without;
  }
  return { seed, message: last, states: left };
}

function withoutLine(texts: Texts, line: string): Texts {
  return Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [
      name,
      text
        .split('\n')
        .filter((other) => other !== line)
        .join('\n'),
    ]),
  );
}

export function shownSequence({ seed, message, states }: FailedSequence): string {
  return `seed ${seed}: ${message}\n\nThe states, shrunk:\n${states.map((texts) => JSON.stringify(texts, null, 1)).join('\n')}`;
}
