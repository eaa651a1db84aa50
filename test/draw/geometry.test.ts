// Pictures of any site can be read, and the checker of that finds what cannot be.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { USUAL_OPTIONS, type DrawingOptions, subjectsOf } from '../../server/src/draw/drawing.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { planFrom } from '../report/paddock.ts';
import { faults, merged } from './geometry.ts';
import { picture } from './picture.ts';

/** Things that fail are many, and their pictures differ little. */
const MOST_FAILING = 2;

/** Whose lines lead from box to box; others have axes. */
const LED = new Set(['network', 'failure', 'stream', 'power', 'aerial']);

/** The pictures of a site, with what is wrong with them. */
function wrong(plan: Plan, wanted: DrawingOptions = USUAL_OPTIONS): string[] {
  return OF_PLAN.flatMap((kind) =>
    subjectsOf(kind, plan)
      .slice(0, kind.kind === 'failure' ? MOST_FAILING : Infinity)
      .flatMap((subject) => {
        const seen = picture(svgFile(kind.draw(plan, subject, wanted)));
        const lines = LED.has(kind.kind) ? merged(seen) : [];
        return [...faults(seen), ...lines].map((fault) => `${kind.kind} ${subject}: ${fault}`);
      }),
  );
}

/** Switches in a tree with further cables at random, and hosts with names of any length. */
const houses = fc
  .record({
    switches: fc.array(
      fc.record({
        /** Null: the one before it, so that chains come about. */
        parent: fc.option(fc.nat()),
        hosts: fc.array(fc.integer({ min: 1, max: 63 }), { maxLength: 9 }),
        spanningTree: fc.boolean(),
        snooping: fc.boolean(),
      }),
      { minLength: 1, maxLength: 14 },
    ),
    further: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 4 }),
    receivers: fc.array(fc.nat(), { maxLength: 5 }),
  })
  .map(({ switches, further, receivers }) => {
    const hosts: string[] = [];
    const used = switches.map(() => 0);
    const port = (index: number): string => `s${index}/${(used[index] = (used[index] ?? 0) + 1)}`;
    const cables: string[] = [];
    switches.forEach(({ parent, hosts: lengths }, index) => {
      if (index > 0) cables.push(`{from: ${port(index)}, to: ${port((parent ?? index - 1) % index)}}`);
      for (const length of lengths) {
        const name = `h${hosts.length}-`.padEnd(length, 'm').replace(/-$/, '');
        hosts.push(name);
        cables.push(`{from: ${port(index)}, to: ${name}}`);
      }
    });
    for (const [one, other] of further) {
      const [a, b] = [one % switches.length, other % switches.length];
      if (a !== b) cables.push(`{from: ${port(a)}, to: ${port(b)}}`);
    }
    const devices = switches.map(
      ({ spanningTree, snooping }, index) =>
        `  s${index}: {kind: switch, spanning-tree: ${spanningTree}, igmp-snooping: ${snooping}, ports: {1-${Math.max(1, used[index] ?? 0)}: {speed: 1 Gb/s}}}`,
    );
    const others = hosts.map(
      (name, index) => `  ${name}: {kind: display, speed: 1 Gb/s, address: 192.168.1.${index + 1}}`,
    );
    const [source] = hosts;
    const watching = [...new Set(receivers.flatMap((index) => hosts[index % Math.max(1, hosts.length)] ?? []))];
    const streams =
      source === undefined
        ? ''
        : `streams: {show: {source: ${source}, group: 239.192.1.1, port: 5004, transport: rtp, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [${watching.join(', ')}]}}\n`;
    return `devices:\n${[...devices, ...others].join('\n')}\n${cables.length === 0 ? '' : `cables:\n${cables.map((cable) => `  - ${cable}`).join('\n')}\n`}${streams}`;
  });

describe('pictures to be read', () => {
  for (const sample of ['harrow-lane', 'first-draft', 'cottages'])
    it(`of ${sample} have no box over another, no line through one, and all words in their boxes`, () => {
      assert.deepEqual(wrong(planOf(readSite(`samples/${sample}`).folder.site())), []);
    });

  it('of any site have none', () => {
    fc.assert(
      fc.property(houses, (text) => {
        assert.deepEqual(wrong(planFrom(text)), [], text);
      }),
      { numRuns: 50 },
    );
  });
});

describe('the checker of pictures', () => {
  const one = (marks: string): string[] => faults(picture(`<svg viewBox="0 0 100 100">${marks}</svg>`));
  const box = (x: number, y: number, size = 40): string =>
    `<rect class="plain" x="${x}" y="${y}" width="${size}" height="${size}"/>`;

  it('finds boxes over each other, and not one in another', () => {
    assert.equal(one(box(0, 0) + box(30, 30)).length, 1);
    assert.deepEqual(one(box(0, 0) + box(10, 10, 20)), []);
  });

  it('finds a line through a box, and not one that ends at its edge', () => {
    assert.equal(one(`${box(30, 30)}<path class="plain" d="M0 50L100 50"/>`).length, 1);
    assert.equal(one(`${box(30, 30)}<path class="plain" d="M0 50L50 50"/>`).length, 1);
    assert.deepEqual(one(`${box(30, 30)}<path class="plain" d="M0 50L30 50"/>`), []);
    assert.deepEqual(one(`${box(30, 30)}<path class="plain" d="M70 0L70 100"/>`), []);
  });

  it('finds lines that run along each other, and not those that cross or meet', () => {
    const two = (a: string, b: string): number =>
      merged(picture(`<svg viewBox="0 0 100 100"><path class="plain" d="${a}"/><path class="plain" d="${b}"/></svg>`))
        .length;
    assert.equal(two('M10 0L10 50', 'M10 40L10 90'), 1);
    assert.equal(two('M0 10L90 10', 'M50 10L60 10'), 1);
    assert.equal(two('M10 0L10 50', 'M0 20L90 20'), 0);
    assert.equal(two('M10 0L10 50', 'M10 50L10 90'), 0);
    assert.equal(two('M10 0L10 50', 'M20 0L20 50'), 0);
  });

  it('finds words that leave their box, and words over words', () => {
    const text = (x: number, y: number): string => `<text class="plain" x="${x}" y="${y}" font-size="10">12345</text>`;
    assert.equal(one(box(0, 0) + text(20, 20)).length, 1);
    assert.deepEqual(one(box(0, 0) + text(5, 20)), []);
    assert.equal(one(text(5, 20) + text(20, 22)).length, 1);
  });
});
