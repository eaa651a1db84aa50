// What is added to a site moves only what is below it in a picture: all that stands above stays where it was.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { type DrawingKind, USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { rackFronts } from '../../server/src/draw/rack.ts';
import { streamWay } from '../../server/src/draw/stream.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { switchPorts } from '../../server/src/draw/switch.ts';
import { planFrom } from '../report/paddock.ts';
import { type Area, type Picture, picture } from './picture.ts';

function seen(kind: DrawingKind, text: string, subject: string): Picture {
  return picture(svgFile(kind.draw(planFrom(text), subject, USUAL_OPTIONS)));
}

/** Where all words and boxes stand, by what they say or are of, and how often that came before. */
function places({ words, boxes }: Picture): ReadonlyMap<string, Area> {
  const found = new Map<string, Area>();
  for (const area of [...boxes.map((box) => ({ ...box, what: `box of ${box.what}` })), ...words]) {
    let key = area.what;
    while (found.has(key)) key += '+';
    found.set(key, area);
  }
  return found;
}

/** @param name of what is added */
function mustStay(before: Picture, after: Picture, name: string, text: string): void {
  const top = Math.min(
    ...after.words
      .filter((words) => words.text === name || words.what.startsWith(`${name}:`))
      .map((words) => words.top),
    ...after.boxes.filter(({ what }) => what === name).map((box) => box.top),
  );
  assert.ok(Number.isFinite(top), `${name} is not there: ${text}`);
  const now = places(after);
  let stayed = 0;
  for (const [key, { left, top: was }] of places(before)) {
    if (was >= top) continue;
    const is = now.get(key);
    assert.deepEqual([is?.left, is?.top], [left, was], `${key}, as ${name} is added: ${text}`);
    stayed++;
  }
  assert.ok(stayed > 0, text);
}

interface Tree {
  /** Of each switch but the first, the one that it hangs on. */
  readonly parents: readonly number[];
  /** Hosts at each. */
  readonly hosts: readonly number[];
  /** Where one is added. */
  readonly at: number;
}

/** Small enough to stand in its columns whatever is added. @param deepest switches in a row */
function trees(deepest: number): fc.Arbitrary<Tree> {
  return fc.record({
    parents: fc.array(fc.nat({ max: deepest - 2 }), { maxLength: 3 }),
    hosts: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 4, maxLength: 4 }),
    at: fc.nat({ max: 3 }),
  });
}

/** Names are of one length, as a longer one makes its column wider. */
function siteOf({ parents, hosts, at }: Tree, isAdded: boolean): string {
  const switches = hosts.slice(0, parents.length + 1);
  const cables: string[] = [];
  const names: string[] = [];
  switches.forEach((count, index) => {
    const all = index === at % switches.length && isAdded ? [...Array(count).keys(), 9] : [...Array(count).keys()];
    for (const port of all) {
      names.push(`host-${index}-${port}`);
      cables.push(`  - {from: s${index}/${port + 11}, to: host-${index}-${port}}`);
    }
    if (index > 0) cables.push(`  - {from: s${(parents[index - 1] ?? 0) % index}/${20 + index}, to: s${index}/30}`);
  });
  const devices = [
    ...switches.map((_, index) => `  s${index}: {kind: switch, ports: {11-30: {speed: 1 Gb/s}}}`),
    ...names.map((name, index) => `  ${name}: {kind: display, speed: 1 Gb/s, address: 10.0.0.${index + 1}}`),
  ];
  const [source, ...receivers] = names;
  return `devices:\n${devices.join('\n')}\ncables:\n${cables.join('\n')}\nstreams: {show: {source: ${source}, group: 239.192.1.1, port: 5004, transport: rtp, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [${receivers.join(', ')}]}}\n`;
}

describe('what is added moves only what is below it', () => {
  for (const [kind, subject, deepest] of [
    [networkPicture, '', 4],
    [streamWay, 'show', 2],
  ] as const)
    it(`in a picture of a ${kind.kind}`, () => {
      fc.assert(
        fc.property(trees(deepest), (tree) => {
          const text = siteOf(tree, true);
          const name = `host-${tree.at % (tree.parents.length + 1)}-9`;
          mustStay(seen(kind, siteOf(tree, false), subject), seen(kind, text, subject), name, text);
        }),
        { numRuns: 15 },
      );
    });

  it('in a picture of the ports of a switch', () => {
    const house = (ports: number): string => `devices: {s: {kind: switch, ports: {1-${ports}: {speed: 1 Gb/s}}}}\n`;
    for (const ports of [2, 7, 8, 9, 16, 24, 25, 47])
      mustStay(seen(switchPorts, house(ports), 's'), seen(switchPorts, house(ports + 1), 's'), `s/${ports + 1}`, '');
  });

  it('in a picture of a rack, where nothing moves at all', () => {
    const house = (units: readonly number[]): string =>
      `racks: {tall: {units: 9}}\ndevices:\n${units.map((unit) => `  d${unit}: {kind: server, rack: tall, unit: ${unit}}`).join('\n')}\n`;
    for (const added of [1, 4, 9]) {
      const [before, after] = [
        [2, 3, 6, 7],
        [2, 3, 6, 7, added],
      ].map((units) => places(seen(rackFronts, house(units), 'tall')));
      for (const [key, box] of before ?? []) if (/\bd\d/.test(key)) assert.deepEqual(after?.get(key), box, key);
      assert.ok(after?.has(`box of d${added}`) && before?.has('box of d2') === true);
    }
  });
});
