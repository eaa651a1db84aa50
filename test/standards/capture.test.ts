import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import type { CapturedFrame } from '../../server/src/standards/capture-format.ts';
import { CaptureReader } from '../../server/src/standards/capture.ts';
import { datagramIn } from '../../server/src/standards/datagram.ts';
import { unavailable } from '../availability.ts';
import { FRAMES, WIRESHARK, captureFile, inFrame, ipPacket, withTool } from '../audit/announcements/captures.ts';

const PAYLOADS = ['first', 'second', 'third'].map((word) => new TextEncoder().encode(word));
/** Within what a file of microseconds can say. */
const TIMES = [1_772_366_400.25, 1_772_366_700.500001, 1_772_367_000.999999];

function frames(kind: string): { time: number; bytes: Uint8Array }[] {
  return PAYLOADS.map((payload, index) => ({
    time: TIMES[index] ?? 0,
    bytes: inFrame(kind, ipPacket({ time: 0, payload })),
  }));
}

function read(
  file: Uint8Array,
  chunk = file.length,
): { readonly found: readonly CapturedFrame[]; readonly problem: string | undefined } {
  const reader = new CaptureReader();
  const found: CapturedFrame[] = [];
  for (let at = 0; at < file.length; at += Math.max(1, chunk))
    found.push(
      ...reader
        .push(file.subarray(at, at + Math.max(1, chunk)))
        .map((frame) => ({ ...frame, bytes: frame.bytes.slice() })),
    );
  return { found, problem: reader.end() };
}

function texts(found: readonly CapturedFrame[]): readonly (string | undefined)[] {
  return found.map((frame) => {
    const datagram = datagramIn(frame);
    return datagram === undefined ? undefined : new TextDecoder().decode(datagram.payload);
  });
}

/**
 * The same file as a machine of the other order of bytes writes it (draft-ietf-opsawg-pcap §4, from memory); tshark
 * reads it too.
 */
function turned(file: Uint8Array): Uint8Array {
  const bytes = file.slice();
  const view = new DataView(bytes.buffer);
  const turn32 = (at: number): void => view.setUint32(at, view.getUint32(at), true);
  const turn16 = (at: number): void => view.setUint16(at, view.getUint16(at), true);
  for (const at of [0, 8, 12, 16, 20]) turn32(at);
  for (const at of [4, 6]) turn16(at);
  for (let at = 24; at < bytes.length;) {
    const length = view.getUint32(at + 8, true);
    for (const word of [0, 4, 8, 12]) turn32(at + word);
    at += 16 + length;
  }
  return bytes;
}

describe('capture files', function () {
  let files = new Map<string, Uint8Array>();

  before(function () {
    const missing = WIRESHARK.find((tool) => spawnSync(tool, ['--version']).status !== 0);
    if (missing !== undefined) unavailable(this, `${missing} of Wireshark is not installed`);
    const pcap = captureFile('ether', frames('ether'));
    files = new Map([
      ['pcap', pcap],
      ['pcap of the other order of bytes', turned(pcap)],
      ['pcap of nanoseconds', withTool('editcap', pcap, '-F', 'nsecpcap', 'IN', 'OUT').file],
      [
        'pcap of nanoseconds and the other order',
        turned(withTool('editcap', pcap, '-F', 'nsecpcap', 'IN', 'OUT').file),
      ],
      ['pcapng', captureFile('ether', frames('ether'), 'pcapng')],
      [
        'pcapng with a comment',
        withTool('editcap', pcap, '-F', 'pcapng', '-a', '2:a comment on a packet', 'IN', 'OUT').file,
      ],
    ]);
  });

  for (const format of [
    'pcap',
    'pcap of the other order of bytes',
    'pcap of nanoseconds',
    'pcap of nanoseconds and the other order',
    'pcapng',
    'pcapng with a comment',
  ]) {
    it(`${format}: every packet with its time, as tshark reads it`, () => {
      const file = files.get(format) ?? assert.fail();
      const { found, problem } = read(file);
      assert.equal(problem, undefined);
      assert.deepEqual(texts(found), ['first', 'second', 'third']);
      assert.deepEqual(
        found.map(({ length, bytes }) => length === bytes.length),
        [true, true, true],
      );
      const { out } = withTool(
        'tshark',
        file,
        '-r',
        'IN',
        '-T',
        'fields',
        '-e',
        'frame.time_epoch',
        '-e',
        'udp.length',
      );
      const byTshark = out
        .trim()
        .split('\n')
        .map((line) => line.split('\t'));
      assert.deepEqual(
        byTshark.map(([, length]) => Number(length) - 8),
        PAYLOADS.map(({ length }) => length),
      );
      // A time of today in milliseconds has room for a quarter of a microsecond.
      found.forEach(({ time = 0 }, index) =>
        assert.ok(Math.abs(time - 1000 * Number(byTshark[index]?.[0])) < 0.001, `${time}`),
      );
    });

    it(`${format}: the same however it is cut into chunks`, () => {
      const file = files.get(format) ?? assert.fail();
      fc.assert(
        fc.property(fc.integer({ min: 1, max: file.length }), (chunk) =>
          assert.deepEqual(read(file, chunk), read(file)),
        ),
        { numRuns: 50 },
      );
    });

    it(`${format}: reports a file that ends early, with what is whole`, () => {
      const file = files.get(format) ?? assert.fail();
      fc.assert(
        fc.property(fc.integer({ min: 0, max: file.length - 1 }), (length) => {
          const { found, problem } = read(file.subarray(0, length));
          const whole = read(file).found.slice(0, found.length);
          assert.deepEqual(found, whole);
          if (found.length < 2) return;
          assert.ok(problem === undefined || problem.startsWith('it ends within a packet'), problem);
        }),
      );
      assert.match(
        read(file.subarray(0, file.length - 1)).problem ?? '',
        format.startsWith('pcapng') ? /./ : /ends within a packet/,
      );
    });

    it(`${format}: reads a damaged file or says what is wrong, and keeps little of it`, () => {
      const file = files.get(format) ?? assert.fail();
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.nat(file.length - 1), fc.nat(255)), { maxLength: 8 }),
          fc.integer({ min: 1, max: 200 }),
          (changes, chunk) => {
            const damaged = file.slice();
            for (const [at, byte] of changes) damaged[at] = byte;
            const { found } = read(damaged, chunk);
            assert.ok(found.reduce((sum, { bytes }) => sum + bytes.length, 0) <= damaged.length);
            texts(found);
          },
        ),
        { numRuns: 300 },
      );
    });
  }

  for (const [kind, { linkType }] of Object.entries(FRAMES)) {
    it(`finds datagrams in frames of ${kind}, as tshark does`, () => {
      const file = captureFile(kind, frames(kind), 'pcap');
      const { found } = read(file);
      assert.deepEqual([found[0]?.linkType, ...texts(found)], [linkType, 'first', 'second', 'third']);
      const { out } = withTool('tshark', file, '-r', 'IN', '-T', 'fields', '-e', 'ip.dst', '-e', 'udp.dstport');
      assert.equal(out.trim().split('\n')[0], '239.195.255.255\t9875');
    });
  }

  // Packets of two interfaces, one of them without Ethernet.
  it('knows which interface a packet of pcapng is of', () => {
    const [ether, raw] = ['ether', 'rawip'].map((kind) => captureFile(kind, frames(kind), 'pcapng'));
    const { file } = withTool('mergecap', ether ?? assert.fail(), '-F', 'pcapng', '-I', 'none', '-w', 'OUT', 'IN');
    assert.deepEqual(texts(read(file).found), ['first', 'second', 'third']);
    // One section behind the other is a file too.
    const both = Uint8Array.from([...(ether ?? []), ...(raw ?? [])]);
    assert.deepEqual(texts(read(both).found), ['first', 'second', 'third', 'first', 'second', 'third']);
    assert.equal(read(both).problem, undefined);
  });

  for (const [what, bytes, problem] of [
    ['nothing', [], /it is empty/],
    ['three bytes', [0xd4, 0xc3, 0xb2], /no capture/],
    ['a text', [...'no capture at all'].map((letter) => letter.charCodeAt(0)), /no capture/],
    ['a packed file', [0x1f, 0x8b, 8, 0], /compressed/],
    [
      'a packet longer than any',
      [0xd4, 0xc3, 0xb2, 0xa1, ...new Uint8Array(20), ...new Uint8Array(8), 0, 0, 0, 0x7f, 0, 0, 0, 0],
      /damaged/,
    ],
  ] as const) {
    it(`says what is wrong with ${what}`, () => assert.match(read(Uint8Array.from(bytes)).problem ?? '', problem));
  }

  it('takes neither a fragment nor what is no UDP for a datagram', () => {
    const whole = inFrame('ether', ipPacket({ time: 0, payload: new TextEncoder().encode('x') }));
    const changed = (at: number, byte: number): CapturedFrame => ({
      linkType: 1,
      time: 0,
      length: whole.length,
      bytes: whole.map((own, index) => (index === at ? byte : own)),
    });
    assert.notEqual(datagramIn(changed(0, 1)), undefined);
    assert.deepEqual(
      [changed(20, 0x20), changed(23, 6), changed(14, 0x65), changed(12, 0x86), changed(14, 0x44)].map(datagramIn),
      Array.from({ length: 5 }, () => undefined),
    );
  });
});
