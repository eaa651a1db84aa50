import { setFlagsFromString } from 'node:v8';

/**
 * By itself the engine lets the heap grow to several times what is in use before it collects what is not.
 * To be said before the program is loaded: code is kept for the flags that it was made under.
 */
export function growSlowly(): void {
  setFlagsFromString('--heap-growing-percent=30');
}
