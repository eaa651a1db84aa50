/** The counters of one interface at one time. */

import type { Counter } from '../../standards/if-mib.ts';

export interface Sample {
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly time: number;
  /** The interface's device, where the file names it. */
  readonly device: string | undefined;
  /** The system's names of the interface; the first is shown. */
  readonly names: readonly string[];
  readonly received: Counter | undefined;
  readonly sent: Counter | undefined;
  /** Frames that were dropped or damaged, by the name of their counter. */
  readonly lost: ReadonlyMap<string, number>;
  /** Whether octets include the frame check sequence. */
  readonly withFcs: boolean;
  /** bit/s */
  readonly speed: number | undefined;
  /** Differs from the sample before where the counters were reset. */
  readonly since: string;
  /** Hundredths of a second since the last possible reset; `undefined` where the file does not have it. */
  readonly upTime: number | undefined;
  /** Whether it is no wire but a loopback, a bridge or a tunnel; `undefined` where the file does not show it. */
  readonly virtual: boolean | undefined;
  /** The interface that this VLAN interface belongs to. */
  readonly over: string | undefined;
}

export interface Readings {
  readonly samples: readonly Sample[];
  /** Lines that were left out, and why. */
  readonly notes: readonly string[];
}

/** Reads a file line by line. */
export interface SampleReader {
  /** @throws Unreadable */
  line(text: string, number: number): void;
  /** @throws Unreadable where the file as a whole has no counters */
  end(): Readings;
}

/** Enough for a thousand ports every hour for a month, or 60 ports every 5 s for a day. */
export const MOST_SAMPLES = 1_100_000;
