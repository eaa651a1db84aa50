// Room for text: of wide characters more, of marks none, and a character is never cut in two.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { shortened, widthOf, wrapped } from '../../server/src/draw/words.ts';

describe('room for text', () => {
  // Source: Unicode Standard Annex #11, East Asian Width: W and F take two cells, marks none; emoji are W.
  const CELLS: readonly (readonly [string, number])[] = [
    ['stable', 6],
    ['dB\u00b5V', 4],
    ['\u53a9\u820e', 4],
    ['\u3046\u307e', 4],
    ['\ub9c8\uad6c', 4],
    ['\uff35\uff30\uff33', 6],
    ['e\u0301te\u0301', 3],
    ['\u{1f40e}', 2],
    ['\u{1f469}\u200d\u{1f33e}', 2],
    ['\u{1f1eb}\u{1f1ee}', 2],
    ['\u05d0\u05d5\u05e8\u05d5\u05d4', 5],
    ['\u0627\u0644\u062d\u0638\u064a\u0631\u0629', 7],
    ['\u25b2 \u2715', 3],
  ];

  it('is counted in cells as wide as a digit', () => {
    for (const [text, cells] of CELLS) assert.equal(widthOf(text, 100), cells * 62, text);
  });

  it('is kept by what is shortened, and no character is cut in two', () => {
    for (const [text] of CELLS)
      for (let most = 7; most < 120; most += 9) {
        const long = text.repeat(9);
        const shown = shortened(long, most, 10);
        assert.ok(widthOf(shown, 10) <= Math.max(7, Math.ceil(most)), `${shown} in ${most} px`);
        const whole = new Intl.Segmenter().segment(long);
        const characters = new Set(Array.from(whole, ({ segment }) => segment));
        for (const { segment } of new Intl.Segmenter().segment(shown))
          assert.ok(segment === '\u2026' || characters.has(segment), JSON.stringify(segment));
      }
  });

  it('keeps a figure and its unit on one line', () => {
    const lines = wrapped(
      'PoE 92.4 W of 370 W \u00b7 lasts 44 min \u00b7 4 Mb/s at 47.1 dB\u00b5V and 12 cameras',
      90,
      11,
    );
    for (const figure of ['92.4 W', '370 W', '44 min', '4 Mb/s', '47.1 dB\u00b5V'])
      assert.ok(
        lines.some((line) => line.includes(figure)),
        `${figure}: ${lines.join(' | ')}`,
      );
    assert.ok(lines.length > 3);
  });
});
