/**
 * Waits until a check passes; what it threw last is thrown where it does not within the time.
 *
 * @returns what the check returns
 */
export async function eventually<T>(check: () => T | Promise<T>, seconds = 20): Promise<T> {
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
