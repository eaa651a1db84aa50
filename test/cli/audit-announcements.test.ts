import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import { encodeAnnouncement } from '../../server/src/standards/sap.ts';
import { captureFile, inFrame, ipPacket } from '../audit/announcements/captures.ts';
import { unavailable } from '../availability.ts';
import { planOfTexts, sampleTexts } from '../make/made.ts';
import { plumblineHere, program } from './run.ts';

const SITE = new URL('../../samples/harrow-lane', import.meta.url).pathname;

describe('plumbline audit announcements', function () {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-captures-'));
  const file = join(folder, 'a.pcapng');
  let capture: Uint8Array = new Uint8Array(0);

  before(function () {
    if (spawnSync('text2pcap', ['--version']).status !== 0)
      unavailable(this, 'text2pcap of Wireshark is not installed');
    const [first] = sdp.make(planOfTexts(sampleTexts('harrow-lane'))).files;
    const payload = encodeAnnouncement(false, 1, 0xc0a81405, first?.text ?? '');
    const frames = [0, 300, 600].map((time) => ({
      time: 1_772_366_400 + time,
      bytes: inFrame('ether', ipPacket({ time, payload })),
    }));
    capture = captureFile('ether', frames, 'pcapng');
    writeFileSync(file, capture);
  });

  after(() => rmSync(folder, { recursive: true, force: true }));

  it('exits with 1 and names the streams that are not announced', async () => {
    const { status, out } = await plumblineHere(['audit', 'announcements', file, '--site', SITE]);
    assert.equal(status, 1);
    assert.match(out, /viewing\.site\.yaml:\d+:3 warning yard-live was not announced in 10 min\./);
    assert.doesNotMatch(out, /warning gate-live/);
    assert.match(out, /\n3 packets of announcements of 1 session by 1 announcer in 10 min\.\n$/);
  });

  it('exits with 0 below --fail-on', async () =>
    assert.equal(
      (await plumblineHere(['audit', 'announcements', file, '--site', SITE, '--fail-on', 'error'])).status,
      0,
    ));

  it('reads standard input, and reports a capture that was broken off', () => {
    const { stdout, status } = spawnSync(process.execPath, [program, 'audit', 'announcements', '-', '--site', SITE], {
      input: capture.subarray(0, capture.length - 3),
      encoding: 'utf8',
    });
    assert.equal(status, 0, 'five minutes show nothing');
    assert.match(
      stdout,
      /^2 packets[^\n]*in 5 min\.\nThe capture was read as far as could be: it ends within a packet[^\n]*\.\nThe capture lasts 5 min, [^\n]* says nothing\.\n$/,
    );
  });

  for (const [what, path, message] of [
    ['no capture', join(SITE, 'site.site.yaml'), /it is no capture: neither pcap nor pcapng\.\n$/],
    ['no file', join(folder, 'none'), /cannot be read: it does not exist\.\n$/],
    ['a folder', folder, /cannot be read: it is a folder\.\n$/],
  ] as const) {
    it(`exits with 2 for ${what}`, async () => {
      const { status, err } = await plumblineHere(['audit', 'announcements', path, '--site', SITE]);
      assert.equal(status, 2);
      assert.match(err, message);
    });
  }
});

describe('plumbline announce', () => {
  for (const [what, words] of [
    ['no interface', ['announce', '.']],
    ['an interface that is no address', ['announce', '.', '--interface', 'eth0']],
    ['a TTL of 0', ['announce', '.', '--interface', '127.0.0.1', '--ttl', '0']],
    ['no bandwidth', ['announce', '.', '--interface', '127.0.0.1', '--bandwidth', '0']],
  ] as const) {
    it(`exits with 2 for ${what}`, async () => {
      const { status, err } = await plumblineHere(words);
      assert.equal(status, 2);
      assert.match(err, /--(interface|ttl|bandwidth)/);
    });
  }
});
