// What holds for every kind of drawing: it is well-formed, runs and loads nothing, and all in it is of the site.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { check } from '../../server/src/check.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { drawingPage } from '../../server/src/draw/page.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { namedHover } from '../../server/src/features/hover/named.ts';
import { placeOfName } from '../../server/src/features/place-of-name.ts';
import { thingsAt } from '../../server/src/features/things-at.ts';
import { spanOf } from '../../server/src/site/folder.ts';
import { fileOf } from '../../server/src/site/item.ts';
import { picture } from './picture.ts';

const SAMPLES = ['harrow-lane', 'cottages', 'first-draft'];

for (const sample of SAMPLES)
  describe(`drawings of ${sample}`, () => {
    const checked = check(readSite(`samples/${sample}`).folder);
    const { plan } = checked;
    const all = OF_PLAN.flatMap((kind) =>
      subjectsOf(kind, plan).map((subject) => ({
        name: `${kind.kind} ${subject}`,
        drawing: kind.draw(plan, subject, USUAL_OPTIONS),
      })),
    );

    it('are well-formed, within their frame, and load and run nothing', () => {
      for (const { name, drawing } of all) {
        const text = svgFile(drawing);
        const { width, height, boxes, words } = picture(text);
        assert.doesNotMatch(text, /<script|\bon\w+=|href=|url\(|@import/, name);
        for (const { left, right, top, bottom, what } of [...boxes, ...words])
          assert.ok(
            left >= 0 && top >= 0 && right <= width && bottom <= height,
            `${name}: ${what} is out of the frame`,
          );
      }
    });

    it('lead from each thing to where it is declared', () => {
      for (const { name, drawing } of all) {
        const { things } = picture(svgFile(drawing));
        assert.ok(things.length > 0, name);
        for (const { names, at } of things) assert.ok(placeOfName(plan.site, names, at), `${name}: ${names} ${at}`);
      }
    });

    it('mark each thing where the cursor is at its declaration', () => {
      const marked = new Map<string, readonly { readonly names: string; readonly name: string }[]>();
      for (const { name, drawing } of all) {
        const { things } = picture(svgFile(drawing));
        const shown = new Set(things.map(({ names, at }) => `${names} ${at}`));
        for (const { names, at } of things) {
          const place = placeOfName(plan.site, names, at) ?? assert.fail(at);
          const file = checked.files.find(({ uri }) => uri === fileOf(place).uri) ?? assert.fail(at);
          const { start, end } = spanOf(file, place);
          const where = `${file.uri} ${start}`;
          const found = marked.get(where) ?? thingsAt(checked, file, end);
          marked.set(where, found);
          const first = found.find((one) => shown.has(`${one.names} ${one.name}`));
          // Where a key declares several ports, the first of them is marked.
          const own = first === undefined ? undefined : placeOfName(plan.site, first.names, first.name);
          assert.equal(own?.piece, place.piece, `${name}: nothing is marked at ${names} ${at}`);
          assert.equal(own.start, place.start, `${name}: ${String(first?.name)} is marked at ${names} ${at}`);
        }
      }
    });

    it('have something that the hover says of each thing', () => {
      const things = all.flatMap(({ drawing }) => picture(svgFile(drawing)).things);
      const named = new Map(things.map(({ names, at }) => [`${names} ${at}`, { names, at }]));
      for (const { names, at } of named.values()) assert.notEqual(namedHover(plan, names, at), '', `${names} ${at}`);
    });

    it('have a row in a table for each thing, which the thing leads to in a page', () => {
      for (const { name, drawing } of all) {
        const page = drawingPage(drawing);
        const ids = new Set([...page.matchAll(/<tr id="([^"]+)"/g)].map(([, id]) => `#${id}`));
        for (const [, href = ''] of page.matchAll(/<a href="([^"]+)"/g)) assert.ok(ids.has(href), `${name}: ${href}`);
      }
    });
  });
