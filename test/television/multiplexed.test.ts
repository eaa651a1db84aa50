/**
 * A multiplex of several services that FFmpeg makes at a constant rate and sends by RTP: as many packets a second, and
 * as large, as the plan says of such a stream.
 */

import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { type Socket, createSocket } from 'node:dgram';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { planOf } from '../../server/src/plan.ts';
import { needs } from '../availability.ts';
import { siteOf } from '../site-of.ts';

/** Of DVB-T, 64QAM 2/3 with a guard interval of 1/32 in 8 MHz: EN 300 744. */
const NET_RATE = 24_128_342;
const SERVICES = ['news', 'film', 'sport'];
const SECONDS = 5;

const TS_PACKET = 188;
const RTP_HEADER = 12;
/** Of the clock that a transport stream carries (ISO/IEC 13818-1 §2.4.3.5), Hz. */
const CLOCK = 27e6;

/** What came of a stream, without what the receiver may have lost. */
interface Received {
  readonly datagramBytes: ReadonlySet<number>;
  /** Services that the stream's table of programmes names. */
  readonly programmes: number;
  /** Datagrams a second, by the clock that the stream carries. */
  readonly perSecond: number;
}

/** A clock reading: seconds, and how many transport packets have been sent before it. */
interface Reading {
  readonly seconds: number;
  readonly packets: number;
}

function readingOf(packet: Buffer, packets: number): Reading | undefined {
  const hasClock = ((packet[3] ?? 0) & 0x20) !== 0 && (packet[4] ?? 0) > 0 && ((packet[5] ?? 0) & 0x10) !== 0;
  if (!hasClock || pidOf(packet) !== FIRST_PID) return undefined;
  const base = packet.readUInt32BE(6) * 2 + ((packet[10] ?? 0) >> 7);
  return { seconds: (base * 300 + (packet.readUInt16BE(10) & 0x1ff)) / CLOCK, packets };
}

function pidOf(packet: Buffer): number {
  return packet.readUInt16BE(1) & 0x1fff;
}

/** Of FFmpeg's first elementary stream; each programme has a clock of its own. */
const FIRST_PID = 0x100;

function received(datagrams: readonly Buffer[]): Received {
  const readings: Reading[] = [];
  let programmes = 0;
  let sent = 0;
  let last: number | undefined;
  for (const datagram of datagrams) {
    const number = datagram.readUInt16BE(2);
    sent += last === undefined ? 0 : (number - last) & 0xffff;
    last = number;
    for (let at = RTP_HEADER; at < datagram.length; at += TS_PACKET) {
      const packet = datagram.subarray(at, at + TS_PACKET);
      assert.equal(packet[0], 0x47, 'a transport packet begins with its sync byte');
      const reading = readingOf(packet, sent * 7 + (at - RTP_HEADER) / TS_PACKET);
      if (reading !== undefined) readings.push(reading);
      // The table of programmes: 8 bytes of header, 4 for each, 4 of checksum (§2.4.4.3).
      if (pidOf(packet) === 0) programmes = ((packet.readUInt16BE(6) & 0xfff) - 5 - 4) / 4;
    }
  }
  const [first, end] = [readings[0], readings.at(-1)];
  assert.ok(first !== undefined && end !== undefined && readings.length > 10, `${readings.length} clock readings`);
  return {
    datagramBytes: new Set(datagrams.map(({ length }) => length)),
    programmes,
    perSecond: (end.packets - first.packets) / 7 / (end.seconds - first.seconds),
  };
}

const QUIET = ['-hide_banner', '-loglevel', 'error', '-nostdin'];

/** Several services at a constant rate, into a file. */
function multiplexInto(file: string): void {
  const words = (text: string): string[] => text.split(' ');
  const inputs = SERVICES.flatMap((_, index) =>
    words(
      `-f lavfi -i testsrc2=size=320x180:rate=25,hue=h=${index * 90} -f lavfi -i sine=frequency=${300 + index * 200}`,
    ),
  );
  const maps = SERVICES.flatMap((_, index) => words(`-map ${2 * index}:v -map ${2 * index + 1}:a`));
  const programmes = SERVICES.flatMap((name, index) =>
    words(`-program title=${name}:st=${2 * index}:st=${2 * index + 1}`),
  );
  const coding = words(`-c:v mpeg2video -b:v 1500k -c:a mp2 -b:a 192k -t ${SECONDS} -muxrate ${NET_RATE} -f mpegts`);
  execFileSync('ffmpeg', [...QUIET, ...inputs, ...maps, ...programmes, ...coding, file]);
}

/** FFmpeg sends it as it is to a port of this machine, in its own time. */
async function sentTo(socket: Socket, file: string): Promise<Received> {
  socket.bind(0, '127.0.0.1');
  await once(socket, 'listening');
  const { port } = socket.address() satisfies AddressInfo;
  const datagrams: Buffer[] = [];
  socket.on('message', (datagram) => datagrams.push(datagram));
  const read = ['-re', '-f', 'mpegtsraw', '-compute_pcr', '1', '-i', file, '-map', '0', '-c', 'copy'];
  const ffmpeg = spawn('ffmpeg', [...QUIET, ...read, '-f', 'rtp', `rtp://127.0.0.1:${port}?pkt_size=1328`], {
    stdio: 'ignore',
  });
  const [status] = (await once(ffmpeg, 'close')) as [number | null];
  assert.equal(status, 0);
  return received(datagrams);
}

describe('A multiplex that FFmpeg sends', function () {
  before(function () {
    needs(this, 'ffmpeg');
  });

  it('has the packets that are planned for one of its net rate', async () => {
    const plan = planOf(
      siteOf(`
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services: {${SERVICES.map((name) => `${name}: {multiplex: mux-a, rate: 1.7 Mb/s}`).join(', ')}}
devices:
  tuner: {kind: tuner, address: 192.168.20.9}
  screen: {kind: display, address: 192.168.20.60}
streams:
  all: {source: tuner, multiplex: mux-a, transport: ts-rtp, group: 239.255.30.2, port: 5004, receivers: [screen]}
`),
    );
    const [stream] = plan.site.streams;
    assert.ok(stream);
    const rates = plan.network.rates(stream);
    const socket = createSocket({ type: 'udp4', recvBufferSize: 4e6 });
    const folder = mkdtempSync(join(tmpdir(), 'plumbline-multiplex-'));
    try {
      const file = join(folder, 'mux.ts');
      multiplexInto(file);
      const { datagramBytes, programmes, perSecond } = await sentTo(socket, file);
      assert.equal(programmes, SERVICES.length);
      assert.deepEqual([...datagramBytes], [RTP_HEADER + 7 * TS_PACKET]);
      const [planned] = rates.runs.map((run) => run.perSecond.nominal);
      assert.ok(
        Math.abs(perSecond / (planned ?? NaN) - 1) < 0.0001,
        `${perSecond} packets a second, and ${planned ?? NaN} are planned`,
      );
    } finally {
      socket.close();
      rmSync(folder, { recursive: true });
    }
  });
});
