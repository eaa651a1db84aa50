// Colours of pictures on their own: text at 4.5 : 1, lines and signs at 3 : 1 (WCAG 2.2, 1.4.3 and 1.4.11).
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { THEMES } from '../../server/src/draw/style.ts';
import { contrast } from './contrast.ts';

describe('the colours of a picture', () => {
  for (const [name, theme] of Object.entries(THEMES))
    it(`can be told apart from the paper in ${name}`, () => {
      for (const ground of [theme.paper, theme.panel]) {
        for (const text of [theme.ink, theme.soft, theme.main]) assert.ok(contrast(text, ground) >= 4.5, text);
        for (const line of [theme.edge, theme.main, theme.warn, theme.bad, theme.ink])
          assert.ok(contrast(line, ground) >= 3, line);
      }
    });

  it('are measured as others measure them', () => {
    // The examples of WCAG 2.2's own techniques: black on white is 21, and #767676 the lightest grey with 4.5.
    assert.equal(contrast('#000000', '#ffffff'), 21);
    assert.ok(contrast('#767676', '#ffffff') >= 4.5 && contrast('#777777', '#ffffff') < 4.5);
    assert.equal(
      contrast('rgb(118, 118, 118)', 'color(srgb 1 1 1)').toFixed(2),
      contrast('#767676', '#ffffff').toFixed(2),
    );
  });
});
