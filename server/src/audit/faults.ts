/** Everything that an audit can find, as `rules` is everything that a check can. */

import type { Fault } from '../rules/rule.ts';
import { announcementFaults } from './announcements/faults.ts';
import { counterFaults } from './counters/faults.ts';
import { probeFaults } from './probe/faults.ts';
import { recordingFaults } from './recordings/faults.ts';

/** By audit, in the order in which the pages tell of them. */
export const AUDIT_FAULTS: Readonly<Record<string, Readonly<Record<string, Fault>>>> = {
  announcements: announcementFaults,
  counters: counterFaults,
  probe: probeFaults,
  recordings: recordingFaults,
};

export const faults: readonly Fault[] = Object.values(AUDIT_FAULTS).flatMap((own) => Object.values(own));
