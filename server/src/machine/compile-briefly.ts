/** Settings of V8 for a program that runs much code, each part of it briefly. */

import { setFlagsFromString } from 'node:v8';

/** Since this version V8 has a compiler between its baseline and its slow one (Maglev), and needs no settings. */
const WITH_MAGLEV = 22;

/**
 * Compiles smaller parts sooner. By itself V8 in Node 20 waits long, then compiles large parts all at once, on every
 * core, while edits wait: at 3,000 lines the slowest twentieth of them takes a third longer.
 */
export function compileBriefly(): void {
  if (Number.parseInt(process.versions.node, 10) >= WITH_MAGLEV) return;
  setFlagsFromString('--interrupt-budget=30000'); // of bytecode that runs before a function is compiled; by itself 67584
  setFlagsFromString('--max-inlined-bytecode-size-cumulative=200'); // of other functions put into it; by itself 920
}
