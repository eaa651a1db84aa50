// How the tests inside the browser report their results.

/** A line of the console that begins with this holds the results, as JSON of `Results`. */
export const marker = 'results of the tests in the web worker: ';

export interface Results {
  readonly passed: readonly string[];
  readonly failed: readonly string[];
}
