// Held against the shell itself.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { shellWord } from '../../../server/src/make/quoting/shell.ts';
import { hostileText } from '../hostile.ts';

/** What the words are to `sh` when it reads them from a script: printed with a NUL behind each. */
function read(words: readonly string[]): string[] {
  const script = words.map((word) => `printf '%s\\0' ${word}\n`).join('');
  return execFileSync('sh', ['-s'], { input: script, encoding: 'utf8' }).split('\0').slice(0, -1);
}

describe('words of a shell', () => {
  it('stand for exactly the text, whatever it is', () => {
    fc.assert(
      fc.property(fc.array(hostileText, { minLength: 1, maxLength: 30 }), (texts) => {
        const said = texts.flatMap((text) => {
          const word = shellWord(text);
          return word === undefined ? [] : [{ text, word }];
        });
        assert.deepEqual(
          read(said.map(({ word }) => word)),
          said.map(({ text }) => text),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('are not made of what one line of a script cannot hold', () => {
    for (const text of ['a\nb', 'a\0', '\r', '\ud800', '\udc00x']) assert.equal(shellWord(text), undefined);
    fc.assert(
      fc.property(hostileText, (text) => {
        const word = shellWord(text);
        assert.equal(word === undefined, /[\n\r\0]/.test(text) || isTorn(text));
        assert.doesNotMatch(word ?? '', /[\n\r\0]/);
      }),
    );
  });

  it('are left bare where they are plain', () => {
    assert.equal(shellWord('192.168.20.5/24'), '192.168.20.5/24');
    assert.equal(shellWord('cams.20'), 'cams.20');
    assert.equal(shellWord(''), "''");
    assert.equal(shellWord('~'), "'~'");
    assert.equal(shellWord("it's"), `'it'\\''s'`);
    assert.equal(shellWord('back\\'), `'back'\\\\`);
  });
});

/** Whether half a surrogate pair stands in it, which has no bytes in UTF-8. */
function isTorn(text: string): boolean {
  return Buffer.from(text).toString() !== text;
}
