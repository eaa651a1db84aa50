/** Units by which servers send streams on: FFmpeg takes a stream in, and sends it to a group or to each receiver. */

import type { Output } from '../output.ts';
import { madeOf, subjectsOf } from './ingests.ts';

export const relays: Output = {
  kind: 'relays',
  title: 'Streams that a server sends on: FFmpeg in systemd units',
  summary: 'systemd units by which a server sends cameras on as multicast, with FFmpeg',
  subjects: (plan) => subjectsOf(plan, 'relays'),
  make: (plan, subject) => madeOf(plan, 'relays', subject),
};
