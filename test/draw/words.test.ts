// Room for text: of wide characters more, of marks none, and a character is never cut in two.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { shortened, widthOf, wrapped } from '../../server/src/draw/words.ts';

describe('room for text', () => {
  // Source: Unicode Standard Annex #11, East Asian Width: W and F take two cells, marks none; emoji are W.
  const CELLS: readonly (readonly [string, number])[] = [
    ['stable', 6],
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

  // Source: advances of DejaVu Sans and DejaVu Sans Bold 2.37 in thousandths of an em, as its table hmtx has them.
  const ADVANCES: ReadonlyMap<string, readonly number[]> = new Map(
    [
      'm 974 1042, M 863 995, W 989 1103, w 818 924, @ 1000 1000, % 950 1002, O 787 850, G 775 821, A 684 774',
      'N 748 837, D 770 830, H 752 837, R 695 770, B 686 762, V 684 774, U 732 812, I 295 372, K 656 775, T 611 682',
      'E 632 683, a 613 675, o 612 687, e 615 678, n 634 712, g 635 716, b 635 716, d 635 716, h 634 712, k 579 665',
      'r 411 493, - 361 415, / 337 365, 6 636 696, 9 636 696, \u00b5 636 736, \u2026 1000 1000, \u0416 1077 1224',
      '\u0428 1069 1235, \u0430 613 675, \u00c6 974 1085, \u00dc 732 812',
    ].flatMap((line) =>
      line.split(', ').map((entry): [string, number[]] => {
        const [letter = '', ...advances] = entry.split(' ');
        return [letter, advances.map(Number)];
      }),
    ),
  );
  const taken = (text: string, strong: boolean): number =>
    [...text].reduce(
      (sum, letter) => sum + (ADVANCES.get(letter)?.[strong ? 1 : 0] ?? assert.fail(`no advance of ${letter}`)),
      0,
    ) / 1000;

  it('is as much as wide letters take, alone and among others', () => {
    const texts = 'm W mmmm WWWW Wohnwagen MAMMOTH Hammerwerk DORWARD-OAK GROOM/NOON 96@%WM dB\u00b5V MODEM';
    for (const text of [...texts.split(' '), '\u0416\u0428\u0430', '\u00c6GO', '\u00dcBUNG', 'WWWW\u2026WWWW'])
      for (const strong of [false, true]) {
        assert.ok(widthOf(text, 100, strong) >= taken(text, strong) * 100, text);
        const shown = shortened(text.repeat(5), 90, 12, strong);
        assert.ok(taken(shown, strong) * 12 <= 90, `${shown}: ${taken(shown, strong) * 12} px`);
      }
  });

  it('is kept by what is shortened, and no character is cut in two', () => {
    for (const [text] of CELLS)
      for (let most = 7; most < 120; most += 9) {
        const long = text.repeat(9);
        const shown = shortened(long, most, 10);
        // Nothing is narrower than the ellipsis.
        assert.ok(widthOf(shown, 10) <= Math.max(widthOf('\u2026', 10), Math.ceil(most)), `${shown} in ${most} px`);
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
