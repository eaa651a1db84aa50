/** Units by which servers record: FFmpeg receives a stream and writes it in segments. */

import type { Output } from '../output.ts';
import { makeUnits, unitSubjects } from './ffmpeg-units.ts';

export const recorders: Output = {
  kind: 'recorders',
  title: 'Recordings: FFmpeg in systemd units',
  summary: 'systemd units by which a server records streams in segments, with FFmpeg',
  subjects: (plan) => unitSubjects(plan, 'recorders'),
  make: (plan, subject) => makeUnits(plan, 'recorders', subject),
};
