// Captures of announcements: frames by hand, put into files by Wireshark's own tools.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Sent {
  /** Seconds since 1970, with fractions. */
  readonly time: number;
  readonly payload: Uint8Array;
  readonly source?: readonly number[];
  readonly destination?: readonly number[];
}

/**
 * An IPv4 packet of UDP to the port of announcements (RFC 791 §3.1, RFC 768); its UDP checksum is left out, which is
 * allowed.
 */
export function ipPacket(
  { payload, source = [192, 168, 20, 5], destination = [239, 195, 255, 255] }: Sent,
  port = 9875,
): Uint8Array {
  const length = 28 + payload.length;
  const header = [0x45, 0, length >>> 8, length & 0xff, 0, 0, 0, 0, 255, 17, 0, 0, ...source, ...destination];
  let sum = 0;
  for (let at = 0; at < 20; at += 2) sum += ((header[at] ?? 0) << 8) | (header[at + 1] ?? 0);
  sum = (sum & 0xffff) + (sum >>> 16);
  const check = ~((sum & 0xffff) + (sum >>> 16)) & 0xffff;
  header[10] = check >>> 8;
  header[11] = check & 0xff;
  const udp = [port >>> 8, port & 0xff, port >>> 8, port & 0xff, (length - 20) >>> 8, (length - 20) & 0xff, 0, 0];
  return Uint8Array.from([...header, ...udp, ...payload]);
}

/** What stands before IP, by what text2pcap calls the kind of frame. */
export const FRAMES: Readonly<Record<string, { readonly linkType: number; readonly before: readonly number[] }>> = {
  'ether': { linkType: 1, before: [0x01, 0x00, 0x5e, 0x43, 0xff, 0xff, 2, 0, 0, 0, 0, 5, 0x08, 0x00] },
  'ether, one tag': {
    linkType: 1,
    before: [0x01, 0x00, 0x5e, 0x43, 0xff, 0xff, 2, 0, 0, 0, 0, 5, 0x81, 0x00, 0, 20, 0x08, 0x00],
  },
  'ether, two tags': {
    linkType: 1,
    before: [0x01, 0x00, 0x5e, 0x43, 0xff, 0xff, 2, 0, 0, 0, 0, 5, 0x88, 0xa8, 0, 7, 0x81, 0x00, 0, 20, 0x08, 0x00],
  },
  'rawip': { linkType: 101, before: [] },
  'linux-sll': { linkType: 113, before: [0, 2, 0, 1, 0, 6, 2, 0, 0, 0, 0, 5, 0, 0, 0x08, 0x00] },
  'linux-sll2': { linkType: 276, before: [0x08, 0x00, 0, 0, 0, 0, 0, 2, 0, 1, 2, 6, 2, 0, 0, 0, 0, 5, 0, 0] },
};

export function inFrame(kind: string, packet: Uint8Array): Uint8Array {
  return Uint8Array.from([...(FRAMES[kind]?.before ?? []), ...packet]);
}

export const WIRESHARK = ['text2pcap', 'editcap', 'tshark', 'mergecap'];

/**
 * A file with each frame at its time, as text2pcap writes it in one of its formats; or as `convert` makes it of that.
 */
export function captureFile(
  kind: string,
  frames: readonly { readonly time: number; readonly bytes: Uint8Array }[],
  format = 'pcap',
): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-capture-'));
  try {
    const dump = frames.map(({ time, bytes }) => {
      const [seconds = '0', part = '0'] = time.toFixed(6).split('.');
      return `${new Date(Number(seconds) * 1000).toISOString().slice(0, 19)}.${part}\n000000 ${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join(' ')}\n`;
    });
    const [text, file] = [join(folder, 'dump.txt'), join(folder, 'dump.pcap')];
    writeFileSync(text, dump.join(''));
    execFileSync(
      'text2pcap',
      ['-q', '-F', format, '-l', String(FRAMES[kind]?.linkType ?? 1), '-t', '%Y-%m-%dT%H:%M:%S.%f', text, file],
      { env: { ...process.env, TZ: 'UTC' }, stdio: 'pipe' },
    );
    return new Uint8Array(readFileSync(file));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs a tool on a capture that stands in a file; `IN` and `OUT` among its arguments are files. */
export function withTool(
  tool: string,
  capture: Uint8Array,
  ...words: readonly string[]
): { readonly out: string; readonly file: Uint8Array } {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-capture-'));
  try {
    const [given, made] = [join(folder, 'in'), join(folder, 'out')];
    writeFileSync(given, capture);
    writeFileSync(made, '');
    const out = execFileSync(
      tool,
      words.map((word) => (word === 'IN' ? given : word === 'OUT' ? made : word)),
      { encoding: 'utf8', stdio: 'pipe' },
    );
    return { out, file: new Uint8Array(readFileSync(made)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
