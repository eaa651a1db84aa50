/**
 * Waits until a check passes; what it threw last is thrown where it does not within the time, which is for the slowest
 * of machines: no check that passes waits for it.
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
