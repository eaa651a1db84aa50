// `npm start [-- FOLDER] [--embedded]`: a site in a real VS Code, with the extension of this repository loaded.
import { readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { visibleLines } from '../../server/src/text/visible.ts';
import { desktopCode, openDesktop } from './desktop.ts';
import { installEditor, repository } from './install.ts';
import { serveEditor } from './serve.ts';

const usage = `npm start [-- FOLDER] [-- --embedded]

Opens FOLDER (default: samples/first-draft) in your own VS Code if \`code\` is on the PATH, else in an embedded one
that you open in a browser. In an empty FOLDER it offers a new site.

  --embedded  always open the embedded one`;

const extensions = [repository, join(repository, 'client', 'open', 'problems-view')];
const say = (line: string): void => console.log(visibleLines(line));

/** The file to open first: of devices or cameras if there is one. None in a folder without a site. */
async function firstFile(folder: string): Promise<string | undefined> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    throw new Error(`${folder} can't be read: ${error.message}`);
  });
  const files = names.filter((name) => name.endsWith('.site.yaml')).sort();
  const file =
    ['devices', 'cameras'].map((name) => `${name}.site.yaml`).find((name) => files.includes(name)) ?? files[0];
  return file && join(folder, file);
}

async function serve(folder: string, file: string | undefined): Promise<void> {
  const editor = await installEditor(say);
  const served = await serveEditor(editor, { folder, extensions, environment: { PLUMBLINE_OPEN: file ?? '' } });
  const asked = new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => done());
  });
  say(`\n  ${folder} is open in VS Code at\n\n      ${served.address()}\n`);
  say(
    '  Open that address in a browser on this machine, and keep it to yourself: with it anyone here can do what you can.\n  What you save is saved to disk. Ctrl+C ends it.\n',
  );
  const why = await Promise.race([asked.then(() => 'asked'), served.ended.then(() => 'ended')]);
  if (why === 'ended')
    console.error(visibleLines(`The editor has ended by itself. Its last words:\n${served.log().slice(-2000)}`));
  await served.stop();
  if (why === 'ended') process.exitCode = 1;
  else say('  The editor has ended.');
}

async function start(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { embedded: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
  });
  if (values.help) return say(usage);
  const folder = resolve(process.env['INIT_CWD'] ?? '.', positionals[0] ?? join(repository, 'samples', 'first-draft'));
  const file = await firstFile(folder);

  const code = values.embedded ? undefined : desktopCode();
  if (code) {
    say(`Opening ${folder} in your VS Code (${code}).`);
    if ((await openDesktop(code, folder, file, extensions)) === 0) return;
    say('That `code` could not open it.');
  }
  await serve(folder, file);
}

start().catch((error: unknown) => {
  console.error(visibleLines(error instanceof Error ? error.message : String(error)));
  process.exitCode = 2;
});
