// Beside a general language server for YAML: the package yaml-language-server, with our schema, on the same text.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  CompletionRequest,
  type Diagnostic,
  DidChangeConfigurationNotification,
  HoverRequest,
  type Position,
} from 'vscode-languageserver-protocol/node';
import { ruleFiles } from '../../server/generate/rule-files.ts';
import { type Able, Client, positionOf } from './client.ts';

const YAML = [
  process.execPath,
  join(
    dirname(createRequire(import.meta.url).resolve('yaml-language-server/package.json')),
    'bin',
    'yaml-language-server',
  ),
  '--stdio',
];

/** The settings of its extension, with nothing fetched. */
const general = { validate: true, completion: true, hover: true, schemaStore: { enable: false } };
const withSchema = { ...general, schemas: { [pathToFileURL('schemas/site.schema.json').href]: '*.site.yaml' } };

/** Rules whose findings another extension reports by the schema or by the YAML itself. */
const shared = [
  'duplicate-key',
  'key-not-of-kind',
  'malformed-value',
  'missing-key',
  'out-of-range',
  'quantity',
  'repeated-value',
  'unknown-key',
  'value-not-allowed',
  'wrong-type',
  'yaml-syntax',
];
const examples = [
  ...(await ruleFiles())
    .filter(({ id }) => shared.includes(id))
    .flatMap(({ id, examples: own }) => own.map(({ bad }) => ({ id, bad }))),
  { id: 'unknown-key', bad: 'devices:\n  gate-cam: {kind: camera, adress}\n' },
];

const lineOf = ({ range }: Diagnostic): number => range.start.line;
/** Two findings at the same words report one thing twice. */
const isDouble = (a: Diagnostic, b: Diagnostic): boolean =>
  lineOf(a) === lineOf(b) && a.range.start.character === b.range.start.character;

describe('beside a general language server for YAML', function () {
  let folder: string;
  let yaml: Client;
  let on: Client;
  let off: Client;
  let files = 0;

  const startYaml = async (settings: unknown): Promise<Client> => {
    const able: Able = { capabilities: { workspace: { configuration: true } }, settings };
    const client = await Client.start(YAML, able);
    await client.connection.sendNotification(DidChangeConfigurationNotification.type, { settings: {} });
    return client;
  };

  before(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-beside-'));
    yaml = await startYaml(withSchema);
    on = await Client.startHere({ initializationOptions: { schemaFeatures: 'on' } });
    off = await Client.startHere({ initializationOptions: { schemaFeatures: 'off' } });
  });
  after(async () => {
    await Promise.all([yaml, on, off].map((client) => client?.stop()));
    rmSync(folder, { recursive: true });
  });

  /** The findings of both for a text that is a site of its own. */
  async function told(text: string): Promise<{ yaml: Diagnostic[]; on: Diagnostic[]; off: Diagnostic[] }> {
    const path = join(folder, String(files++), 'a.site.yaml');
    const of = async (client: Client): Promise<Diagnostic[]> => client.diagnostics(await client.open(path, text));
    return { yaml: await of(yaml), on: await of(on), off: await of(off) };
  }

  for (const [index, { id, bad }] of examples.entries()) {
    const number = examples.slice(0, index + 1).filter((other) => other.id === id).length;
    it(`tells once of ${id}, example ${number}`, async () => {
      const found = await told(bad);
      const own = found.on.filter(({ code }) => code === id);
      assert.ok(own.length > 0);
      for (const problem of own) {
        const byUs = found.off.filter(({ code, range }) => code === id && range.start.line === lineOf(problem));
        const byOther = found.yaml.filter(
          ({ range }) => range.start.line <= lineOf(problem) && lineOf(problem) <= range.end.line,
        );
        assert.ok(
          byUs.length > 0 !== byOther.length > 0,
          `line ${lineOf(problem)}: ${JSON.stringify({ byUs, byOther })}`,
        );
      }
      const doubled = found.off.filter((problem) => found.yaml.some((other) => isDouble(problem, other)));
      assert.deepEqual(doubled, []);
      // Findings that need the whole site stay.
      const whole = (problem: Diagnostic): boolean => !shared.includes(String(problem.code));
      assert.deepEqual(found.off.filter(whole), found.on.filter(whole));
    });
  }

  it('completes keys and listed words once, and names of the site still', async () => {
    const text =
      'devices:\n  gate-cam: {kind: camera, address: 192.168.20.31}\n  yard-cam:\n    kind: camera\n    \n' +
      'streams:\n  gate:\n    source: \n';
    const path = join(folder, 'completion', 'a.site.yaml');
    const labels = async (client: Client, position: Position): Promise<string[]> => {
      const uri = await client.open(path, text);
      await client.diagnostics(uri);
      const answer = await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position });
      await client.close(uri);
      return (Array.isArray(answer) ? answer : (answer?.items ?? [])).map(({ label }) => label);
    };
    const key = { line: 4, character: 4 };
    const theirs = await labels(yaml, key);
    assert.ok(theirs.includes('address') && theirs.includes('speed'), theirs.join(' '));
    assert.ok((await labels(on, key)).includes('speed'));
    assert.deepEqual(
      (await labels(off, key)).filter((label) => theirs.includes(label)),
      [],
    );
    const name = { line: 7, character: 12 };
    assert.ok((await labels(off, name)).includes('gate-cam'));
    assert.ok(!(await labels(yaml, name)).includes('gate-cam'));
  });

  it('describes keys once on hover, and gives figures, units and defaults still', async () => {
    const path = join(folder, 'hover', 'a.site.yaml');
    const text = `streams:
  gate:
    source: gate-cam
    transport: rtp
    group: 239.192.20.31
    ttl: 1
    video: {codec: h264, bitrate: 6 Mb/s}
    receivers: [recorder]
`;
    const at = async (client: Client, word: string): Promise<string> => {
      const uri = await client.open(path, text);
      await client.diagnostics(uri);
      const hover = await client.hover(uri, positionOf(text, word));
      await client.close(uri);
      return hover ?? '';
    };
    for (const [word, described, left] of [
      ['str|eams', 'on its way from one device to others', /^$/],
      ['sou|rce', 'The device that sends it', /^$/],
      ['transport: rt|p', 'RTP over UDP, video and audio in packets of their own', /^$/],
      ['tt|l', 'How far multicast goes', /^Without it: `1`$/],
      ['bit|rate', 'The rate of the encoded video on average', /^Units: `Mb\/s`, /],
      ['6| Mb', 'The rate of the encoded video on average', /750 kB\/s/],
      ['rece|ivers', 'The devices that take it', /^\*\*gate /m],
      ['239|.192', 'The multicast address that it is sent to', /01:00:5e:40:14:1f/],
    ] as const) {
      const [theirs, alone, beside] = [await at(yaml, word), await at(on, word), await at(off, word)];
      assert.ok(theirs.includes(described) && alone.includes(described), `${word}: ${theirs} / ${alone}`);
      assert.ok(!beside.includes(described), `${word}: ${beside}`);
      assert.match(beside, left, `${word}: ${beside}`);
    }
  });

  it('serves the samples by itself, by the line at their head', async () => {
    const alone = await startYaml(general);
    try {
      const path = resolve('samples/first-draft/streams.site.yaml');
      const text = readFileSync(path, 'utf8');
      const uri = await alone.open(path, text);
      const found = await alone.diagnostics(uri, ({ length }) => length > 0);
      assert.deepEqual(
        found
          .map(({ range: { start, end } }) => text.split('\n')[start.line]?.slice(start.character, end.character))
          .sort(),
        ['6 MB/s', 'framerate'],
      );
      const hover = await alone.connection.sendRequest(HoverRequest.type, {
        textDocument: { uri },
        position: positionOf(text, 'key|frame-interval'),
      });
      assert.match(JSON.stringify(hover), /keyframe/);
    } finally {
      await alone.stop();
    }
  });
});
