/** Bounds on what the server waits for, as a client or a disk may never answer. */

/** The longest that an open file waits for those beside it, ms: then it is checked with what is known. */
export const PATIENCE = 3000;

export const LATE = Symbol('late');

/** What a promise gives within so many ms, else `LATE`; rejects if the promise does so before. */
export async function within<T>(promise: Promise<T>, patience: number): Promise<T | typeof LATE> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<typeof LATE>((resolve) => {
    timer = setTimeout(() => resolve(LATE), patience);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Does something for each element, for at most so many at a time. */
export async function eachOf<T>(all: Iterable<T>, most: number, run: (one: T) => Promise<void>): Promise<void> {
  const rest = all[Symbol.iterator]();
  const work = async (): Promise<void> => {
    for (let next = rest.next(); next.done !== true; next = rest.next()) await run(next.value);
  };
  await Promise.all(Array.from({ length: most }, work));
}
