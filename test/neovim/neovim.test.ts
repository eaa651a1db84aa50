// Neovim as a client that we have not written: `plumbline lsp --stdio` on samples/first-draft, through Neovim's own
// vim.lsp and vim.diagnostic.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unavailable } from '../availability.ts';
import { program } from '../cli/run.ts';
import { mistakes } from '../first-draft.ts';
import { addressClash, uplink } from '../vscode/first-draft.ts';
import { showsRate } from '../vscode/rates.ts';
import { reportedPeaks } from '../vscode/report.ts';
import { type SiteCopy, copySample } from '../vscode/site-copy.ts';

interface Told {
  readonly milliseconds: number;
  readonly diagnostics: readonly { readonly rule: string; readonly severity: string; readonly words: string }[];
  readonly hover: string;
  readonly actions: readonly string[];
  readonly left: number;
  readonly failure?: string;
}

describe('Neovim as a client of plumbline lsp --stdio', function () {
  const script = fileURLToPath(new URL('client.lua', import.meta.url));
  let site: SiteCopy;

  before(async function () {
    if (spawnSync('nvim', ['--version']).status !== 0)
      unavailable(this, 'there is no nvim on the PATH: apt-get install neovim');
    site = await copySample('first-draft');
  });
  after(() => site?.remove());

  function asked(file: string, hover: object, fix?: object): Told {
    const answer = join(site.folder, 'told.json');
    const expected = mistakes.filter((mistake) => mistake.file === file).length;
    const command = [process.execPath, program, 'lsp', '--stdio'];
    const words = { file: join(site.folder, file), command, answer, expected, patience: 120_000, hover, fix };
    const { stderr } = spawnSync('nvim', ['--headless', '--clean', '-n', '-i', 'NONE', '-S', script], {
      encoding: 'utf8',
      timeout: 200_000,
      env: { ...process.env, PLUMBLINE_ASKED: JSON.stringify(words), HOME: site.folder },
    });
    const told = JSON.parse(readFileSync(answer, 'utf8')) as Told;
    assert.equal(told.failure, undefined, stderr);
    return told;
  }

  it('shows the mistakes of a file at their words, says on hover what it does, and mends one', () => {
    const { file, line, address } = addressClash;
    const told = asked(
      file,
      { from: 'core:', word: 'core' },
      { from: line, word: address, title: 'Use 192.168.20.33' },
    );
    const expected = mistakes.filter((mistake) => mistake.file === file);
    assert.deepEqual(
      told.diagnostics.map(({ severity, rule, words }) => `${severity} ${rule} [${words}]`).sort(),
      expected.map(({ severity, rule, words }) => `${severity} ${rule} [${words}]`).sort(),
    );
    console.log(`      ${told.milliseconds} ms from its start to its diagnostics`);
    assert.match(told.hover, /\*\*core: switch\*\*/);
    assert.ok(
      told.actions.some((title) => addressClash.fix.test(title)),
      told.actions.join('; '),
    );
    assert.match(readFileSync(join(site.folder, file), 'utf8'), /yard-cam: \{.*192\.168\.20\.33/);
    assert.equal(told.left, expected.length - 2, 'both places of the clash are gone');
  });

  it('shows on hover over an uplink what the report says', () => {
    const peaks = reportedPeaks(site.folder, uplink.from, uplink.to);
    const { hover } = asked(uplink.file, { from: uplink.line, word: uplink.from });
    for (const rate of [peaks.forward, peaks.backward])
      assert.ok(showsRate(hover, rate), `${rate} bit/s in:\n${hover}`);
  });
});
