/** Units by which servers record: FFmpeg takes a stream in and writes it to files of a certain length. */

import type { Output } from '../output.ts';
import { madeOf, subjectsOf } from './ingests.ts';

export const recorders: Output = {
  kind: 'recorders',
  title: 'Recordings: FFmpeg in systemd units',
  summary: 'systemd units by which a server records streams in segments, with FFmpeg',
  subjects: (plan) => subjectsOf(plan, 'recorders'),
  make: (plan, subject) => madeOf(plan, 'recorders', subject),
};
