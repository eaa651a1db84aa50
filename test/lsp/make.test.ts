// Made files in an editor: the same as the command line writes.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type OutputOffer, type ShownOutput, make, outputs } from '../../server/src/lsp/make-request.ts';
import { OUTPUTS } from '../../server/src/make/outputs.ts';
import { plumblineHere } from '../cli/run.ts';
import { Client } from './client.ts';

const site = resolve('samples/harrow-lane');
const folder = pathToFileURL(site).href;

describe('what is made, asked for by an editor', function () {
  let client: Client;
  let out: string;

  before(async () => {
    client = await Client.startHere();
    const file = join(site, 'network.site.yaml');
    await client.open(file, readFileSync(file, 'utf8'));
  });
  after(() => client.stop());
  beforeEach(() => (out = mkdtempSync(join(tmpdir(), 'plumbline-made-'))));
  afterEach(() => rmSync(out, { recursive: true }));

  const made = (kind: string, subject?: string): Promise<ShownOutput> =>
    client.connection.sendRequest(make, { folder, kind, subject });

  /** The files of the command line, by path. */
  function written(): Map<string, { readonly text: string; readonly executable: boolean }> {
    const paths = readdirSync(out, { recursive: true, encoding: 'utf8' }).filter((path) =>
      statSync(join(out, path)).isFile(),
    );
    return new Map(
      paths.sort().map((path) => {
        const executable = (statSync(join(out, path)).mode & 0o100) !== 0;
        return [path, { text: readFileSync(join(out, path), 'utf8'), executable }];
      }),
    );
  }

  const asWritten = ({ files }: ShownOutput): ReturnType<typeof written> =>
    new Map(
      [...files]
        .sort((a, b) => (a.path < b.path ? -1 : 1))
        .map(({ path, text, executable = false }) => [path, { text, executable }]),
    );

  it('is offered with what it can be made for', async () => {
    const offers: readonly OutputOffer[] = await client.connection.sendRequest(outputs, { folder });
    const words = ({ kind, title, summary }: Omit<OutputOffer, 'subjects'>): string[] => [kind, title, summary];
    assert.deepEqual(offers.map(words), OUTPUTS.map(words));
    assert.deepEqual(offers.find(({ kind }) => kind === 'networkd')?.subjects, ['recorder']);
    assert.deepEqual(offers.find(({ kind }) => kind === 'dnsmasq')?.subjects, []);
  });

  for (const { kind } of OUTPUTS) {
    it(`is of ${kind} what the command line writes, with its notes and what it refuses`, async () => {
      const { err } = await plumblineHere(['make', kind, '--site', site, '--out', out]);
      const shown = await made(kind);
      assert.ok(shown.files.length > 0);
      assert.deepEqual(asWritten(shown), written());
      assert.ok(shown.notes.every((note) => err.includes(`${note}\n`)));
      assert.equal([...err.matchAll(/\[not-made\]/g)].length, shown.refused.length);
      for (const { at, message } of shown.refused) {
        const { line, character } = at.range.start;
        const name = at.uri.replace(`${folder}/`, '');
        assert.ok(err.includes(`${name}:${line + 1}:${character + 1} error ${message} [not-made]`), err);
      }
    });
  }

  it('is of one alone where one is named', async () => {
    await plumblineHere(['make', 'sdp', 'gate-live', '--site', site, '--out', out]);
    const shown = await made('sdp', 'gate-live');
    assert.deepEqual(asWritten(shown), written());
    assert.deepEqual(
      shown.files.map(({ path }) => path),
      ['gate-live.sdp'],
    );
  });

  it('follows what is typed and not saved', async () => {
    const path = join(site, 'site.site.yaml');
    const text = readFileSync(path, 'utf8');
    const uri = await client.open(path, text.replace('name: Harrow Lane', 'name: Harrow Mill'));
    assert.match((await made('sdp', 'gate-live')).files[0]?.text ?? '', /Harrow Mill/);
    await client.change(uri, text);
    assert.doesNotMatch((await made('sdp', 'gate-live')).files[0]?.text ?? '', /Harrow Mill/);
    await client.close(uri);
  });

  it('is of a site without an open file too', async () => {
    const other = pathToFileURL(resolve('samples/first-draft')).href;
    const shown = await client.connection.sendRequest(make, { folder: other, kind: 'cable-labels' });
    assert.deepEqual(
      shown.files.map(({ path }) => path),
      ['cable-labels.csv', 'cable-labels.html'],
    );
  });

  it('says that there is no such kind or name', async () => {
    await assert.rejects(made('__proto__'), /There is no kind __proto__/);
    await assert.rejects(made('networkd', 'nobody'), /networkd cannot be made for nobody/);
  });
});
