// What holds for every kind of picture of any house: what it shows stands in its tables, and no look goes without a sign.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { type Drawing, USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { STYLE } from '../../server/src/draw/style.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import type { Plan } from '../../server/src/plan.ts';
import { houses } from '../houses/read.ts';
import { smallSite, entriesOf, planFrom, textOf } from '../properties/small-site.ts';
import { picture } from './picture.ts';

/** Of how many things of a house a picture of each kind is drawn: they differ little. */
const MOST = 2;

function* drawn(plan: Plan): Iterable<{ name: string; drawing: Drawing }> {
  for (const kind of OF_PLAN)
    for (const subject of subjectsOf(kind, plan).slice(0, MOST))
      yield { name: `${kind.kind} ${subject}`, drawing: kind.draw(plan, subject, USUAL_OPTIONS) };
}

/** All that a drawing says beside its marks. */
function saidIn({ title, description, tables }: Drawing): string {
  const cells = tables.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
  const words = cells.map((cell) =>
    typeof cell === 'string' ? cell : 'figure' in cell ? cell.figure : cell.names.map((one) => one.name).join(' '),
  );
  return [title, description, ...words].join('\n');
}

/** A figure with its unit; those of an axis are between what is computed. */
const FIGURE = /(?<![\w.])\d+(?:\.\d+)? (?:%|[kMG]?b\/s|W|VA|dBµV|dB|kg|g)(?!\w)/g;

const SIGNS: readonly (readonly [string, RegExp])[] = [
  ['warn', /△|▲|limit/],
  ['bad', /▲/],
  ['lost', /▲|✕|✗/],
];

function faultsOf(plan: Plan): string[] {
  const found: string[] = [];
  for (const { name, drawing } of drawn(plan)) {
    const said = saidIn(drawing);
    const about = new Set(drawing.tables.flatMap(({ rows }) => rows.flatMap((row) => row.things.map(keyOf))));
    const { things, words } = picture(svgFile(drawing));
    for (const { names, at, looks, texts, label } of things) {
      // What the whole picture is of is in its title and its description.
      if (!about.has(`${names} ${at}`) && !saidAt(said, at)) found.push(`${name}: ${names} ${at} is in no table`);
      for (const [look, sign] of SIGNS)
        if (looks.has(look) && !sign.test(`${texts.join(' ')} ${label}`))
          found.push(`${name}: ${at} is ${look} by colour alone`);
    }
    for (const { text } of words) {
      if (/undefined|NaN|Infinity|\[object/.test(text)) found.push(`${name}: ${text}`);
      for (const [figure] of text.matchAll(FIGURE))
        if (!said.includes(figure)) found.push(`${name}: ${figure} of “${text}” is in no table`);
    }
  }
  return found;
}

function keyOf({ names, name }: { readonly names: string; readonly name: string }): string {
  return `${names} ${name}`;
}

function saidAt(said: string, name: string): boolean {
  return said.includes(name);
}

describe('every kind of picture of a house', () => {
  for (const [house, text] of houses)
    it(`has all that it shows in its tables, and a sign with each look: ${house}`, () => {
      assert.deepEqual(faultsOf(planFrom(text)), []);
    });

  it('has both on any site, and the same bytes each time', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const text = textOf(entriesOf(site));
        const plan = planFrom(text);
        assert.deepEqual(faultsOf(plan), []);
        const again = drawn(planFrom(text));
        for (const { name, drawing } of drawn(plan)) {
          const other = again[Symbol.iterator]().next();
          assert.ok(other.done !== true);
          assert.equal(svgFile(other.value.drawing), svgFile(drawing), name);
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('the looks of a picture', () => {
  it('differ by more than their colour', () => {
    for (const kind of ['path', 'rect', 'text'] as const) {
      const shapes = new Map<string, string>();
      const own =
        kind === 'path'
          ? /\.drawing \.(\w+):is\(polyline, path\) \{([^}]*)\}/g
          : new RegExp(`\\.drawing ${kind}\\.(\\w+)[^{]*\\{([^}]*)\\}`, 'g');
      for (const [, look = '', rules = ''] of STYLE.matchAll(own)) {
        const shape = rules
          .split(';')
          .map((rule) => rule.trim())
          .filter((rule) => /width|dash|linecap|weight|decoration/.test(rule));
        shapes.set(look, `${shapes.get(look) ?? ''}${shape.sort().join(';')}`);
      }
      for (const look of ['warn', 'bad', 'lost'])
        for (const [other, shape] of shapes)
          if (other !== look && shapes.has(look) && kind !== 'text')
            assert.notEqual(shapes.get(look), shape, `${kind}: ${look}, ${other}`);
    }
  });
});
