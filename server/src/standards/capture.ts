/** Reads captured packets from a file chunk by chunk; pcap.ts and pcapng.ts read the parts of their formats. */

import type { CaptureFormat, CapturedFrame } from './capture-format.ts';
import { pcapFormat } from './pcap.ts';
import { pcapngFormat } from './pcapng.ts';

export class CaptureReader {
  private rest: Uint8Array = new Uint8Array(0);
  /** Bytes still to come of a part without a frame. */
  private skipping = 0;
  private format: CaptureFormat | undefined;
  private problem: string | undefined;
  private size = 0;

  /** The frames that this chunk completes. Keeps no more than the start of one part. */
  push(chunk: Uint8Array): readonly CapturedFrame[] {
    this.size += chunk.length;
    const skipped = Math.min(this.skipping, chunk.length);
    this.skipping -= skipped;
    let bytes = joined(this.rest, chunk.subarray(skipped));
    const frames: CapturedFrame[] = [];
    while (bytes.length > 0 && this.problem === undefined) {
      this.format ??= this.recognise(bytes);
      const part = this.format?.(bytes);
      if (part === undefined) break;
      if ('problem' in part) this.problem = part.problem;
      else {
        if (part.frame !== undefined) frames.push(part.frame);
        this.skipping = Math.max(0, part.length - bytes.length);
        bytes = bytes.subarray(part.length);
      }
    }
    this.rest = this.problem === undefined ? new Uint8Array(bytes) : new Uint8Array(0);
    return frames;
  }

  /** Nothing after what has been read can be. */
  get isBroken(): boolean {
    return this.problem !== undefined;
  }

  /** @returns what is wrong with the file, as a clause, where something is; the frames before that are good */
  end(): string | undefined {
    if (this.problem !== undefined) return this.problem;
    if (this.size === 0) return 'it is empty';
    if (this.format === undefined) return NO_CAPTURE;
    return this.rest.length > 0 || this.skipping > 0
      ? 'it ends within a packet, as where the capture was broken off'
      : undefined;
  }

  private recognise(bytes: Uint8Array): CaptureFormat | undefined {
    if (bytes.length < 4) return undefined;
    const format = pcapFormat(bytes) ?? pcapngFormat(bytes);
    if (format === undefined)
      this.problem = bytes[0] === 0x1f && bytes[1] === 0x8b ? 'it is compressed: unpack it first' : NO_CAPTURE;
    return format;
  }
}

const NO_CAPTURE = 'it is no capture: neither pcap nor pcapng';

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  if (first.length === 0) return second;
  const bytes = new Uint8Array(first.length + second.length);
  bytes.set(first);
  bytes.set(second, first.length);
  return bytes;
}
