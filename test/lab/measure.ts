/** Builds a site and compares counted with predicted loads. */

import type { Plan } from '../../server/src/plan.ts';
import type { KernelRoute } from './kernel-routes.ts';
import { Lab, type LabOptions, type Window } from './lab.ts';
import { scaleOf } from './pace.ts';
import { type Row, rowsOf, tableOf, worst } from './table.ts';

/** A busy machine may lose a frame, but not the same one again. */
const TRIES = 3;
/** Seconds: where a packet is sent later than that, TCP puts several into one, and fewer are acknowledged. */
const LATE = 0.02;
/** More windows are allowed where a sender was late, as these do not count. */
const MOST_TRIES = 20;

export interface Outcome {
  readonly rows: readonly Row[];
  readonly wrong: readonly string[];
  readonly routes: readonly KernelRoute[];
  readonly refusedJoins: readonly (string | null)[];
  readonly tries: number;
  readonly scale: number;
  /** Seconds by which the latest packet of the last window missed its time. */
  readonly latest: number;
  /** See `worst`. */
  readonly loaded: number;
  readonly idle: number;
}

export interface MeasureOptions extends LabOptions {
  /** The number of windows, where a disagreement is expected. */
  readonly mostTries?: number;
}

/** Builds a site and runs it. Where something disagrees it is run again, as the machine may have lost frames. */
export async function measure(plan: Plan, seconds: number, options: MeasureOptions = {}): Promise<Outcome> {
  const lab = new Lab(plan, options);
  try {
    await lab.build();
    const scale = scaleOf(plan);
    let inTime = 0;
    for (let tries = 1; ; tries++) {
      const window = await lab.measure(seconds, scale);
      const rows = rowsOf(plan, window.counted, seconds, scale);
      const wrong = [...disagreements(rows), ...wrongReceptions(lab, window)];
      if (window.latest <= LATE) inTime++;
      if (wrong.length === 0 || inTime === TRIES || tries === (options.mostTries ?? MOST_TRIES)) {
        const { routes, refusedJoins } = lab;
        return { rows, wrong, routes, refusedJoins, tries, scale, latest: window.latest, ...worst(plan, rows) };
      }
    }
  } finally {
    lab.end();
  }
}

function disagreements(rows: readonly Row[]): string[] {
  return rows.filter(({ agrees }) => !agrees).map((row) => tableOf([row]).split('\n')[1]?.trim() ?? '');
}

/** A receiver that is reached gets everything that was sent, one that is not gets nothing. */
function wrongReceptions({ traffic }: Lab, { sent, got }: Window): string[] {
  return traffic.receptions.flatMap(({ stream, receiver, expected, sender }, index) => {
    const received = got[index] ?? 0;
    const all = expected ? (sent[sender] ?? 0) : 0;
    return received === all ? [] : [`${receiver.name} got ${received} of ${stream.name}, not ${all}`];
  });
}
