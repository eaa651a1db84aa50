// The network: each link once, with the figures of the report; blocked ones and those beside what is wanted stand back.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS, type DrawingOptions } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { type LinkReport, reportOf } from '../../server/src/report/report.ts';
import { bitRate, percent } from '../../server/src/text/words.ts';
import { houses } from '../houses/read.ts';
import { planFrom } from '../report/paddock.ts';
import { faults, merged } from './geometry.ts';
import { type Picture, type PictureThing, picture } from './picture.ts';

function draw(plan: Plan, wanted: DrawingOptions = USUAL_OPTIONS): Picture {
  return picture(svgFile(networkPicture.draw(plan, '', wanted)));
}

/** The rows of ports: number, neighbour, and figures or a state. */
function rowsIn({ things }: Picture): PictureThing[] {
  return things.filter(({ names, texts }) => names === 'ports' && texts.length > 1);
}

function shareOf(rate: number, { capacity }: LinkReport): string {
  return capacity === null ? bitRate(rate) : percent(rate, capacity);
}

/** Each link once, with the loads of the report; what is not known to be all is marked so in both. */
function mustHaveLinks(plan: Plan, rate: DrawingOptions['rate'], name: string): void {
  const rows = rowsIn(draw(plan, { rate }));
  for (const link of reportOf(plan).links) {
    const own = `${name}: ${link.from} – ${link.to}`;
    const told = rows.filter(({ at, texts }) => (at === link.from || at === link.to) && texts.length > 2);
    if (link.blocked) {
      for (const { texts } of told) assert.deepEqual(texts.slice(2), ['blocked'], own);
      assert.ok(told.length > 0, own);
      continue;
    }
    assert.equal(told.length, 1, own);
    const there = shareOf(link.forward.line[rate], link);
    const back = shareOf(link.backward.line[rate], link);
    const isForward = told[0]?.at === link.from;
    const figures = told[0]?.texts.slice(2).map((text) => text.replace(/^[▲△] /, '')) ?? [];
    const wanted = isForward ? [there, back] : [back, there];
    figures.forEach((figure, index) => {
      const isPart = / \+ \?$|^\?$/.test(figure);
      assert.ok(
        figure === '?' || figure.replace(/ \+ \?$/, '') === wanted[index],
        `${own}: ${figure}, ${wanted.join()}`,
      );
      // What the report does not say to be all is not said to be.
      assert.ok(!isPart || plan.site.streams.length > 0, own);
    });
    assert.equal(figures.length, 2, own);
  }
}

function mustHaveDevices(plan: Plan, name: string): void {
  const { things } = draw(plan);
  for (const { from, to } of reportOf(plan).links)
    for (const end of [from, to]) {
      const device = end.slice(0, end.indexOf('/'));
      assert.ok(
        things.some(({ names, at, texts }) => (names === 'devices' && at === device) || texts[1]?.includes(device)),
        `${name}: ${device}`,
      );
    }
}

describe('the network of each sample and house', () => {
  const plans = new Map([
    ...['harrow-lane', 'cottages'].map((one) => [one, planOf(readSite(`samples/${one}`).folder.site())] as const),
    ...[...houses].map(([name, text]) => [name, planFrom(text)] as const),
  ]);

  for (const rate of ['peak', 'nominal'] as const)
    it(`has each link once, with the ${rate} loads of the report`, () => {
      for (const [name, plan] of plans) mustHaveLinks(plan, rate, name);
    });

  it('has each device that is cabled, as a box or at a port', () => {
    for (const [name, plan] of plans) mustHaveDevices(plan, name);
  });
});

describe('the network of a site', () => {
  const plan = planOf(readSite('samples/harrow-lane').folder.site());

  it('says who is the root, and who the querier', () => {
    const core = draw(plan).things.find(({ names, at }) => names === 'devices' && at === 'core');
    assert.match(core?.texts.join(' ') ?? '', /root of the spanning tree · querier of video/);
  });

  it('shows what one stream takes, and lets the other links stand back', () => {
    const { links } = reportOf(plan);
    const things = draw(plan, { rate: 'peak', stream: 'gate-live' }).things;
    for (const { from, to, forward, backward, blocked } of links) {
      if (blocked) continue;
      const own = things.filter(({ names, at }) => names === 'ports' && (at === from || at === to));
      const isCarrying = forward.streams['gate-live'] !== undefined || backward.streams['gate-live'] !== undefined;
      for (const { looks } of own) assert.equal(looks.has('faded'), !isCarrying, from);
      const peak = forward.streams['gate-live'] ?? backward.streams['gate-live'];
      if (peak !== undefined)
        assert.ok(
          own.some(({ texts }) => texts.includes(bitRate(peak.line.peak))),
          from,
        );
    }
  });

  it('lets links that a VLAN does not cross stand back', () => {
    const things = draw(plan, { rate: 'peak', vlan: 'guests' }).things;
    const looks = (port: string): ReadonlySet<string> =>
      things.find(({ names, at, texts }) => names === 'ports' && at === port && texts.length > 1)?.looks ?? new Set();
    assert.ok(looks('core/1').has('faded'));
    assert.ok(!looks('core/16').has('faded'));
  });

  it('marks what is over its limit by a sign and a look', () => {
    const draft = planOf(readSite('samples/first-draft').folder.site());
    const row = rowsIn(draw(draft)).find(({ at }) => at === 'core/16');
    assert.ok(row?.looks.has('bad'));
    assert.ok(row?.texts.some((text) => text.startsWith('▲ ')));
  });

  it('moves only what comes after a device that is added', () => {
    const house = (more: string): string => `
devices:
  a: {kind: switch, ports: {1-9: {speed: 1 Gb/s}}}
  b: {kind: switch, ports: {1-9: {speed: 1 Gb/s}}}
  c: {kind: switch, ports: {1-9: {speed: 1 Gb/s}}}
  one: {kind: camera, speed: 100 Mb/s}
  two: {kind: camera, speed: 100 Mb/s}
  six: {kind: camera, speed: 100 Mb/s}
  ten: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: a/1, to: b/9}
  - {from: a/2, to: c/9}
  - {from: b/1, to: one}
  - {from: c/1, to: two}
  - {from: c/2, to: six}
${more}`;
    const before = draw(planFrom(house('')));
    const after = draw(planFrom(house('  - {from: c/3, to: ten}\n')));
    const boxOf = ({ things }: Picture, at: string): unknown => things.find((thing) => thing.at === at)?.boxes[0];
    for (const at of ['a', 'b', 'a/1', 'b/1', 'c/1', 'c/2']) assert.deepEqual(boxOf(after, at), boxOf(before, at), at);
  });

  it('fits a screen, whatever hangs on whatever', () => {
    const house = (count: number, kept: string, ends: (at: number) => string, more = ''): string => {
      const numbers = Array.from({ length: count }, (_, at) => at);
      const devices = numbers.map((at) => `  s${at}: {kind: switch${kept}, ports: {1-9: {speed: 1 Gb/s}}}`);
      const hosts = numbers.map((at) => `  cam-${at}: {kind: camera, speed: 100 Mb/s}`);
      const cables = numbers.flatMap((at) => [
        `  - {from: s${at}/1, to: cam-${at}}`,
        ...(at === 0 ? [] : [`  - {from: s${at}/9, to: ${ends(at)}}`]),
      ]);
      return `devices:\n${[...devices, ...hosts].join('\n')}\ncables:\n${cables.join('\n')}\n${more}`;
    };
    const chain = (at: number): string => `s${at - 1}/8`;
    const shapes = {
      'a chain of 10': house(10, ', spanning-tree: true', chain),
      'a chain of unmanaged switches': house(10, '', chain),
      'a star of stars': house(21, '', (at) => `s${Math.floor((at - 1) / 4)}/${2 + ((at - 1) % 4)}`),
      'a ring of 8': house(8, ', spanning-tree: true', chain, '  - {from: s0/9, to: s7/8}\n'),
    };
    for (const [name, text] of Object.entries(shapes)) {
      const drawn = draw(planFrom(text));
      assert.ok(drawn.width <= 1280, `${name}: ${drawn.width} px`);
      assert.deepEqual([...faults(drawn), ...merged(drawn)], [], name);
      const switches = text.match(/kind: switch/g)?.length;
      assert.equal(drawn.things.filter(({ names }) => names === 'devices').length, switches, name);
    }
  });

  it('of more links than can be read shows hosts by kind', () => {
    const cameras = Array.from({ length: 401 }, (_, index) => `c${index}`);
    const text = `devices:
  a: {kind: switch, ports: {1-402: {speed: 1 Gb/s}}}
  b: {kind: switch, ports: {1-2: {speed: 1 Gb/s}}}
${cameras.map((name) => `  ${name}: {kind: camera, speed: 100 Mb/s}`).join('\n')}
cables:
  - {from: a/402, to: b/1}
${cameras.map((name, index) => `  - {from: a/${index + 1}, to: ${name}}`).join('\n')}
`;
    const rows = rowsIn(draw(planFrom(text)));
    assert.deepEqual(
      rows.map(({ texts }) => texts[1]),
      ['401 cameras', 'b'],
    );
    // Nothing is sent; where a speed is not said, nobody knows the share.
    assert.deepEqual(rows[0]?.texts.slice(2), ['≤ 0 %', '≤ 0 %']);
    const unsaid = text
      .replace('kind: camera, speed: 100 Mb/s', 'kind: camera')
      .replace('1-402: {speed: 1 Gb/s}', '1-402: {}');
    assert.deepEqual(rowsIn(draw(planFrom(unsaid)))[0]?.texts.slice(2), ['?', '?']);
  });
});
