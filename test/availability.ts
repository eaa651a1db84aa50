// Skips a test where the machine lacks something it needs: a browser, root rights, the embedded editor.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * Skips the running test, or a whole suite from its `before` hook, and says why.
 * Where `CI` is set nothing may be skipped: there a missing thing is a failure.
 *
 * @param context the `this` of the test or hook
 * @param reason what is missing and how to get it, for the person reading the output
 * @throws always: an error in CI, else mocha's own signal that the test is pending
 */
export function unavailable(context: Mocha.Context, reason: string): never {
  if (process.env['CI']) throw new Error(`nothing may be skipped in CI, but: ${reason}`);
  console.log(`    skipped: ${reason}`);
  const runnable = context.runnable();
  // The title of a suite is part of the full title of each of its tests.
  const titled = 'type' in runnable && runnable.type === 'hook' ? (runnable.parent ?? runnable) : runnable;
  titled.title += ` [skipped: ${reason}]`;
  return context.skip();
}

/** Skips in the same way where a program is not on the PATH; `from` names the Debian package that has it. */
export function needs(context: Mocha.Context, program: string, from = program): void {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  if (!folders.some((folder) => existsSync(join(folder, program))))
    unavailable(context, `${program} is not installed (apt-get install ${from})`);
}
