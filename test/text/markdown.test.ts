// Text from a site, in Markdown, held against a Markdown parser that is not ours: markdown-it, with HTML and bare
// links allowed, as a lenient editor would have it.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { escaped, table } from '../../server/src/text/markdown.ts';
import { visible } from '../../server/src/text/visible.ts';

const parser = new MarkdownIt({ html: true, linkify: true });

/** Everything but text and paragraphs that a parser makes of it. */
function markup(markdown: string): string[] {
  return parser
    .parse(markdown, {})
    .flatMap((token) => [token, ...(token.children ?? [])])
    .map(({ type }) => type)
    .filter((type) => !['paragraph_open', 'paragraph_close', 'inline', 'text', 'text_special'].includes(type));
}

function shown(markdown: string): string {
  return parser
    .parse(markdown, {})
    .flatMap(({ children }) => children ?? [])
    .map(({ content }) => content)
    .join('');
}

describe('text of a site in Markdown', () => {
  for (const text of [
    '[click](command:workbench.action.quit)',
    '![x](https://evil.example/x.png)',
    '<img src=x onerror=alert(1)>',
    '<https://evil.example>',
    'https://evil.example',
    'www.evil.example',
    'evil.com',
    'mailto:a@b.com',
    'a@b.com',
    '# heading',
    '- item',
    '+ item',
    '1. item',
    '12) item',
    '> quote',
    '---',
    '===',
    '***',
    '`code`',
    '**bold**',
    '_it_',
    '~~gone~~',
    '&amp; &lt;',
    'a | b',
    '$(alert)',
    '\\',
    '\\[x\\](y)',
    '    indented',
    '```js',
    '[x]: https://evil.example',
    'line\n# heading',
    'tab\t|\tb',
    '\u202egnp.x',
  ]) {
    it(`shows ${JSON.stringify(text)} as it is`, () => {
      assert.deepEqual(markup(escaped(text)), []);
      assert.equal(shown(escaped(text)), visible(text));
    });
  }

  it('shows whatever it is given as it is, alone, in bold and in a table', () => {
    const nasty = fc.string({
      unit: fc.constantFrom(
        ...'[]()<>!*_`~#+-.:|\\&@$^={}/"\'',
        'a',
        '1',
        ' ',
        '\n',
        'www.',
        'http://',
        'x.com',
        '€',
        '😀',
      ),
      maxLength: 24,
    });
    fc.assert(
      fc.property(nasty, (text) => {
        assert.deepEqual(markup(escaped(text)), []);
        assert.equal(shown(escaped(text)), visible(text));
        const cell = escaped(text);
        const inTable = markup(table(['a'], [[cell]], [])).filter(
          (type) => !/^(table|thead|tbody|tr|th|td)_/.test(type),
        );
        assert.deepEqual(inTable, []);
        if (visible(text) === '') return;
        assert.deepEqual(
          markup(`**${cell}**`).filter((type) => !type.startsWith('strong_')),
          [],
        );
      }),
      { numRuns: 500 },
    );
  });

  it('leaves names and figures legible', () => {
    assert.equal(
      escaped('core/16 → barn/1: 53.5 Mb/s, 5.4 % of 1 Gb/s'),
      'core/16 → barn/1: 53.5 Mb/s, 5.4 % of 1 Gb/s',
    );
    assert.equal(escaped('paddock-cam (192.168.20.31).'), 'paddock-cam (192.168.20.31).');
  });
});

describe('text of a site on a terminal', () => {
  it('has no controls, and is one line', () => {
    assert.equal(visible('a\u001b[31mred\u0007\r\nb'), 'a\ufffd[31mred\ufffd b');
  });
  it('is cut where it is long, and not inside a character', () => {
    assert.equal(visible('x'.repeat(600)), `${'x'.repeat(500)}…`);
    assert.equal(visible('ab😀cd', 3), 'ab…');
  });
});
