/** What a stream is asked for by, at its source. */

import { RTSP_PORT } from '../standards/rtp.ts';
import type { Stream } from './model.ts';

/** Port and path in one text (RFC 2326 §3.2): a source has one stream for each. */
export function rtspAddressOf({ port = RTSP_PORT, path = '' }: Stream): string {
  return `${port}/${path.replace(/^\//, '')}`;
}
