/**
 * Waits until a check passes, and throws its last error where it does not within the time, which is long enough for the
 * slowest machine: a check that passes does not wait for it.
 *
 * @returns what the check returns
 */
export async function eventually<T>(check: () => T | Promise<T>, seconds = 240): Promise<T> {
  const until = Date.now() + seconds * 1000;
  for (;;) {
    try {
      return await check();
    } catch (error) {
      if (Date.now() > until) throw error;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
}
