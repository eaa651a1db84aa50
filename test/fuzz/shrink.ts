/** Removes parts of a site's texts that a failure does not need, first by lines and then by characters. */

import type { Texts } from '../site.ts';

/** `fails` says whether texts still fail in the same way; it is asked for as long as there is time. */
export function shrunk(texts: Texts, fails: (texts: Texts) => boolean, milliseconds = 20_000): Texts {
  const end = Date.now() + milliseconds;
  const ask = (candidate: Texts): boolean => Date.now() < end && fails(candidate);
  let result = texts;
  for (const name of Object.keys(texts)) {
    const { [name]: _, ...rest } = result;
    if (ask(rest)) result = rest;
  }
  for (const split of [/(?<=\n)/, /(?<=[\s,{}[\]])/, /(?:)/u]) {
    for (const [name, text] of Object.entries(result)) {
      const parts = smallest(text.split(split), (kept) => ask({ ...result, [name]: kept.join('') }));
      result = { ...result, [name]: parts.join('') };
    }
  }
  return result;
}

/** Leaves out ever smaller runs of the parts for as long as it still fails. */
function smallest(parts: readonly string[], fails: (parts: readonly string[]) => boolean): readonly string[] {
  let kept = parts;
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let at = 0; at < kept.length;) {
      const candidate = [...kept.slice(0, at), ...kept.slice(at + size)];
      if (fails(candidate)) kept = candidate;
      else at += size;
    }
  }
  return kept;
}
