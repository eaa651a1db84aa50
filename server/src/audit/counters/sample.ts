/** What one interface had counted at one time. */

import type { Counter } from '../../standards/if-mib.ts';

export interface Sample {
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly time: number;
  /** Whose interface it is, where the file says. */
  readonly device: string | undefined;
  /** What the system calls it; the first is the one that is shown. */
  readonly names: readonly string[];
  readonly received: Counter | undefined;
  readonly sent: Counter | undefined;
  /** Frames that were dropped or damaged, by the name of their counter. */
  readonly lost: ReadonlyMap<string, number>;
  /** Octets are counted with the frame check sequence. */
  readonly withFcs: boolean;
  /** bit/s */
  readonly speed: number | undefined;
  /** Where it differs from the sample before, the counters have begun anew. */
  readonly since: string;
  /** Hundredths of a second since they can last have begun anew; `undefined` where nothing says. */
  readonly upTime: number | undefined;
  /** It is no wire: the loopback, a bridge, a tunnel; `undefined` where that is not said. */
  readonly virtual: boolean | undefined;
  /** The interface that it is a VLAN of. */
  readonly over: string | undefined;
}

export interface Readings {
  readonly samples: readonly Sample[];
  /** What was left out, and why. */
  readonly notes: readonly string[];
}

/** Reads a file line by line. */
export interface SampleReader {
  /** @throws Unreadable */
  line(text: string, number: number): void;
  /** @throws Unreadable where the file as a whole is nothing to read */
  end(): Readings;
}

/** More than a month of an hourly look at a thousand ports, or a day of 60 ports each 5 s. */
export const MOST_SAMPLES = 1_100_000;
