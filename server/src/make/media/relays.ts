/** Units by which servers relay streams: FFmpeg receives a stream, and sends it to a group or to each receiver. */

import type { Output } from '../output.ts';
import { makeUnits, unitSubjects } from './ffmpeg-units.ts';

export const relays: Output = {
  kind: 'relays',
  title: 'Streams that a server sends on: FFmpeg in systemd units',
  summary: 'systemd units by which a server sends cameras on as multicast, with FFmpeg',
  subjects: (plan) => unitSubjects(plan, 'relays'),
  make: (plan, subject) => makeUnits(plan, 'relays', subject),
};
