// What is shown while somebody types, over the protocol alone: a right text is left alone until it is there, and a
// mistake is told before the next item begins.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { DiagnosticSeverity } from 'vscode-languageserver-protocol/node';
import { NEW_SITES } from '../../server/src/site/new-site/new-site.ts';
import { cut } from '../../server/src/text/cut.ts';
import { Client, positionOf } from '../lsp/client.ts';
import {
  ORDERS,
  type Script,
  inOrder,
  itemByItem,
  madeOfCopies,
  pasted,
  retyped,
  takenOut,
  typed,
  wholeFile,
} from './keys.ts';
import { type Mistake, mistakes } from './mistakes.ts';
import { isMistake, tally, type } from './typist.ts';

const NEW_SITE = NEW_SITES.flat.text('Europe/London');

/** Of several items in each section, and names that are the beginning of others. */
const SMALL = `vlans:
  video: {id: 20, querier: core}
  house: {id: 10}
devices:
  core:
    kind: switch
    igmp-snooping: true
    ports: {1-3: {vlan: video}, 4: {vlan: house}}
  cam-1: {kind: camera, address: 192.168.0.21}
  cam-2: {kind: camera, address: 192.168.0.22}
  nas: {kind: server, address: 192.168.0.30}
cables:
  - {from: core/1, to: cam-1}
  - {from: core/2, to: cam-2}
  - {from: core/3, to: nas}
streams:
  cam-1: {source: cam-1, transport: rtsp, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [nas]}
  cam-1-shown: {source: nas, carries: cam-1, transport: rtp, group: 239.192.0.1, port: 5004}
`;

const house = (name: string): string => readFileSync(new URL(`../houses/${name}.site.yaml`, import.meta.url), 'utf8');

/** Of the keys of a right text, the part after which a mistake may be shown. */
const BAR = 0.1;

describe('while somebody types', () => {
  let client: Client;
  let folder: string;
  let count = 0;

  before(async () => {
    client = await Client.startHere();
  });
  beforeEach(() => {
    folder = `/nowhere/typing/${++count}`;
  });
  after(() => client.stop());

  describe('a right text', () => {
    const scripts: readonly (readonly [string, readonly Script[]])[] = [
      ['the text that a newcomer starts from', [wholeFile(NEW_SITE)]],
      ['the same in an editor that closes brackets and indents', [wholeFile(NEW_SITE, 'closing')]],
      ['each item of it, into the others', itemByItem(NEW_SITE, 'closing')],
      ...Object.entries(ORDERS).map(
        ([order, sorted]) => [`a small house, ${order}`, [inOrder(SMALL, sorted, 'closing')]] as const,
      ),
      ['television', [wholeFile(house('television'))]],
      ['a house of VLANs and a ring', [wholeFile(house('ring'))]],
      ['each address anew', retyped(NEW_SITE, /address: ([\d.]+)/g)],
      ['each name anew', retyped(NEW_SITE, /^ {2}([a-z-]+):/gm)],
      ['each figure anew', retyped(NEW_SITE, /: (\d+ [A-Za-z]+(?:\/s)?)/g)],
      ['each end of a cable anew', retyped(NEW_SITE, /(?:from|to): ([a-z0-9/-]+)/g)],
      ['each item made of a copy of the one above', madeOfCopies(NEW_SITE)],
      ['each item pasted', pasted(NEW_SITES.buildings.text('Europe/London'))],
      ['each item taken out', takenOut(NEW_SITES['two-cards'].text('Europe/London'))],
      ['cables before there are devices', [wholeFile('cables:\n  - {from: core/1, to: gate-cam, length: 3 m}\n')]],
    ];
    for (const [what, own] of scripts)
      it(`is hardly marked, and nowhere else: ${what}`, async () => {
        const { keys, marked, far, examples } = await tally(client, folder, own);
        assert.ok(keys > 10);
        assert.ok(marked <= BAR * keys, `${marked} of ${keys} keys\n${examples.join('\n')}`);
        assert.equal(far, 0, examples.join('\n'));
      });
  });

  describe('a mistake is reported before the next item begins', () => {
    for (const mistake of mistakes)
      it(`${mistake.what}: ${mistake.item.trim().split('\n').join(' ⏎ ')}`, async () => {
        const script = scriptOf(mistake);
        let found = false;
        for await (const { diagnostics } of type(client, `file://${folder}/home.site.yaml`, script))
          found = diagnostics.some(({ code }) => code === mistake.rule);
        assert.ok(found, `${mistake.rule} is not told`);
      });
  });

  it('tells a misspelt name, and one that should stand above, where all is written from above', async () => {
    const text = SMALL.replace('to: cam-2', 'to: cam-v').replace('to: nas', 'to: porch');
    const told = new Set<string>();
    const script = wholeFile(text.slice(0, text.indexOf('streams')));
    for await (const { diagnostics } of type(client, `file://${folder}/home.site.yaml`, script))
      for (const { message } of diagnostics) told.add(String(message).slice(0, 24));
    assert.deepEqual([...told], ['There is no device cam-v', 'There is no device porch']);
  });

  it('tells each mistake also where its item is pasted', async () => {
    const untold: string[] = [];
    for (const [index, mistake] of mistakes.entries()) {
      const { before: text, keys } = scriptOf(mistake);
      const paste = { at: keys[0]?.at ?? 0, without: 0, text: mistake.item };
      let codes: unknown[] = [];
      const uri = `file://${folder}/${index}/home.site.yaml`;
      for await (const { diagnostics } of type(client, uri, { before: text, keys: [paste] }))
        codes = diagnostics.map(({ code }) => code);
      if (!codes.includes(mistake.rule)) untold.push(`${mistake.what}: ${mistake.rule}`);
    }
    assert.deepEqual(untold, []);
  });

  it('shows all after a pause, and what was shown stays', async () => {
    const uri = `file://${folder}/home.site.yaml`;
    const text = 'devices:\n  core: {kind: switch}\n';
    await client.openUri(uri, text);
    assert.deepEqual(await client.diagnostics(uri), []);
    for (const key of 'cables:\n  - {from: core}') {
      await client.change(uri, key, at(end));
      end = { line: key === '\n' ? end.line + 1 : end.line, character: key === '\n' ? 0 : end.character + 1 };
    }
    const codes = (await client.diagnostics(uri)).map(({ code }) => code);
    assert.ok(!codes.includes('missing-key'), 'the other end is not there yet');
    await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'missing-key'));
    await client.change(uri, '# core', at({ line: 0, character: 0 }));
    assert.ok((await client.diagnostics(uri)).some(({ code }) => code === 'missing-key'));
  });
  let end = { line: 2, character: 0 };

  it('tells what is missing as soon as the cursor is said to be elsewhere', async () => {
    const uri = `file://${folder}/home.site.yaml`;
    await client.openUri(uri, NEW_SITE);
    await client.diagnostics(uri);
    const place = positionOf(NEW_SITE, ', to: gate-cam');
    await client.change(uri, '', { start: place, end: { ...place, character: place.character + 14 } });
    assert.deepEqual((await client.diagnostics(uri)).filter(isMistake), []);
    const moved = performance.now();
    await client.connection.sendNotification('plumbline/cursor', { uri, position: { line: 1, character: 0 } });
    await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'missing-key'));
    assert.ok(performance.now() - moved < 900 || process.env['CI'] === undefined);
  });

  it('leaves a problem alone that stood before', async () => {
    const uri = `file://${folder}/home.site.yaml`;
    const wrong = NEW_SITE.replace('hall-screen]', 'hall-screan]').replace(
      'speed: 1 Gb/s}\n\ncables',
      'sped: 1}\n\ncables',
    );
    await client.openUri(uri, wrong);
    const stood = (await client.diagnostics(uri)).filter(isMistake).map(({ code }) => code);
    assert.ok(stood.length >= 2);
    const line = positionOf(wrong, '  recorder: {kind').line;
    let character = 0;
    for (const key of '  lane-cam: {kind: camera}\n') {
      await client.change(uri, key, at({ line, character }));
      character++;
      assert.deepEqual(
        (await client.diagnostics(uri)).filter(isMistake).map(({ code }) => code),
        stood,
      );
    }
  });

  it('tells what a paste has wrong, and later what follows from it elsewhere', async () => {
    const uri = `file://${folder}/home.site.yaml`;
    await client.openUri(uri, NEW_SITE);
    await client.diagnostics(uri);
    const from = positionOf(NEW_SITE, '  gate-cam: {kind');
    const pasted = '  gate-kam: {kind: camra, address: 192.168.20.31}\n  yard-kam: {kind: camera, adress: 1.2.3.4}\n';
    await client.change(uri, pasted, { start: from, end: { line: from.line + 2, character: 0 } });
    const codes = (await client.diagnostics(uri)).filter(isMistake).map(({ code }) => code);
    assert.deepEqual([...new Set(codes)].sort(), ['unknown-key', 'value-not-allowed']);
    await client.diagnostics(uri, (found) => found.some(({ code }) => code === 'unknown-name'));
  });

  it('marks with the same severity as ever', async () => {
    const uri = `file://${folder}/home.site.yaml`;
    await client.openUri(uri, NEW_SITE.replace('kind: server', 'kind: sever'));
    const [first] = (await client.diagnostics(uri)).filter(({ code }) => code === 'value-not-allowed');
    assert.equal(first?.severity, DiagnosticSeverity.Error);
  });
});

function at(place: { readonly line: number; readonly character: number }): {
  start: typeof place;
  end: typeof place;
} {
  return { start: place, end: place };
}

/** The keys of a mistake behind the last item of its section, or instead of one. */
function scriptOf({ section, item, insteadOf }: Mistake): Script {
  const { pieces, starts } = cut({ uri: '' }, NEW_SITE);
  const own = pieces.flatMap((piece, index) =>
    piece.section === section ? [{ piece, start: starts[index] ?? 0 }] : [],
  );
  const found =
    insteadOf === undefined
      ? own[own.length - 1]
      : own.find(({ piece }) => piece.text.trimStart().startsWith(insteadOf));
  if (found === undefined) throw new Error(`there is no ${insteadOf ?? section}`);
  const { start, piece } = found;
  const written = piece.text.trimEnd().length + 1;
  const from = insteadOf === undefined ? start + written : start;
  const before = NEW_SITE.slice(0, from) + NEW_SITE.slice(insteadOf === undefined ? from : start + written);
  return { before, keys: typed(item, from) };
}
