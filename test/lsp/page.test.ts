// A page beside the text: the same as from the command line, with the problems list's findings, and names as links.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { drawings, hoverOfName, page, placeOfName, thingsAt } from '../../server/src/lsp/page-request.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { plumblineHere } from '../cli/run.ts';
import { Client } from './client.ts';

/** A copy of the sample, in a repository of its own. */
const site = realpathSync(mkdtempSync(join(tmpdir(), 'plumbline-page-')));
const folder = pathToFileURL(site).href;

describe('a page of a site, asked for by an editor', () => {
  let client: Client;
  const file = join(site, 'devices.site.yaml');
  let address: string;

  before(async () => {
    cpSync('samples/first-draft', site, { recursive: true });
    const git = (...words: string[]): void =>
      void execFileSync('git', ['-c', 'user.name=Harrow Lane', '-c', 'user.email=harrow@example.org', ...words], {
        cwd: site,
      });
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '--message', 'as it is');
    client = await Client.startHere();
    address = await client.open(file, readFileSync(file, 'utf8'));
  });
  after(async () => {
    await client.stop();
    rmSync(site, { recursive: true });
  });

  /** A page without the parts that only the editor's page has, and without the inner links of the printed one. */
  const asPrinted = (html: string): string =>
    html.replace(/<button [^>]*>(.*?)<\/button>/g, '$1').replace(/<a href="#[^"]+">|<\/a>/g, '');

  it('is the report that the command line prints', async () => {
    const { title, html } = await client.connection.sendRequest(page, { folder, page: 'report' });
    assert.equal(title, 'Report of Harrow Lane');
    assert.equal(asPrinted(html), asPrinted((await plumblineHere(['report', '--format', 'html', site])).out));
  });

  it('says of a site that is edited what it then is', async () => {
    const text = readFileSync(file, 'utf8');
    await client.change(address, text.replace('poe-budget: 60 W', 'poe-budget: 600 W'));
    const { html } = await client.connection.sendRequest(page, { folder, page: 'report' });
    assert.match(html, />600 W</);
    await client.change(address, text);
  });

  it('leads from each name in it to the line that declares it', async () => {
    const { html } = await client.connection.sendRequest(page, { folder, page: 'report' });
    const named = new Map(
      [...html.matchAll(/data-names="(\w+)" data-name="([^"]+)"/g)].map(([all, names = '', name = '']) => [
        all,
        { names, name },
      ]),
    );
    assert.ok(named.size > 30);
    for (const { names, name } of named.values()) {
      const place = await client.connection.sendRequest(placeOfName, { folder, names, name });
      assert.ok(place !== null, `${names} ${name}`);
      const line = readFileSync(new URL(place.uri), 'utf8').split('\n')[place.range.start.line] ?? '';
      const own = names === 'ports' ? /^ *[\w./-]+:/ : new RegExp(`\\b${name}:`);
      assert.match(line, own, `${names} ${name}`);
      const hover = await client.connection.sendRequest(hoverOfName, { folder, names, name });
      assert.match(hover ?? '', /^\*\*/, `${names} ${name}`);
    }
    assert.equal(await client.connection.sendRequest(hoverOfName, { folder, names: 'devices', name: 'gone' }), null);
    assert.equal(await client.connection.sendRequest(placeOfName, { folder, names: 'devices', name: 'gone' }), null);
  });

  it('is what differs from the last commit', async () => {
    const { connection } = client;
    const { title, html } = await connection.sendRequest(page, { folder, page: 'comparison' });
    assert.equal(title, 'Harrow Lane since the last commit');
    const { out } = await plumblineHere(['compare', site, '--against', 'HEAD', '--format', 'html']);
    assert.equal(asPrinted(html).replaceAll('the last commit', 'HEAD'), asPrinted(out));
    const text = readFileSync(file, 'utf8');
    await client.change(
      address,
      text.replace('gate-cam: {kind: camera', 'new-cam: {kind: camera}\n  gate-cam: {kind: camera'),
    );
    const later = await connection.sendRequest(page, { folder, page: 'comparison' });
    assert.match(later.html, /<h2>Work<\/h2>[\s\S]*new-cam, camera/);
    await client.change(address, text);
  });

  it('says so where there is no commit to compare with', async () => {
    const { html } = await client.connection.sendRequest(page, { folder: 'file:///tmp', page: 'comparison' });
    assert.match(html, /is in no repository of git|no \*\.site\.yaml/);
  });

  it('is a drawing that the command line draws, and that leads to what it shows', async () => {
    const { connection } = client;
    const offers = await connection.sendRequest(drawings, { folder });
    // The command line draws measured figures of an existing folder.
    const ofPlan = offers.filter(({ kind }) => OF_PLAN.some((own) => own.kind === kind));
    for (const { kind, subjects } of ofPlan) {
      const [subject = ''] = subjects;
      const { html } = await connection.sendRequest(page, { folder, page: 'drawing', drawing: { kind, subject } });
      const words = ['draw', kind, ...(subject === '' ? [] : [subject]), '--format', 'html', '--site', site];
      assert.equal(asPrinted(html), asPrinted((await plumblineHere(words)).out), kind);
    }
    assert.ok(ofPlan.length >= 4);
  });

  it('says what of a drawing a place in the text is about', async () => {
    const lines = readFileSync(file, 'utf8').split('\n');
    const at = async (text: RegExp, column: number): Promise<string[]> => {
      const line = lines.findIndex((one) => text.test(one));
      const position = { line, character: column };
      const things = await client.connection.sendRequest(thingsAt, { uri: address, position });
      return things.map(({ names, name }) => `${names} ${name}`);
    };
    assert.deepEqual(await at(/^ {2}gate-cam:/, 4), ['devices gate-cam', 'ports gate-cam/eth', 'ports core/1']);
    assert.deepEqual((await at(/^ {6}1-6:/, 7)).slice(0, 2), ['ports stable/1', 'ports stable/2']);
    assert.deepEqual((await at(/^ {2}core:/, 4)).at(0), 'devices core');
  });

  it('is refused where there is no such page', async () => {
    const wanted = { folder, page: 'toString' } as unknown as { folder: string; page: 'report' };
    await assert.rejects(client.connection.sendRequest(page, wanted), /There is no such page/);
  });
});
