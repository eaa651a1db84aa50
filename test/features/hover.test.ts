// What hovers show, at marked places of a site.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, it } from 'mocha';
import { type HoverText, hover } from '../../server/src/features/hover/hover.ts';
import { reportOf } from '../../server/src/report/report.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { check } from '../../server/src/check.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { NAMED_SECTIONS } from '../../server/src/site/declared.ts';
import { contentOf, namePlace } from '../../server/src/site/item.ts';
import { SiteFolder, spanOf } from '../../server/src/site/folder.ts';
import { bitRate } from '../../server/src/text/words.ts';

const URI = 'file:///harrow-lane/all.site.yaml';

function checkedSite(text: string): Checked {
  const folder = new SiteFolder();
  folder.set(URI, text);
  return check(folder);
}

/** The site that was asked about last. */
let last: { readonly text: string; readonly checked: Checked } | undefined;

function hoverIn(text: string, offset: number): (HoverText & { readonly over: string }) | undefined {
  if (last?.text !== text) last = { text, checked: checkedSite(text) };
  const { checked } = last;
  const file = checked.files.find(({ uri }) => uri === URI);
  assert.ok(file !== undefined);
  const found = hover(checked, file, offset);
  if (found === undefined) return undefined;
  const { start, end } = spanOf(file, found.at);
  return { ...found, over: text.slice(start, end) };
}

/** The hover at a word of a text. */
function over(text: string, word: string): string {
  const at = text.indexOf(word);
  assert.ok(at >= 0, word);
  return hoverIn(text, at)?.markdown ?? '';
}

interface Mark {
  readonly line: number;
  readonly offset: number;
  readonly kind: string;
  readonly text: string;
}

/** Marks point at the nearest line above them that is none. */
function marksIn(text: string): Mark[] {
  const marks: Mark[] = [];
  let start = 0;
  let above = 0;
  text.split('\n').forEach((line, index) => {
    const mark = /^#( *)\^ (hover|range): (.*)$/.exec(line);
    if (mark === null) above = start;
    else
      marks.push({
        line: index + 1,
        offset: above + 1 + (mark[1]?.length ?? 0),
        kind: mark[2] ?? '',
        text: mark[3] ?? '',
      });
    start += line.length + 1;
  });
  return marks;
}

const FIXTURE = readFileSync(new URL('hover.site.yaml', import.meta.url), 'utf8');

describe('hovers', () => {
  const marks = marksIn(FIXTURE);
  assert.ok(marks.length > 50);
  for (const { line, offset, kind, text } of marks) {
    it(`${kind === 'range' ? 'is for' : 'shows'} ${text} at line ${line}`, () => {
      const found = hoverIn(FIXTURE, offset);
      assert.ok(found !== undefined, 'there is a hover');
      if (kind === 'range') assert.equal(found.over, text);
      else assert.ok(found.markdown.includes(text), `in:\n${found.markdown}`);
    });
  }

  for (const from of ['core/16', 'core/2']) {
    it(`has the report's figures for the link at ${from}`, () => {
      const link = reportOf(checkedSite(FIXTURE).plan).links.find((candidate) => candidate.from === from);
      assert.ok(link !== undefined && link.forward.line.peak > 0);
      const ends = hoverIn(FIXTURE, FIXTURE.indexOf(`from: ${from},`) + 'from: '.length)?.markdown ?? '';
      for (const { line } of [link.forward, link.backward].filter(({ line: { peak } }) => peak > 0)) {
        assert.ok(ends.includes(`| **in all** | **${bitRate(line.nominal)}** | **${bitRate(line.peak)}** |`), ends);
      }
    });
  }

  // The figures are those of the report, which is held against sums by hand. 8 more: (90 − 9.78) ÷ 9.78 Mb/s.
  for (const [word, first] of [
    ['paddock:\n', '6.56 Mb/s, at most 9.78 · reaches recorder'],
    ['paddock-live:\n', '6.47 Mb/s, at most 9.63 · reaches recorder and barn-screen, but not kitchen-screen'],
    ['paddock-cam: {', 'sends 6.56 Mb/s, at most 9.78 · reaches recorder'],
    ['core:\n', '16 ports, 12 free · PoE 15.4 W of 130 W · fullest: port 1 in, 9.78 Mb/s (9.8 %)'],
    ['core/1, to', '322 kb/s (0.3 %) out, 9.78 Mb/s (9.8 %) in · at most 100 Mb/s'],
    ['1-8: {speed', '8 ports, 6 free'],
    ['panel-a: {', '24 ports, 23 free'],
    ['video: {id', '4 of 254 addresses in use · querier core · 3 streams'],
    ['archive: {', '12 % of 7.6 TB needed · 65.8 GB a day · full after 115 d if nothing is deleted'],
    ['recorder:\n', 'receives '],
  ] as const)
    it(`begins with the answer at ${word.trim()}`, () => {
      const [line] = over(FIXTURE, word).split('\n');
      assert.ok(line?.startsWith(`**${first}`), line);
    });

  it('begins with the answer for everything that has a name in a whole site', () => {
    const { folder } = readSite('samples/harrow-lane');
    const checked = check(folder);
    const missing: string[] = [];
    for (const file of checked.files)
      for (const { items } of file.cut.pieces.map(contentOf))
        for (const item of items.filter(({ section }) => NAMED_SECTIONS.some((name) => name === section))) {
          const { start } = spanOf(file, namePlace(item));
          const shown = hover(checked, file, start)?.markdown ?? '';
          if (!/^\*\*[^*]+\*\*\n/.test(shown) || shown.startsWith(`**${item.name}`)) missing.push(item.name);
        }
    // Coax runs through them, and the sum of what arrives is at its end.
    assert.deepEqual(missing, ['loft-supply', 'aerial-earth', 'dish-earth-1', 'dish-earth-2']);
  });

  it('says that a figure is not known, and not that it is 0', () => {
    const text =
      'devices: {cam: {kind: camera}, pc: {kind: computer}}\ncables: [{from: cam, to: pc}]\nstreams: {s: {source: cam, transport: rtp, port: 5004, receivers: [pc]}}\nvolumes: {v: {host: pc}}\nrecordings: {r: {stream: s, volume: v, keep: 2 d}}\n';
    assert.match(over(text, 's: {source'), /^\*\*\\\? · reaches pc\*\*|^\*\*\? · reaches pc\*\*/);
    assert.match(over(text, 'cam: {'), /^\*\*sends \?/);
    assert.match(over(text, 'v: {'), /^\*\*\? of \? needed · \? a day · full after \?\*\*/);
    assert.match(over(text, 'r: {'), /^\*\*\? for 2 d · \? a day\*\*/);
  });

  it('shows nothing between items, in comments and in empty files', () => {
    assert.equal(hoverIn(FIXTURE, 3), undefined);
    assert.equal(hoverIn('', 0), undefined);
    assert.equal(hoverIn('\n\n', 1), undefined);
  });

  it('sums up all but the greatest of many streams', () => {
    const streams = Array.from(
      { length: 30 },
      (_, i) =>
        `  s${i}: {source: cam, transport: rtp, port: ${5000 + 2 * i}, video: {codec: h264, bitrate: ${i + 1} Mb/s}, receivers: [recorder]}`,
    );
    const text = `devices:\n  cam: {kind: camera, speed: 1 Gb/s}\n  recorder: {kind: server, speed: 1 Gb/s}\ncables:\n  - {from: cam, to: recorder}\nstreams:\n${streams.join('\n')}\n`;
    const shown = over(text, 'cam, to');
    assert.match(shown, /\| s29 \|/);
    assert.doesNotMatch(shown, /\| s3 \|/);
    // s0 to s18: 1 + 2 + … + 19 = 190 Mb/s of media, each packet of 1400 B taking 1478 B: 200.6 Mb/s.
    assert.match(shown, /\| 19 others \| 201 Mb\/s \| 201 Mb\/s \| together \|/);
  });

  it('says that a link is blocked', () => {
    const text = `
devices:
  a: {kind: switch, spanning-tree: true, spanning-tree-priority: 4096, ports: {1: {speed: 1 Gb/s}, 2: {speed: 1 Gb/s}}}
  b: {kind: switch, spanning-tree: true, ports: {1: {speed: 1 Gb/s}, 2: {speed: 1 Gb/s}}}
cables:
  - {from: a/1, to: b/1}
  - {from: a/2, to: b/2}
`;
    assert.match(over(text, 'a/2'), /Spanning tree blocks it at b\/2\./);
  });

  it('shows what can be known of a half-typed site, and throws for no place in it', () => {
    for (let length = 0; length < FIXTURE.length; length += 401) {
      const text = `${FIXTURE.slice(0, length)}\n`;
      const checked = checkedSite(text);
      const [file] = checked.files;
      assert.ok(file !== undefined);
      for (let offset = Math.max(0, length - 300); offset <= text.length; offset += 7) hover(checked, file, offset);
    }
  });

  it('makes no link, image or HTML of names and text', () => {
    const text = `
devices:
  "[x](command:a)": {kind: camera, speed: 1 Gb/s, description: "<img src=https://evil.example/x> ![y](https://evil.example)", location: www.evil.example}
streams:
  "<b>": {source: "[x](command:a)", transport: rtp, video: {codec: h264, bitrate: 1 Mb/s}, receivers: ["![z](q)"]}
`;
    const shown = ['"[x](command:a)":', '"<b>"', '"![z](q)"', '"[x](command:a)", transport']
      .map((word) => over(text, word))
      .join('\n');
    assert.match(shown, /camera/);
    assert.doesNotMatch(shown, /(?<!\\)[<[]|www\.|https:\/\//);
  });
});
