// Runs the suite inside the extension host of a browser, which is a web worker.
// oxlint-disable-next-line import/no-unassigned-import -- what the browser's Mocha gives are globals
import 'mocha/mocha.js';
import { type Results, marker } from './results.ts';

/** Called by the editor; the tests have passed where it is fulfilled. */
export async function run(): Promise<void> {
  mocha.setup({ ui: 'bdd', timeout: 150_000, bail: true, reporter: Mocha.reporters.Base });
  await import('./site.suite.ts');
  await import('../vscode/written-whole.suite.ts');
  const passed: string[] = [];
  const failed: string[] = [];
  await new Promise<void>((resolve) => {
    mocha
      .run(() => resolve())
      .on('pass', (test) => passed.push(test.fullTitle()))
      .on('fail', (test, error: Error) => failed.push(`${test.fullTitle()}\n${error.stack ?? error.message}`));
  });
  const results: Results = { passed, failed };
  console.log(`${marker}${JSON.stringify(results)}`);
  if (failed.length > 0) throw new Error(`${failed.length} failed in the web worker`);
}
