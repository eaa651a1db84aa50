import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { pipeline } from 'node:stream/promises';

/** SHA-256 of a file (FIPS 180-4), in hexadecimal; `read` takes the number of bytes so far. */
export async function sha256Of(path: string, signal: AbortSignal, read: (bytes: number) => void): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(
    createReadStream(path, { highWaterMark: 1 << 20 }),
    async function* (chunks: AsyncIterable<Buffer>) {
      for await (const chunk of chunks) {
        read(chunk.length);
        yield chunk;
      }
    },
    hash,
    { signal },
  );
  return hash.digest('hex');
}
