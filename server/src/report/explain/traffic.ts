/** The line rates of other traffic than streams, there and back. */

import { obstacleWords } from '../../network/obstacle-words.ts';
import { type TrafficRoute, trafficAsStream, trafficRates } from '../../network/traffic.ts';
import { ACK_EVERY, HEADERS, MAXIMUM_SEGMENT } from '../../standards/tcp.ts';
import { list } from '../../text/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { LINE } from './sources.ts';
import { trafficAnswer } from '../answer/traffic.ts';

export function trafficExplained({ traffic, from, to, obstacle }: TrafficRoute): Explanation {
  const { name, rate = 0, back = 0 } = traffic;
  const { untagged, tagged, reply } = trafficRates(traffic);
  const line = (label: string, there: number, ago: number, more: Partial<ExplanationLine> = {}): ExplanationLine => ({
    label,
    cells: [
      { value: there, unit: 'b/s' },
      { value: ago, unit: 'b/s' },
    ],
    ...more,
  });
  return {
    answer: trafficAnswer({ traffic, from, to, obstacle }),
    title: `${name}: other traffic, ${traffic.from ?? '?'} to ${traffic.to ?? '?'}`,
    sentences: reaches({ traffic, from, to, obstacle }),
    columns: ['there', 'back'],
    lines: [
      line('data', rate, back, { formula: 'as declared' }),
      line('frames', untagged.frame.peak, reply.untagged.frame.peak, {
        formula:
          `segments of ${MAXIMUM_SEGMENT} B with ${HEADERS} B of headers, and one acknowledgement for ${ACK_EVERY} of ` +
          'the other direction; without FCS',
      }),
    ],
    total: line('line rate', untagged.line.peak, reply.untagged.line.peak, {
      formula: 'with FCS, preamble and gap',
      source: LINE,
    }),
    after: [line('with a VLAN tag', tagged.line.peak, reply.tagged.line.peak, { formula: 'on trunks' })],
  };
}

function reaches({ traffic, from, to, obstacle }: TrafficRoute): string[] {
  if (from === undefined || to === undefined) {
    const missing = [from === undefined ? traffic.from : undefined, to === undefined ? traffic.to : undefined];
    return [
      `It gets nowhere: there is no ${list(
        missing.map((name) => name ?? 'end'),
        'or',
      )}.`,
    ];
  }
  if (obstacle === undefined) return [];
  const { what, remedy } = obstacleWords(obstacle, to.name, trafficAsStream(traffic, to));
  return [`It does not get there: ${what}; ${remedy}.`];
}
