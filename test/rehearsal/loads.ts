// What each port carries while everything runs, against the plan: what real cameras, relays and players do.
import type { Plan } from '../../server/src/plan.ts';
import { portName } from '../../server/src/site/model.ts';
import { directionsOf } from '../directions.ts';
import { type Row, repliesIn, rowsOf } from '../lab/table.ts';

/**
 * As much of what is planned a port may carry more or less. The plan has full packets, but for the last of each
 * picture, which at an eighth of the rates is one in two or three; it leaves out RTCP, RTSP and its sockets' keeping
 * alive.
 */
const TOLERANCE = 0.02;

/**
 * Of acknowledgements fewer or more: see test/lab/rtsp.test.ts. At an eighth of the rates a picture is two or three
 * segments, of which the last may have an acknowledgement of its own; a busy machine joins some.
 */
const ACKNOWLEDGED = { least: -0.4, most: 0.4 };

/** Bytes in a second that no stream sends: ARP, IGMP (240 of a screen with eleven groups), spanning tree, RTCP, SAP. */
const NOISE = 500;

/** Rows of the lab's table that agree where they do so within what real programs do. */
export function rehearsedRows(plan: Plan, counted: readonly number[], seconds: number): Row[] {
  const directions = directionsOf(plan);
  return rowsOf(plan, counted, seconds, 1).map((row, index) => {
    const { predicted, measured } = row;
    const direction = directions[index];
    const replies = direction === undefined ? 0 : (repliesIn(plan, direction) * seconds) / 8;
    const sent = predicted - replies;
    const [least, most] = [
      sent * (1 - TOLERANCE) + replies * (1 + ACKNOWLEDGED.least),
      sent * (1 + TOLERANCE) + replies * (1 + ACKNOWLEDGED.most) + NOISE * seconds,
    ];
    return { ...row, agrees: measured >= least && measured <= most };
  });
}

/** Those that disagree, in words, by direction of link. */
export function disagreements(rows: readonly Row[]): Map<number, string> {
  return new Map(
    rows.flatMap(({ port, to, predicted, measured, agrees }, direction) =>
      agrees
        ? []
        : [
            [
              direction,
              `${portName(port)} → ${portName(to)} carried ${measured} bytes, planned are ${predicted.toFixed(0)}`,
            ] as const,
          ],
    ),
  );
}
