// Reads a picture back from its SVG text: what a person sees, without a look at what it was drawn from.
import assert from 'node:assert/strict';

/** A rectangle of the plane, px. */
export interface Area {
  readonly what: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A straight part of a line. */
export interface Stretch {
  readonly what: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PictureWords extends Area {
  readonly text: string;
  readonly size: number;
  readonly look: string;
}

export interface PictureThing {
  readonly names: string;
  readonly at: string;
  readonly label: string;
  /** All text in it, in its order. */
  readonly texts: readonly string[];
  readonly boxes: readonly Area[];
  readonly stretches: readonly Stretch[];
  readonly looks: ReadonlySet<string>;
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  readonly boxes: readonly Area[];
  readonly words: readonly PictureWords[];
  readonly stretches: readonly Stretch[];
  readonly things: readonly PictureThing[];
}

interface Element {
  readonly tag: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: (Element | string)[];
}

/** @throws where the text is no well-formed XML of the parts that a picture may have */
export function picture(svg: string): Picture {
  const root = parsed(svg);
  assert.equal(root.tag, 'svg');
  const [left, top, width = 0, height = 0] = (root.attributes.get('viewBox') ?? '').split(' ').map(Number);
  assert.deepEqual([left, top], [0, 0]);
  const all: { boxes: Area[]; words: PictureWords[]; stretches: Stretch[]; things: PictureThing[] } = {
    boxes: [],
    words: [],
    stretches: [],
    things: [],
  };
  const own = (tag: string): string => textOf(root.children.find((one) => typeof one !== 'string' && one.tag === tag));
  visit(root, '', all);
  return { width, height, title: own('title'), description: own('desc'), ...all };
}

type Found = {
  readonly boxes: Area[];
  readonly words: PictureWords[];
  readonly stretches: Stretch[];
  readonly things: PictureThing[];
};

function visit(element: Element, within: string, found: Found): void {
  const { tag, attributes } = element;
  const number = (name: string): number => Number(attributes.get(name));
  const look = attributes.get('class') ?? '';
  if (tag === 'rect') {
    const [left, top] = [number('x'), number('y')];
    if (!['quiet', 'gauge', 'rail'].includes(look))
      found.boxes.push({ what: within, left, top, right: left + number('width'), bottom: top + number('height') });
  } else if (tag === 'path') found.stretches.push(...stretchesOf(attributes.get('d') ?? '', within));
  else if (tag === 'text') found.words.push(wordsOf(element, within));
  if (attributes.has('data-at')) {
    const at = attributes.get('data-at') ?? '';
    const inside: Found = { boxes: [], words: [], stretches: [], things: [] };
    for (const child of element.children) if (typeof child !== 'string') visit(child, at, inside);
    const looks = new Set<string>();
    collectLooks(element, looks);
    found.things.push(
      {
        names: attributes.get('data-names') ?? '',
        at,
        label: attributes.get('aria-label') ?? '',
        texts: inside.words.map(({ text }) => text),
        boxes: inside.boxes,
        stretches: inside.stretches,
        looks,
      },
      ...inside.things,
    );
    found.boxes.push(...inside.boxes);
    found.words.push(...inside.words);
    found.stretches.push(...inside.stretches);
    return;
  }
  for (const child of element.children) if (typeof child !== 'string') visit(child, within, found);
}

function collectLooks({ attributes, children }: Element, looks: Set<string>): void {
  for (const look of (attributes.get('class') ?? '').split(' ')) if (look !== '') looks.add(look);
  for (const child of children) if (typeof child !== 'string') collectLooks(child, looks);
}

/** A character is taken to be 0.62 of its size wide. */
function wordsOf(element: Element, within: string): PictureWords {
  const { attributes, children } = element;
  const shown = children.filter((child) => typeof child === 'string').join('');
  const whole = children.find((child) => typeof child !== 'string' && child.tag === 'title');
  const size = Number(attributes.get('font-size'));
  const width = [...shown].length * 0.62 * size;
  const x = Number(attributes.get('x'));
  const y = Number(attributes.get('y'));
  const anchor = attributes.get('text-anchor') ?? 'start';
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return {
    what: `${within}: ${shown}`,
    text: whole === undefined ? shown : textOf(whole),
    size,
    look: attributes.get('class') ?? '',
    left,
    right: left + width,
    top: y - size * 0.8,
    bottom: y + size * 0.25,
  };
}

/** Bends are taken as their corners. */
function stretchesOf(d: string, what: string): Stretch[] {
  const points: [number, number][] = [];
  for (const [, command = '', numbers = ''] of d.matchAll(/([MLQ])([^MLQ]*)/g)) {
    const values = numbers.trim().split(/\s+/).map(Number);
    assert.ok(values.every(Number.isFinite), d);
    // Of a bend the corner and its end: of the first the line comes, the second is on the way to the next point.
    for (let index = 0; index < values.length; index += 2) points.push([values[index] ?? 0, values[index + 1] ?? 0]);
    assert.equal(values.length, command === 'Q' ? 4 : 2, d);
  }
  return points.slice(1).map((to, index) => ({ what, from: points[index] ?? to, to }));
}

function textOf(element: Element | string | undefined): string {
  if (element === undefined || typeof element === 'string') return element ?? '';
  return element.children.map(textOf).join('');
}

const TOKEN = /<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/y;

function parsed(text: string): Element {
  const root: Element = { tag: '', attributes: new Map(), children: [] };
  const open = [root];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const start = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    assert.ok(match, `not well-formed: ${text.slice(start, start + 80)}`);
    const [, end, tag = '', rest = '', empty, plain] = match;
    const parent = open.at(-1);
    assert.ok(parent, 'more ends than beginnings');
    if (plain !== undefined) {
      parent.children.push(unescaped(plain));
      continue;
    }
    if (end === '/') {
      assert.equal(parent.tag, tag);
      open.pop();
      continue;
    }
    const attributes = new Map<string, string>();
    for (const [, name = '', value = ''] of rest.matchAll(/([\w:-]+)="([^"]*)"/g)) {
      assert.ok(!attributes.has(name), `${name} twice`);
      attributes.set(name, unescaped(value));
    }
    const element: Element = { tag, attributes, children: [] };
    parent.children.push(element);
    if (empty !== '/') open.push(element);
  }
  assert.equal(open.length, 1);
  const [first] = root.children;
  assert.ok(first !== undefined && typeof first !== 'string');
  return first;
}

function unescaped(text: string): string {
  assert.doesNotMatch(text, /&(?!#\d+;)/);
  return text.replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)));
}
