/**
 * The announcer by a clock that the test moves, without sockets. What is expected is written from RFC 2974 (§3.1
 * interval, §4 deletion, §5 modification, §6 packet) and RFC 8866 §5.2 (version), read; no code of the encoder is used.
 */

import assert from 'node:assert/strict';
import { Announcer } from '../../server/src/announce/announcer.ts';
import type { AnnouncerTools } from '../../server/src/announce/tools.ts';

const INTERFACE = '192.168.20.5';
/** 239.255.255.255: the highest address of the scope of 239.255.0.0/16 (§3). */
const LOCAL_GROUP = 0xefffffff;
/** 2026-01-01T00:00Z. */
const MODIFIED = Date.UTC(2026, 0, 1);

interface Sent {
  readonly at: number;
  readonly group: number;
  readonly packet: Uint8Array;
}

/** A network without sockets, and a clock that stands still until it is moved. */
class Bench implements AnnouncerTools {
  readonly sent: Sent[] = [];
  chance = 0.5;
  open = 0;
  private time = 0;
  private timers: { readonly at: number; readonly run: () => void }[] = [];
  private receive: (packet: Uint8Array) => void = () => undefined;

  join(group: number, receive: (packet: Uint8Array) => void): ReturnType<AnnouncerTools['join']> {
    this.receive = receive;
    this.open += 1;
    const send = (packet: Uint8Array): Promise<void> => {
      this.sent.push({ at: this.time, group, packet });
      receive(packet);
      return Promise.resolve();
    };
    return Promise.resolve({ send, close: () => (this.open -= 1) });
  }
  now(): number {
    return this.time;
  }
  random(): number {
    return this.chance;
  }
  after(milliseconds: number, run: () => void): () => void {
    // Node's documentation, Timers: longer than 2147483647 ms is set to 1 ms.
    const timer = { at: this.time + (milliseconds > 2_147_483_647 ? 1 : milliseconds), run };
    this.timers.push(timer);
    return () => (this.timers = this.timers.filter((one) => one !== timer));
  }

  hear(packet: Uint8Array): void {
    this.receive(packet);
  }

  /** Lets so many seconds pass, and runs what is due. */
  pass(seconds: number): void {
    const until = this.time + 1000 * seconds;
    for (let timers = 0; ; timers += 1) {
      assert.ok(timers < 10_000, 'timers go off all the time');
      const next = this.timers.sort((a, b) => a.at - b.at)[0];
      if (next === undefined || next.at > until) break;
      this.timers = this.timers.filter((one) => one !== next);
      this.time = next.at;
      next.run();
    }
    this.time = until;
  }
}

function description(name: string, id = 1, port = 5004): string {
  return [
    'v=0',
    `o=- ${id} 1 IN IP4 ${INTERFACE}`,
    `s=${name}`,
    `c=IN IP4 239.255.7.${id}/1`,
    't=0 0',
    `m=video ${port} RTP/AVP 96`,
    'a=rtpmap:96 H264/90000',
    '',
  ].join('\r\n');
}

const file = (
  name: string,
  text = description(name),
  modified = MODIFIED,
): Parameters<Announcer['take']>[0][number] => ({
  path: `${name}.sdp`,
  text,
  modified,
});

/** The fields of a packet at their places (§6): V, T, hash, and what follows the type. */
function read(packet: Uint8Array): { version: number; deletion: boolean; hash: number; source: string; text: string } {
  const bytes = Buffer.from(packet);
  return {
    version: bytes.readUInt8(0) >> 5,
    deletion: (bytes.readUInt8(0) & 0b100) !== 0,
    hash: bytes.readUInt16BE(2),
    source: [...bytes.subarray(4, 8)].join('.'),
    text: bytes.toString('utf8', bytes.indexOf(0, 8) + 1),
  };
}

/** An announcement by somebody else, put together by hand. */
function foreign(hash: number): Uint8Array {
  return Buffer.concat([
    Buffer.from([0x20, 0, hash >> 8, hash & 0xff, 192, 168, 20, 9]),
    Buffer.from(`application/sdp\0${description('other')}`),
  ]);
}

describe('the announcer', () => {
  let bench: Bench;
  let reported: string[];
  const announcer = (bandwidth = 4000, leastInterval = 300): Announcer =>
    new Announcer(
      { interface: INTERFACE, pace: { bandwidth, leastInterval }, report: (line) => reported.push(line) },
      bench,
    );
  beforeEach(() => {
    bench = new Bench();
    reported = [];
  });

  it('sends a new session at once, on the group of its scope', async () => {
    await announcer().take([file('gate')]);
    bench.pass(0);
    assert.equal(bench.sent.length, 1);
    const [{ group, packet } = { group: 0, packet: new Uint8Array() }] = bench.sent;
    assert.equal(group, LOCAL_GROUP);
    const { version, deletion, hash, source, text } = read(packet);
    assert.deepEqual({ version, deletion, source }, { version: 1, deletion: false, source: INTERFACE });
    assert.notEqual(hash, 0);
    assert.match(text, /^v=0\r\no=- 1 \d+ IN IP4 192\.168\.20\.5\r\ns=gate\r\n/);
  });

  it('repeats it after the interval, a third less or more by chance', async () => {
    for (const [chance, seconds] of [
      [0, 200],
      [0.5, 300],
      [1, 400],
    ] as const) {
      bench = new Bench();
      bench.chance = chance;
      await announcer().take([file('gate')]);
      bench.pass(0);
      bench.pass(seconds - 0.001);
      assert.equal(bench.sent.length, 1, `${seconds} s are not over yet`);
      bench.pass(0.002);
      assert.equal(bench.sent.length, 2);
    }
  });

  it('waits longer where the announcements of all would take more than the bandwidth', async () => {
    await announcer().take([file('gate')]);
    bench.pass(0);
    const size = bench.sent[0]?.packet.length ?? 0;
    for (let hash = 1; hash <= 999; hash++) bench.hear(foreign(hash));
    bench.pass(10_000);
    const [first = 0, second = 0, third = 0] = bench.sent.map(({ at }) => at);
    // interval = max(300, 8 · no_of_ads · ad_size / limit), §3.1: of 1000 sessions now, no longer of one.
    const interval = (1000 * (8 * 1000 * size)) / 4000;
    assert.ok(interval > 300_000);
    assert.ok(Math.abs(second - first - interval) < 1, `${second - first} ms`);
    assert.ok(Math.abs(third - second - interval) < 1);
  });

  it('keeps to an interval that is longer than a timer of Node', async () => {
    const days = 40 * 86_400;
    await announcer(4000, days).take([file('gate')]);
    bench.pass(0);
    bench.pass(days - 1);
    assert.equal(bench.sent.length, 1);
    bench.pass(2);
    assert.equal(bench.sent.length, 2);
  });

  it('does not count its own packets as those of somebody else', async () => {
    await announcer(1).take([file('gate')]);
    bench.pass(0);
    // At 1 bit/s the interval is 8 s a byte; were its own packet counted, it would be twice that.
    const size = bench.sent[0]?.packet.length ?? 0;
    bench.pass(8 * size - 1);
    assert.equal(bench.sent.length, 1);
    bench.pass(2);
    assert.equal(bench.sent.length, 2);
  });

  it('spreads the first announcements over the bandwidth', async () => {
    await announcer(8000).take([file('gate'), file('yard', description('yard', 2))]);
    bench.pass(10);
    const [first, second] = bench.sent;
    // At 8000 bit/s a byte takes a millisecond.
    assert.equal((second?.at ?? 0) - (first?.at ?? 0), first?.packet.length);
  });

  it('announces a changed file under another hash and a higher version, and does not withdraw it', async () => {
    const one = announcer();
    await one.take([file('gate')]);
    bench.pass(1);
    await one.take([file('gate', description('gate', 1, 5006))]);
    bench.pass(1);
    const [before, after] = bench.sent.map(({ packet }) => read(packet));
    assert.equal(bench.sent.length, 2);
    assert.equal(after?.deletion, false);
    assert.notEqual(after?.hash, before?.hash);
    const version = (text = ''): number => Number(/^o=- 1 (\d+) /m.exec(text)?.[1]);
    assert.ok(version(after?.text) > version(before?.text), 'the file bears the same time, but the version grows');
    // Seconds since 1900, which are 2208988800 more than since 1970 (RFC 8866 §5.2, RFC 5905).
    assert.equal(version(before?.text), MODIFIED / 1000 + 2_208_988_800);
    bench.pass(301);
    assert.equal(bench.sent.length, 3, 'only the new one is repeated');
  });

  it('withdraws what is gone with its o= line alone, by the hash that it was announced with', async () => {
    const one = announcer();
    await one.take([file('gate')]);
    bench.pass(1);
    await one.take([]);
    const [announced, withdrawn] = bench.sent.map(({ packet }) => read(packet));
    assert.equal(withdrawn?.deletion, true);
    assert.equal(withdrawn.hash, announced?.hash);
    assert.match(withdrawn.text, /^o=[^\r\n]*\r\n$/);
    assert.ok(announced?.text.includes(withdrawn.text));
    bench.pass(1000);
    assert.equal(bench.sent.length, 2, 'and never again');
  });

  it('withdraws nothing that nobody has heard of', async () => {
    const one = announcer();
    await one.take([file('gate')]);
    await one.stop();
    bench.pass(1000);
    assert.deepEqual(bench.sent, []);
    assert.equal(bench.open, 0);
  });

  it('keeps what was announced where a file becomes unreadable, and reports it once', async () => {
    const one = announcer();
    await one.take([file('gate')]);
    bench.pass(1);
    for (let look = 0; look < 3; look++) await one.take([file('gate', 'nonsense')]);
    bench.pass(301);
    assert.equal(bench.sent.length, 2);
    assert.equal(reported.filter((line) => line.endsWith('announced as it was before')).length, 1);
  });

  it('announces the same session in two files only once', async () => {
    const one = announcer();
    await one.take([file('gate'), file('copy', description('gate'))]);
    bench.pass(1);
    assert.equal(bench.sent.length, 1);
    assert.match(reported[0] ?? '', /^copy\.sdp: it is the same session as gate\.sdp; not announced$/);
  });

  it('says what it announces as it sends it: stopped after that, it withdraws it', async () => {
    const one = announcer();
    await one.take([file('gate')]);
    assert.deepEqual(reported, []);
    bench.pass(1);
    assert.match(reported.join('\n'), /^gate: announced on /);
    await one.stop();
    assert.equal(reported.at(-1), 'gate: withdrawn');
  });
});
