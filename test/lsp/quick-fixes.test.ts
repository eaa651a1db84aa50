// Quick fixes have distinct titles at one place, and a slip is offered to be fixed, not accepted.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { CodeActionRequest } from 'vscode-languageserver-protocol/node';
import { Client } from './client.ts';

const slips = new Set([
  ...['text', 'names'].flatMap((group) =>
    readdirSync(new URL(`../../server/src/rules/${group}/`, import.meta.url)).map((name) => name.replace('.ts', '')),
  ),
  'reason-missing',
]);
slips.delete('host-name-clash');

describe('quick fixes', () => {
  let client: Client;
  before(async () => {
    client = await Client.startHere();
  });
  after(() => client.stop());

  it('have a title each, and accept no slip', async () => {
    const folder = new URL('../../samples/first-draft/', import.meta.url);
    const texts = Object.fromEntries(
      readdirSync(folder)
        .filter((name) => name.endsWith('.site.yaml'))
        .map((name) => [new URL(name, folder).href, readFileSync(new URL(name, folder), 'utf8')]),
    );
    const wrong =
      'devices:\n  a: {kind: camra, speed: 6Mb/s}\nstreams:\n  s: {source: orchard, receivers: [orchard]}\n';
    texts[new URL('wrong/a.site.yaml', folder).href] = wrong;
    let accepted = 0;
    for (const [uri, text] of Object.entries(texts)) {
      await client.openUri(uri, text);
      for (const diagnostic of await client.diagnostics(uri)) {
        const found = await client.connection.sendRequest(CodeActionRequest.type, {
          textDocument: { uri },
          range: diagnostic.range,
          context: { diagnostics: [] },
        });
        const titles = (found ?? []).map(({ title }) => title);
        assert.deepEqual(titles, [...new Set(titles)]);
        for (const title of titles) {
          const rule = /^Accept (\S+) for .+ …$/.exec(title)?.[1];
          assert.equal(title.startsWith('Accept '), rule !== undefined, title);
          if (rule === undefined) continue;
          accepted++;
          assert.ok(!slips.has(rule), title);
        }
        if (diagnostic.code === 'unknown-name') assert.ok(titles.some((title) => title.startsWith('Declare device')));
      }
    }
    assert.ok(accepted > 5);
  });
});
