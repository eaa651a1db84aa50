// Colour only on a terminal. NO_COLOR as https://no-color.org has it, from memory;
// FORCE_COLOR: common practice, no source.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { unavailable } from '../availability.ts';
import { plumbline, program } from './run.ts';

const words = ['check', 'samples/first-draft'];
const colour = /\u001b\[3[0-9]m/;

describe('colour', () => {
  it('is left out where the output is no terminal, in CI too', () => {
    const { out } = plumbline(words, { env: { NO_COLOR: undefined, FORCE_COLOR: undefined, CI: '1' } });
    assert.match(out, /error/);
    assert.doesNotMatch(out, colour);
  });

  it('is there on a terminal', function () {
    // util-linux: runs a command with a terminal for its output.
    if (spawnSync('script', ['--version']).status !== 0)
      unavailable(this, 'there is no `script`, of util-linux, to make a terminal');
    const run = (env: Readonly<Record<string, string>>): string => {
      const { NO_COLOR: _none, FORCE_COLOR: _forced, ...own } = process.env;
      const command = [process.execPath, program, ...words].map((word) => `'${word}'`).join(' ');
      return spawnSync('script', ['--quiet', '--command', command, '/dev/null'], {
        encoding: 'utf8',
        env: { ...own, TERM: 'xterm', ...env },
      }).stdout;
    };
    assert.match(run({}), colour);
    assert.doesNotMatch(run({ NO_COLOR: '1' }), colour);
    assert.doesNotMatch(run({ TERM: 'dumb' }), colour);
  });

  it('is there where FORCE_COLOR asks for it, and NO_COLOR does not forbid it', () => {
    const forced = { FORCE_COLOR: '1', NO_COLOR: undefined };
    assert.match(plumbline(words, { env: forced }).out, colour);
    assert.doesNotMatch(plumbline(words, { env: { ...forced, NO_COLOR: '1' } }).out, colour);
    assert.doesNotMatch(plumbline(words, { env: { ...forced, FORCE_COLOR: '0' } }).out, colour);
  });
});
