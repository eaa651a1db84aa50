import assert from 'node:assert/strict';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Lines } from '../../server/src/text/lines.ts';

const text = fc
  .array(fc.constantFrom('a', 'bc', '🐎', '\n', '\r', '\r\n', '\u2028', '\ufeff'), { maxLength: 20 })
  .map((parts) => parts.join(''));

describe('Lines', () => {
  it('end with LF, CR or both, as the protocol has it (LSP 3.17, “Text Documents”)', () => {
    const lines = new Lines('site:\r\n  name: Harrow Lane\rdevices:\n');
    assert.deepEqual(
      [0, 7, 9, 27, 36].map((offset) => lines.position(offset)),
      [
        { line: 0, character: 0 },
        { line: 1, character: 0 },
        { line: 1, character: 2 },
        { line: 2, character: 0 },
        { line: 3, character: 0 },
      ],
    );
    assert.equal(lines.count, 4);
  });

  // Source: the text document of the Language Server Protocol's own library, as a general tool.
  it('count as vscode-languageserver-textdocument does', () => {
    fc.assert(
      fc.property(text, fc.nat(40), (content, offset) => {
        // The library takes a place between CR and LF back to the line's end; no place stands there.
        fc.pre(content.slice(offset - 1, offset + 1) !== '\r\n');
        const document = TextDocument.create('file:///a.site.yaml', 'yaml', 1, content);
        assert.deepEqual(new Lines(content).position(offset), document.positionAt(offset));
        assert.equal(new Lines(content).count, document.lineCount);
      }),
    );
  });

  it('lead back from a position to its offset', () => {
    fc.assert(
      fc.property(text, fc.nat(40), (content, offset) => {
        const lines = new Lines(content);
        const { line, character } = lines.position(offset);
        assert.equal(lines.offset(line, character), Math.min(offset, content.length));
      }),
    );
  });
});
