// A patch panel printed by Chromium and measured in the PDF: its strip fits over the ports of a panel of 19 inches.
import assert from 'node:assert/strict';
import { inflateSync } from 'node:zlib';
import { after, before, describe, it } from 'mocha';
import type { Browser } from 'playwright-core';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { drawingPage } from '../../server/src/draw/page.ts';
import { panelPorts } from '../../server/src/draw/panel.ts';
import { planFrom } from '../report/paddock.ts';
import { unavailable } from '../availability.ts';
import { chromiumPath, launchBrowser } from './browser.ts';

type Matrix = readonly [number, number, number, number, number, number];

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Sheet {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** The outlined boxes on it, mm. */
  readonly areas: readonly Area[];
}

const MM = 25.4 / 72;

/** The sheets of a PDF of Skia (ISO 32000-1: 7.3.8 streams, 8.3.4 matrices, 8.5.2 paths; operators from memory). */
function sheetsOf(pdf: Buffer): Sheet[] {
  const text = pdf.toString('latin1');
  const [, width = '', height = ''] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(text) ?? [];
  const streams = [...text.matchAll(/\/FlateDecode[^>]*>>\s*stream\r?\n/g)].flatMap((match) => {
    const start = match.index + match[0].length;
    const end = text.indexOf('endstream', start);
    const content = inflateSync(pdf.subarray(start, end)).toString('latin1');
    // A page begins by turning its y axis over; what is drawn in it as a whole, such as faint text, does not.
    return /^\S+ 0 0 -\S+ 0 \S+ cm/.test(content) ? [content] : [];
  });
  return streams.map((content) => ({
    width: Number(width) * MM,
    height: Number(height) * MM,
    areas: areasOf(content),
  }));
}

function areasOf(content: string): Area[] {
  const kept: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let points: [number, number][] = [];
  let numbers: number[] = [];
  const areas: Area[] = [];
  const add = (x = 0, y = 0): void => {
    const [a, b, c, d, e, f] = matrix;
    points.push([(a * x + c * y + e) * MM, (b * x + d * y + f) * MM]);
  };
  for (const word of content.split(/\s+/)) {
    const number = Number(word);
    if (word !== '' && Number.isFinite(number)) {
      numbers.push(number);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    if (word === 'q') kept.push(matrix);
    else if (word === 'Q') matrix = kept.pop() ?? matrix;
    else if (word === 'cm') {
      const [A, B, C, D, E, F] = matrix;
      matrix = [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
    } else if (word === 'm' || word === 'l') add(a, b);
    else if (word === 'c') add(e, f);
    else if (word === 're') {
      add(a, b);
      add(a + c, b + d);
    } else if (['S', 's', 'f', 'f*', 'B', 'n'].includes(word)) {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      if (word !== 'n' && points.length > 1)
        areas.push({ left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) });
      points = [];
    }
    numbers = [];
  }
  return areas;
}

describe('a patch panel on paper', function () {
  let browser: Browser | undefined;
  before(async function () {
    const path = chromiumPath();
    if (path === undefined) unavailable(this, 'there is no Chromium: it is in the package chromium');
    browser = await launchBrowser(path);
  });
  after(() => browser?.close());

  // Source: common practice, no standard: 24 ports fill the opening of a panel of 19 inches, 450 mm (IEC 60297).
  it('has its ports as far apart as the panel has them, whole on one sheet across', async () => {
    const plan = planFrom(`devices: {panel-a: {kind: patch-panel, ports: {1-24: {}}}}\n`);
    const page = await browser?.newPage();
    assert.ok(page !== undefined);
    await page.setContent(drawingPage(panelPorts.draw(plan, 'panel-a', USUAL_OPTIONS)));
    const [sheet] = sheetsOf(await page.pdf({ preferCSSPageSize: true }));
    await page.close();
    assert.ok(sheet !== undefined);
    // A4 lying (ISO 216).
    assert.ok(Math.abs(sheet.width - 297) < 0.5 && Math.abs(sheet.height - 210) < 0.5, `${sheet.width} mm`);
    // Not the lines of the table below.
    const cells = sheet.areas.filter(
      ({ left, right, top, bottom }) => right - left > 16 && right - left < 20 && top - bottom > 10,
    );
    // Each is there twice, as its ground and as its outline, which is wider.
    const widest = Math.max(...cells.map(({ left, right }) => right - left));
    const outlines = cells.filter(({ left, right }) => widest - (right - left) < 0.1);
    const lefts = [...new Map(outlines.map(({ left }) => [Math.round(left), left])).values()].sort((a, b) => a - b);
    assert.equal(lefts.length, 12);
    const [first = 0, last = 0] = [lefts[0], lefts.at(-1)];
    assert.ok(Math.abs((last - first) / 11 - 450 / 24) < 0.02, `${(last - first) / 11} mm from port to port`);
    for (const { left, right } of cells) assert.ok(left >= 9.9 && right <= 287.1, `${left} to ${right} mm`);
  });
});
