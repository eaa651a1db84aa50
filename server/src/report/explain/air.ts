/** The airtime that groups take at an access point. */

import type { Air, AirStream } from '../../network/airtime.ts';
import type { Load } from '../../network/rates.ts';
import { bitRate, count } from '../../text/words.ts';
import { MPDU_OVERHEAD } from '../../standards/wifi.ts';
import { type Explanation, type ExplanationLine, RATES } from './explanation.ts';
import { type Figure, digitsGrouped, rates } from './figure.ts';

/** Stream by stream: packets, the time that each takes, and the share that this is. */
export function airExplained({ device, streams, share }: Air): Explanation {
  return {
    title: `${device.name}: what groups take of its air`,
    sentences: [
      `A group is sent once for all stations at ${bitRate(device.basicRate)}, alone and without acknowledgement; the ` +
        'rate of the cell does not matter here. Stations, neighbours and repeated frames share what is left.',
    ],
    columns: RATES,
    lines: streams.flatMap(streamLines),
    total: {
      label: 'of the time',
      cells: percents(share),
      formula: `waiting, preamble and symbols; ${MPDU_OVERHEAD} B around each packet`,
      source: 'RFC 9119 §3.1; the arithmetic of IEEE 802.11 as ns-3 has it',
    },
  };
}

function streamLines({ stream, copies, runs, share }: AirStream): ExplanationLine[] {
  const packets = runs.flatMap(({ what, perSecond, time }): ExplanationLine[] => [
    {
      label: `${what} packets`,
      part: true,
      cells: rates(perSecond, 'packets/s'),
      formula:
        time.nominal === time.peak
          ? `${digitsGrouped(time.peak, 1)} µs each`
          : `${digitsGrouped(time.nominal, 1)} µs each, at peak ${digitsGrouped(time.peak, 1)} µs`,
    },
  ]);
  const formula = copies === 1 ? {} : { formula: `in ${count(copies, 'VLAN')}` };
  return [{ label: stream.name, cells: percents(share), ...formula }, ...packets];
}

function percents({ nominal, peak }: Load): Figure[] {
  return [nominal, peak].map((share) => ({ value: share * 100, unit: '%' }));
}
