/**
 * Reads messages from a stream (Language Server Protocol, Base Protocol). Bytes that are no message are refused and
 * skipped up to the next header, so that one wrong length does not cost the messages after it.
 */

import type { Readable } from 'node:stream';
import { AbstractMessageReader, type DataCallback, Disposable, type MessageReader } from 'vscode-languageserver/node';

/** Bytes; larger than any site. */
const LARGEST = 1 << 28;
const LONGEST_HEADER = 4096;
const LENGTH = 'Content-Length:';
const END = '\r\n\r\n';

export class FramedReader extends AbstractMessageReader implements MessageReader {
  private readonly input: Readable;
  private readonly refuse: (why: string) => void;
  private callback: DataCallback = () => undefined;
  /** Bytes received and not yet read. */
  private chunks: Buffer[] = [];
  private held = 0;
  /** Bytes of the next body; `undefined` before its header. */
  private length: number | undefined;
  /** Whether bytes are being skipped, and this has been reported. */
  private isLost = false;

  /** @param refuse takes the reason why bytes are skipped, as a clause */
  constructor(input: Readable, refuse: (why: string) => void) {
    super();
    this.input = input;
    this.refuse = refuse;
  }

  listen(callback: DataCallback): Disposable {
    this.callback = callback;
    const take = (chunk: Buffer): void => this.take(chunk);
    this.input.on('data', take);
    this.input.on('error', (error) => this.fireError(error));
    this.input.on('close', () => this.fireClose());
    return Disposable.create(() => this.input.off('data', take));
  }

  private take(chunk: Buffer): void {
    const before = this.chunks.at(-1);
    this.chunks.push(chunk);
    this.held += chunk.length;
    // A large message comes in many pieces, which are put together once.
    if (this.length !== undefined && this.held < this.length) {
      const seam = before === undefined ? chunk : Buffer.concat([before.subarray(-LENGTH.length), chunk]);
      if (!seam.includes(LENGTH)) return;
    }
    let rest: Buffer = Buffer.concat(this.chunks);
    for (let more: Buffer | undefined = rest; more !== undefined; more = this.next(rest)) rest = more;
    this.chunks = [rest];
    this.held = rest.length;
  }

  /** Takes a header or a body. @returns the bytes after it; `undefined` where more have to come first */
  private next(bytes: Buffer): Buffer | undefined {
    return this.length === undefined ? this.header(bytes) : this.body(bytes, this.length);
  }

  private header(bytes: Buffer): Buffer | undefined {
    const end = bytes.subarray(0, LONGEST_HEADER).indexOf(END);
    if (end === -1) return bytes.length < LONGEST_HEADER ? undefined : this.passOver(bytes, 1, 'a header has no end');
    const length = lengthIn(bytes.toString('latin1', 0, end));
    if (length === undefined) return this.passOver(bytes, 1, 'a header does not say how long its message is');
    if (length > LARGEST) return this.passOver(bytes, 1, `a message cannot be of ${length} bytes`);
    this.length = length;
    return bytes.subarray(end + END.length);
  }

  private body(bytes: Buffer, length: number): Buffer | undefined {
    if (bytes.length < length) {
      // JSON contains no raw line break inside a string, so this is the header of another message.
      const at = nextHeader(bytes);
      return at === -1 ? undefined : this.passOver(bytes, at, 'a message is shorter than its header says');
    }
    const text = bytes.toString('utf8', 0, length);
    let message: unknown;
    try {
      message = JSON.parse(text);
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error;
      return this.passOver(bytes, 0, 'a message is no JSON');
    }
    this.length = undefined;
    this.isLost = false;
    this.give(message);
    return bytes.subarray(length);
  }

  private give(message: unknown): void {
    try {
      this.callback(message as Parameters<DataCallback>[0]);
    } catch (error) {
      this.fireError(error);
    }
  }

  /** Skips to the next header, or as far as none can begin. */
  private passOver(bytes: Buffer, from: number, why: string): Buffer | undefined {
    if (!this.isLost) this.refuse(why);
    this.isLost = true;
    this.length = undefined;
    const at = bytes.indexOf(LENGTH, from);
    return bytes.subarray(at === -1 ? Math.max(from, bytes.length - LENGTH.length + 1) : at);
  }
}

/** Bytes of the message after a header; `undefined` where it is no header, or has no length. */
function lengthIn(header: string): number | undefined {
  let length: number | undefined;
  for (const line of header.split('\r\n')) {
    const [, name, value = ''] = /^([A-Za-z-]+): *(.*)$/.exec(line) ?? [];
    if (name === undefined) return undefined;
    if (name.toLowerCase() !== 'content-length') continue;
    if (!/^\d{1,15}$/.test(value)) return undefined;
    length = Number(value);
  }
  return length;
}

/** Where a header with a length begins; -1 where none does. */
function nextHeader(bytes: Buffer): number {
  for (let at = bytes.indexOf(LENGTH); at !== -1; at = bytes.indexOf(LENGTH, at + 1))
    if (/^Content-Length: *\d{1,15}\r\n/.test(bytes.toString('latin1', at, at + 40))) return at;
  return -1;
}
