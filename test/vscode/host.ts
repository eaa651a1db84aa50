// Runs the suites inside the editor's extension host: the desktop's, or that of the embedded editor.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Mocha from 'mocha';

/** Called by the editor; the tests have passed where it is fulfilled. The results go to the file PLUMBLINE_RESULTS. */
export async function run(): Promise<void> {
  const output = process.env['PLUMBLINE_RESULTS'];
  if (!output) throw new Error('PLUMBLINE_RESULTS names no file for the results');
  const mocha = new Mocha({ ui: 'bdd', timeout: 150_000, reporter: 'json', reporterOptions: { output } });
  for (const name of readdirSync(__dirname).filter((name) => name.endsWith('.suite.cjs'))) {
    mocha.addFile(join(__dirname, name));
  }
  const failures = await new Promise<number>((resolve) => mocha.run(resolve));
  if (failures > 0) throw new Error(`${failures} failed inside the editor`);
}
