/** Tries texts at random until the time is over or something does not hold. */

import type { Texts } from '../site.ts';
import { corpus } from './corpus.ts';
import { Broken, tryOut } from './holds.ts';
import { mutated } from './mutate.ts';
import { Random } from './random.ts';
import { shrunk } from './shrink.ts';

export interface Failure {
  readonly seed: number;
  readonly message: string;
  readonly texts: Texts;
}

export interface Found {
  readonly tried: number;
  readonly failure: Failure | undefined;
}

const others = corpus.flatMap((texts) => Object.values(texts));

/** The input of a seed, and the random choices about it. */
function inputOf(seed: number): { readonly texts: Texts; readonly random: Random } {
  const random = new Random(seed);
  return { texts: mutated(random.pick(corpus) ?? {}, random, others), random: new Random(seed) };
}

/** The inputs of `seed`, `seed` + 1 and so on, as long as `goesOn` says so. */
export function search(seed: number, goesOn: (tried: number) => boolean): Found {
  let tried = 0;
  for (; goesOn(tried); tried++) {
    const { texts, random } = inputOf(seed + tried);
    const message = failureOf(texts, random);
    if (message !== undefined) return { tried: tried + 1, failure: { seed: seed + tried, message, texts } };
  }
  return { tried, failure: undefined };
}

function failureOf(texts: Texts, random: Random): string | undefined {
  try {
    tryOut(texts, random);
    return undefined;
  } catch (error) {
    if (error instanceof Broken) return error.message;
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

/** The same failure with less text. Random choices differ in it, so a few seeds are tried. */
export function shrink({ seed, message, texts }: Failure): Failure {
  let last = message;
  const small = shrunk(texts, (candidate) => {
    for (let more = 0; more < 3; more++) {
      const again = failureOf(candidate, new Random(seed + more));
      if (again === undefined || kindOf(again) !== kindOf(message)) continue;
      last = again;
      return true;
    }
    return false;
  });
  return { seed, message: last, texts: small };
}

/** A message without the parts that differ from input to input. */
function kindOf(message: string): string {
  return message
    .split('\n')
    .slice(0, 3)
    .join('\n')
    .replace(/\(.*\)/g, '')
    .replace(/“.*”/g, '')
    .replace(/new error, ([\w-]+): .*/, '$1')
    .replace(/\d+/g, '0');
}

export function shownFailure({ seed, message, texts }: Failure): string {
  const files = Object.entries(texts).map(
    ([name, text]) => `--- ${name}\n${text}\n    as it is: ${JSON.stringify(text)}`,
  );
  return `seed ${seed}: ${message}\n\nThe input, shrunk:\n${files.join('\n')}`;
}
