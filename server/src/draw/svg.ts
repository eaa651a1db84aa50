/** A drawing as SVG text: it loads nothing and runs nothing. Roles are those of the WAI-ARIA Graphics Module 1.0. */

import type { Box, Drawing, Line, Mark, Name, Point, Thing, Words } from './drawing.ts';
import { svgEscaped, number } from './escape.ts';
import { STYLE } from './style.ts';
import { SMALLEST, shortened } from './words.ts';

/** Where a thing leads to in a page: an address within it; nowhere where there is none. */
export type Leading = (at: Name) => string | undefined;

/** As a file of its own. */
export function svgFile(drawing: Drawing): string {
  return svg(
    drawing,
    () => undefined,
    'xmlns="http://www.w3.org/2000/svg" ',
    `<style>${STYLE}${paperStyle(drawing)}</style>\n`,
  );
}

/** As part of a page, which has the style: as large as it is drawn, as smaller it could not be read. */
export function svgPart(drawing: Drawing, leading: Leading): string {
  const width = number(drawing.width);
  return svg(drawing, leading, '', `<style>.drawing.w${width} { width: ${width}px; }${paperStyle(drawing)}</style>\n`);
}

/** On a sheet of A4, lying, within margins of 10 mm. */
function paperStyle({ width, paper }: Drawing): string {
  if (paper === undefined) return '';
  const own = `.drawing.w${number(width)} { width: ${number(paper)}mm; max-width: none; }`;
  return ` @page { size: A4 landscape; margin: 10mm; } @media print { ${own} }`;
}

function svg(
  { title, description, width, height, marks }: Drawing,
  leading: Leading,
  xmlns: string,
  style: string,
): string {
  const size = `viewBox="0 0 ${number(width)} ${number(height)}" class="drawing w${number(width)}"`;
  return `<svg ${xmlns}${size} role="graphics-document" aria-label="${svgEscaped(title)}">
<title>${svgEscaped(title)}</title>
<desc>${svgEscaped(description)}</desc>
${style}${marks.map((mark) => markText(mark, leading)).join('\n')}
</svg>
`;
}

function markText(mark: Mark, leading: Leading): string {
  switch (mark.mark) {
    case 'box':
      return boxText(mark);
    case 'line':
      return lineText(mark);
    case 'words':
      return wordsText(mark);
    case 'thing':
      return thingText(mark, leading);
  }
}

function boxText({ x, y, width, height, look, round }: Box): string {
  const size = `x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}"`;
  return `<rect class="${look}" ${size}${round === undefined ? '' : ` rx="${number(round)}"`}/>`;
}

/** With a step aside where two lines cross nothing is said of it: lines that meet have a thing of their own each. */
function lineText({ points, look, round = 0, arrow }: Line): string {
  const path = `<path class="${look}" d="${pathOf(points, round)}"/>`;
  return arrow === true ? path + tipText(points, look) : path;
}

function pathOf(points: readonly Point[], round: number): string {
  return points
    .map((point, index) => {
      const [before, after] = [points[index - 1], points[index + 1]];
      if (before === undefined) return `M${at(point)}`;
      if (after === undefined || round === 0) return `L${at(point)}`;
      const bend = Math.min(round, distance(before, point) / 2, distance(point, after) / 2);
      return `L${at(towards(point, before, bend))}Q${at(point)} ${at(towards(point, after, bend))}`;
    })
    .join('');
}

function at({ x, y }: Point): string {
  return `${number(x)} ${number(y)}`;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function towards(from: Point, to: Point, by: number): Point {
  const whole = distance(from, to);
  if (whole === 0) return from;
  return { x: from.x + ((to.x - from.x) * by) / whole, y: from.y + ((to.y - from.y) * by) / whole };
}

const TIP = 9;

function tipText(points: readonly Point[], look: string): string {
  const [end, before] = [points.at(-1), points.at(-2)];
  if (end === undefined || before === undefined) return '';
  const foot = towards(end, before, TIP);
  const [dx, dy] = [((end.y - foot.y) / TIP) * (TIP / 2), ((end.x - foot.x) / TIP) * (TIP / 2)];
  const corners = [end, { x: foot.x + dx, y: foot.y - dy }, { x: foot.x - dx, y: foot.y + dy }];
  return `<polygon class="tip ${look}" points="${corners.map((corner) => at(corner)).join(' ')}"/>`;
}

function wordsText({ text, x, y, look, anchor, size, strong, maxWidth }: Words): string {
  if (size < SMALLEST) throw new RangeError(`text of ${size} px cannot be read`);
  const shown = maxWidth === undefined ? text : shortened(text, maxWidth, size, strong);
  const attributes = [
    `class="${look}"`,
    `x="${number(x)}"`,
    `y="${number(y)}"`,
    `font-size="${number(size)}"`,
    ...(anchor === 'start' ? [] : [`text-anchor="${anchor}"`]),
    ...(strong === true ? ['font-weight="600"'] : []),
  ];
  const title = shown === text ? '' : `<title>${svgEscaped(text)}</title>`;
  return `<text ${attributes.join(' ')}>${title}${svgEscaped(shown)}</text>`;
}

/** Its title is what the mouse shows; `tabindex` is set where keys lead from thing to thing. */
function thingText({ at: { names, name }, role, label, marks }: Thing, leading: Leading): string {
  const inner = marks.map((mark) => markText(mark, leading)).join('');
  const about = `role="graphics-object" aria-roledescription="${svgEscaped(role)}" aria-label="${svgEscaped(label)}"`;
  const where = `data-names="${names}" data-at="${svgEscaped(name)}"`;
  const group = `<g ${where} ${about}><title>${svgEscaped(label)}</title>${inner}</g>`;
  const href = leading({ names, name });
  return href === undefined ? group : `<a href="${svgEscaped(href)}">${group}</a>`;
}
