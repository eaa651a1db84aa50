// Audits in an editor: differences show at the text that planned them, beside the findings of rules.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  CancellationTokenSource,
  type Diagnostic,
  LSPErrorCodes,
  WorkDoneProgress,
} from 'vscode-languageserver-protocol/node';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import type { AuditKind } from '../../server/src/audit/audited.ts';
import { type AuditAnswer, AUDITS, type AuditWanted, audit, clearAudits } from '../../server/src/lsp/audit-request.ts';
import { drawings, page } from '../../server/src/lsp/page-request.ts';
import { encodeAnnouncement } from '../../server/src/standards/sap.ts';
import { ipPacket } from '../audit/announcements/captures.ts';
import { asLinux, asPlanned, harrowLane } from '../audit/counters/counted.ts';
import { recorded } from '../audit/recordings/folder.ts';
import { needs, unavailable } from '../availability.ts';
import { plumblineHere } from '../cli/run.ts';
import { planOfTexts, sampleTexts } from '../make/made.ts';
import { Client, applied, positionOf } from './client.ts';

/** The output of ffprobe 5.1, without values that are not read. */
const probed = (video: object, filename = 'rtsp://192.168.20.31:554/'): string =>
  JSON.stringify({ streams: [{ index: 0, codec_type: 'video', codec_name: 'h264', ...video }], format: { filename } });

const AS_DECLARED = { width: 2560, height: 1440, avg_frame_rate: '20/1', bit_rate: '6100000' };

/** A capture in the classic format of pcap (libpcap's pcap-savefile(5)) of raw IP. */
function pcap(frames: readonly { readonly time: number; readonly bytes: Uint8Array }[]): Buffer {
  const words = (...values: readonly number[]): Buffer => Buffer.from(Uint32Array.from(values).buffer);
  const head = [words(0xa1b2c3d4, 0x0004_0002, 0, 0, 65_535, 101)];
  return Buffer.concat([
    ...head,
    ...frames.flatMap(({ time, bytes }) => [words(time, 0, bytes.length, bytes.length), Buffer.from(bytes)]),
  ]);
}

describe('an audit in an editor', function () {
  let parent: string;
  let site: string;
  let folder: string;
  let client: Client;
  const texts = new Map<string, string>();

  beforeEach(async () => {
    parent = mkdtempSync(join(tmpdir(), 'plumbline-audit-'));
    site = join(parent, 'harrow-lane');
    folder = pathToFileURL(site).href;
    cpSync('samples/harrow-lane', site, { recursive: true });
    client = await Client.startHere();
    for (const name of ['cameras', 'recording', 'viewing', 'network']) {
      const path = join(site, `${name}.site.yaml`);
      const text = readFileSync(path, 'utf8');
      texts.set(await client.open(path, text), text);
    }
  });
  afterEach(async () => {
    await client.stop();
    rmSync(parent, { recursive: true });
    texts.clear();
  });

  const uriOf = (name: string): string => `${folder}/${name}.site.yaml`;
  const isAudit = ({ source }: Diagnostic): boolean => source === 'plumbline audit';

  function put(name: string, content: string | Uint8Array): string {
    const path = join(parent, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return path;
  }

  const ask = (kind: AuditKind, path: string, saying: Partial<AuditWanted> = {}): Promise<AuditAnswer> =>
    client.connection.sendRequest(audit, { folder, kind, uri: pathToFileURL(path).href, ...saying });

  async function done(asked: Promise<AuditAnswer>): Promise<Extract<AuditAnswer, { readonly found: unknown }>> {
    const answer = await asked;
    assert.ok('found' in answer, JSON.stringify(answer));
    return answer;
  }

  /** The findings of audits in a file, once there are some that satisfy `enough`. */
  const told = async (name: string, enough: (found: readonly Diagnostic[]) => boolean): Promise<Diagnostic[]> =>
    (await client.diagnostics(uriOf(name), (all) => enough(all.filter(isAudit)))).filter(isAudit);
  const some = (found: readonly Diagnostic[]): boolean => found.length > 0;
  const none = (found: readonly Diagnostic[]): boolean => found.length === 0;

  const textOf = (name: string): string => texts.get(uriOf(name)) ?? assert.fail(`${name} is not open`);

  async function change(name: string, text: string): Promise<void> {
    texts.set(uriOf(name), text);
    await client.change(uriOf(name), text);
  }

  const words = (name: string, { range: { start, end } }: Diagnostic): string =>
    textOf(name).split('\n')[start.line]?.slice(start.character, end.character) ?? '';

  it('is what the server says that it can', () =>
    assert.deepEqual(client.initialized?.capabilities.experimental, { [AUDITS]: true }));

  it('of a probe that agrees shows nothing, and says what it looked at', async () => {
    const { found, summary } = await done(ask('probe', put('gate.json', probed(AS_DECLARED))));
    assert.deepEqual(found, []);
    assert.deepEqual(summary, ['gate: video h264, 2560x1440, 20 pictures/s, 6.1 Mb/s.']);
  });

  it('shows what differs with its file and time, mends it, and does not bring it back', async () => {
    const path = put('gate.json', probed({ ...AS_DECLARED, width: 1920, height: 1080, avg_frame_rate: '10/1' }));
    const { found } = await done(ask('probe', path));
    const both = await told('cameras', some);
    assert.deepEqual(both.map(({ code }) => code).sort(), ['frame-rate-differs', 'size-differs']);
    assert.deepEqual(
      found,
      both.map(({ range }) => ({ uri: uriOf('cameras'), range })),
    );
    const differs = both.find(({ code }) => code === 'size-differs') ?? assert.fail();
    assert.match(differs.codeDescription?.href ?? '', /\/schemas\/rules\/size-differs\.md$/);
    assert.match(
      String(differs.message),
      /^gate has pictures of 1920x1080, not 2560x1440\. .* \(gate\.json, read \d{4}-\d\d-\d\d \d\d:\d\d\)$/,
    );
    assert.equal(words('cameras', differs), '2560x1440');
    // The same as from the command line.
    const place = `cameras.site.yaml:${differs.range.start.line + 1}:${differs.range.start.character + 1} `;
    assert.ok((await plumblineHere(['audit', 'probe', path, '--site', site])).out.includes(place));

    const [fix] = await client.codeActions(uriOf('cameras'), differs);
    assert.equal(fix?.title, 'Declare 1920x1080 as size of gate');
    await change('cameras', applied(textOf('cameras'), fix?.edit?.changes?.[uriOf('cameras')] ?? []));
    // Both are about the edited text, which is audited again.
    await told('cameras', none);
    const [left, ...more] = await told('cameras', some);
    assert.deepEqual([left?.code, more], ['frame-rate-differs', []]);
  });

  it('is forgotten when its site is closed that is in no workspace', async () => {
    const path = put('gate.json', probed({ ...AS_DECLARED, width: 1920, height: 1080 }));
    await done(ask('probe', path));
    await told('cameras', some);
    const asked = ask('probe', path);
    await Promise.all([...texts.keys()].map((uri) => client.close(uri)));
    await asked;
    await told('cameras', none);
    for (const name of ['cameras', 'recording']) await client.open(join(site, `${name}.site.yaml`), textOf(name));
    // It would be back by the time that another audit is, of which the words were edited.
    const counters = asLinux(harrowLane(), () => 0, { devices: ['recorder'] }).replaceAll('"device":"recorder",', '');
    await done(ask('counters', put('counters.jsonl', counters), { of: 'recorder' }));
    const [found] = await told('recording', some);
    const lines = textOf('recording').split('\n');
    const noted = lines.map((text, line) => (line === found?.range.start.line ? `${text} # noted` : text));
    await change('recording', noted.join('\n'));
    const count = (all: readonly Diagnostic[]): number => all.filter(({ code }) => code === found?.code).length;
    const before = count(await told('recording', () => true));
    await told('recording', (all) => count(all) > before);
    assert.deepEqual(await told('cameras', () => true), []);
  });

  it('moves with its words, and comes back with them', async () => {
    await done(ask('probe', put('gate.json', probed({ ...AS_DECLARED, width: 1920, height: 1080 }))));
    const isOfSize = ({ message }: Diagnostic): boolean => String(message).includes('1920x1080');
    const [before] = await told('cameras', (found) => found.some(isOfSize));
    await change('cameras', `# a line\n\n${textOf('cameras')}`);
    const [after] = await told('cameras', some);
    assert.equal(after?.range.start.line, (before?.range.start.line ?? 0) + 2);
    assert.equal(after === undefined ? '' : words('cameras', after), '2560x1440');

    // The stream is half typed, and then as it was; in another item nothing is lost meanwhile.
    const whole = textOf('cameras');
    const { line } = positionOf(whole, '2560x1440');
    await change(
      'cameras',
      whole
        .split('\n')
        .filter((_, index) => index !== line)
        .join('\n'),
    );
    await told('cameras', (found) => !found.some(isOfSize));
    await change('cameras', whole);
    await told('cameras', (found) => found.some(isOfSize));
  });

  it('is gone with what it was of, and when it is cleared', async () => {
    const path = put('gate.json', probed({ ...AS_DECLARED, width: 1920, height: 1080 }));
    await done(ask('probe', path));
    await told('cameras', some);
    await change('cameras', textOf('cameras').replace(/^( {2})gate:/m, '$1lane:'));
    await told('cameras', (found) => found.every(({ message }) => !String(message).startsWith('gate ')));
    await change('cameras', textOf('cameras').replace(/^( {2})lane:/m, '$1gate:'));
    await told('cameras', some);
    await client.connection.sendRequest(clearAudits, { folder });
    await told('cameras', none);
  });

  it('takes the place of an earlier one of its kind, and of no other', async () => {
    await done(ask('probe', put('gate.json', probed({ ...AS_DECLARED, width: 1920, height: 1080 }))));
    await done(
      ask(
        'counters',
        put(
          'silence.jsonl',
          asLinux(harrowLane(), () => 0, { devices: ['recorder'] }),
        ),
      ),
    );
    await told('recording', some);
    await told('cameras', some);
    await done(ask('probe', put('better.json', probed(AS_DECLARED))));
    await told('cameras', none);
    await told('recording', some);
  });

  /** All text in a drawing of a site. */
  const draws = async (kind: string, subject: string, of = folder): Promise<string[]> => {
    const wanted = { folder: of, page: 'drawing', drawing: { kind, subject } } as const;
    return wordsOf((await client.connection.sendRequest(page, wanted)).html);
  };
  const wordsOf = (text: string): string[] =>
    [...text.matchAll(/<(?:desc|text)\b[^>]*>(.*?)<\/(?:desc|text)>/g)].map(([, words = '']) => words);

  it('of counters is as the command line has it, once it is said whose they are', async () => {
    const plan = harrowLane();
    const text = asLinux(plan, () => 0, { devices: ['recorder'] }).replaceAll('"device":"recorder",', '');
    const path = put('counters.jsonl', text);
    const unsaid = await ask('counters', path);
    assert.ok('cannot' in unsaid && unsaid.choices?.includes('recorder'), JSON.stringify(unsaid));
    const { summary } = await done(ask('counters', path, { of: 'recorder' }));
    const { out } = await plumblineHere(['audit', 'counters', path, '--device', 'recorder', '--site', site]);
    assert.ok(out.endsWith(`${summary.join('\n')}\n`));
    const drawn = ['draw', 'port', 'recorder/cams', '--counters', path, '--device', 'recorder', '--site', site];
    assert.deepEqual(await draws('port', 'recorder/cams'), wordsOf((await plumblineHere(drawn)).out));
    const found = await told('recording', some);
    for (const { range, code } of found) {
      const place = `recording\\.site\\.yaml:${range.start.line + 1}:${range.start.character + 1} `;
      assert.match(out, new RegExp(`${place}.*\\[${String(code)}\\]`));
    }
    const good = put('good.jsonl', asLinux(plan, asPlanned(plan), { devices: ['recorder'] }));
    assert.deepEqual((await done(ask('counters', good))).found, []);
    await told('recording', none);
  });

  it('of announcements names the streams that are not announced', async () => {
    const [first] = sdp.make(planOfTexts(sampleTexts('harrow-lane'))).files;
    const payload = encodeAnnouncement(false, 1, 0xc0a81405, first?.text ?? '');
    const frames = [0, 300, 600].map((after) => {
      const time = 1_772_366_400 + after;
      return { time, bytes: ipPacket({ time, payload }) };
    });
    const { summary } = await done(ask('announcements', put('sap.pcap', pcap(frames))));
    assert.match(summary[0] ?? '', /^3 packets of announcements of 1 session/);
    const found = await told('viewing', some);
    assert.ok(found.every(({ code }) => code === 'stream-not-announced'));
    assert.ok(found.some(({ message }) => String(message).startsWith('yard-live was not announced in 10 min.')));
    assert.ok(!found.some(({ message }) => String(message).startsWith('gate-live')));
  });

  it('of a folder of recordings finds what is missing, and follows edits without reading it again', async () => {
    const start = Date.parse('2026-06-01T00:00:00Z');
    const small = join(parent, 'small');
    mkdirSync(small);
    const text = `site: {name: Harrow Lane, timezone: Europe/London}
devices:
  gate-cam: {kind: camera}
  recorder: {kind: server}
streams:
  gate:
    source: gate-cam
    transport: rtsp
    video: {codec: h264, bitrate: 1 kb/s, keyframe-interval: 2 s}
    receivers: [recorder]
volumes:
  archive: {host: recorder, path: /srv/archive}
  spare: {host: recorder}
recordings:
  gate: {stream: gate, volume: archive, segment: 60 s, file: "gate/%Y-%m-%d_%H-%M-%S.mp4"}
  yard: {stream: gate, volume: spare, segment: 60 s, file: "yard/%Y-%m-%d_%H-%M-%S.mp4"}
`;
    const uri = await client.open(put('small/a.site.yaml', text), text);
    await client.diagnostics(uri);
    const files = recorded(start, 20, { pattern: 'gate/%Y-%m-%d_%H-%M-%S.mp4' }).filter((_, index) => index !== 7);
    for (const { path } of files) put(`copy/${path}`, Buffer.alloc(7500));
    const copy = join(parent, 'copy');
    const wanted = { folder: pathToFileURL(small).href, isCopy: true };
    const unsaid = await ask('recordings', copy, wanted);
    assert.deepEqual('cannot' in unsaid && unsaid.choices, ['archive', 'spare']);
    assert.deepEqual(await draws('recording', 'gate', wanted.folder), []);
    await done(ask('recordings', copy, { ...wanted, of: 'archive' }));
    // The readings can be drawn; another volume has none.
    const offers = await client.connection.sendRequest(drawings, { folder: wanted.folder });
    const measured = new Map(offers.map((offer) => [offer.kind, offer.measured]));
    assert.deepEqual(measured.get('recording'), { by: 'recordings', needed: true, read: ['gate'] });
    assert.deepEqual(measured.get('volume'), { by: 'recordings', needed: false, read: ['archive'] });
    assert.deepEqual(measured.get('port'), { by: 'counters', needed: true, read: [] });
    assert.deepEqual(await draws('recording', 'yard', wanted.folder), []);
    for (const [kind, subject] of [
      ['recording', 'gate'],
      ['volume', 'archive'],
    ] as const) {
      const drawn = ['draw', kind, subject, '--folder', copy, '--now', 'newest', '--site', small];
      const { out, err } = await plumblineHere(drawn);
      assert.deepEqual(await draws(kind, subject, wanted.folder), wordsOf(out), err);
    }
    const gap = (found: readonly Diagnostic[]): boolean => found.some(({ code }) => code === 'recording-gap');
    await client.diagnostics(uri, gap);
    rmSync(copy, { recursive: true });
    await client.change(uri, text.replace('segment: 60 s, file: "gate', 'segment: 120 s, file: "gate'));
    await client.diagnostics(uri, (found) => !gap(found));
    await client.change(uri, text);
    await client.diagnostics(uri, gap);
  });

  for (const [title, kind, content, why] of [
    ['no JSON', 'probe', 'frames', /what\.txt: it is not whole JSON/],
    ['no capture', 'announcements', 'frames', /what\.txt: it is no capture/],
    ['nothing', 'counters', '', /what\.txt: there are no counters in it/],
    ['a file that is no folder', 'recordings', '', /is no folder on this machine/],
  ] as const) {
    it(`says what is wrong with ${title}`, async () => {
      const of = kind === 'recordings' ? { of: 'archive' } : {};
      const answer = await ask(kind, put('what.txt', content), of);
      assert.ok('cannot' in answer);
      assert.match(answer.cannot, why);
    });
  }

  describe('of what does not end', () => {
    it('says so at once: a pipe, a device, a link to one, a terabyte', async function () {
      needs(this, 'mkfifo', 'coreutils');
      if (!existsSync('/dev/zero')) unavailable(this, 'there is no /dev/zero');
      const [pipe, link, sparse] = ['pipe', 'link', 'sparse'].map((name) => join(parent, name));
      assert.ok(pipe !== undefined && link !== undefined && sparse !== undefined);
      execFileSync('mkfifo', [pipe]);
      symlinkSync('/dev/zero', link);
      writeFileSync(sparse, pcap([]));
      truncateSync(sparse, 2 ** 40);
      for (const kind of ['counters', 'announcements', 'probe'] as const)
        for (const path of [pipe, '/dev/zero', link, sparse]) {
          const answer = await ask(kind, path);
          assert.match('cannot' in answer ? answer.cannot : '', /it is no ordinary file|it has more than/);
        }
    });

    it('tells how far it is, answers others meanwhile, and ends when it is cancelled', async () => {
      const large = put('large.pcap', pcap([]));
      truncateSync(large, 900_000_000);
      const reported: string[] = [];
      const asking = new CancellationTokenSource();
      const half = new Promise<void>((resolve) => {
        client.connection.onProgress(WorkDoneProgress.type, 'large', (work) => {
          if (work.kind !== 'report') return;
          reported.push(work.message ?? '');
          resolve();
        });
      });
      const wanted = { folder, kind: 'announcements', uri: pathToFileURL(large).href, workDoneToken: 'large' } as const;
      const asked = client.connection.sendRequest(audit, wanted, asking.token);
      const ended = assert.rejects(asked, { code: LSPErrorCodes.RequestCancelled });
      await half;
      // Another edit and a hover in between.
      await change('cameras', `# a line\n${textOf('cameras')}`);
      await client.diagnostics(uriOf('cameras'));
      assert.ok(await client.hover(uriOf('cameras'), positionOf(textOf('cameras'), '2560x1440')));
      asking.cancel();
      await ended;
      assert.match(reported[0] ?? '', /^[\d.]+ [kM]B of 900 MB$/);
    });

    it('of a folder with many files ends when it is cancelled too', async () => {
      const many = join(parent, 'many');
      mkdirSync(many);
      for (let i = 0; i < 20_000; i++) writeFileSync(join(many, `${i}.mp4`), '');
      const asking = new CancellationTokenSource();
      const wanted = { folder, kind: 'recordings', uri: pathToFileURL(many).href, of: 'archive' } as const;
      const asked = client.connection.sendRequest(audit, { ...wanted, workDoneToken: 'many' }, asking.token);
      const ended = assert.rejects(asked, { code: LSPErrorCodes.RequestCancelled });
      await new Promise<void>((resolve) => {
        client.connection.onProgress(WorkDoneProgress.type, 'many', ({ kind }) => {
          if (kind === 'begin') resolve();
        });
      });
      asking.cancel();
      await ended;
    });
  });

  it('reads no address that is of no file here, and no kind that there is not', async () => {
    const web = await ask('probe', '/', { uri: 'https://example.org/gate.json' });
    assert.match('cannot' in web ? web.cannot : '', /Only files on the machine/);
    const odd = await ask('__proto__' as AuditKind, put('gate.json', probed({})));
    assert.match('cannot' in odd ? odd.cannot : '', /no audit of that kind/);
  });
});
