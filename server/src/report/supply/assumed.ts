/** Assumptions about power where the site declares nothing, and cautions; each is printed once. */

import { ASSUMED_DEPTH, ASSUMED_EFFICIENCY, ASSUMED_HEALTH, PEUKERT_EXPONENT } from '../../standards/battery.ts';
import { SUPPLY_MILLIVOLTS } from '../../standards/poe.ts';
import { ASSUMED_POE_EFFICIENCY, ASSUMED_POWER_FACTOR } from '../../supply/device-power.ts';
import { threshold } from '../../text/words.ts';

/** Values where the site declares none; common practice. */
export const ASSUMPTIONS: readonly string[] = [
  `PoE: ${threshold(ASSUMED_POE_EFFICIENCY)} of what a switch takes for it leaves by its ports, at ` +
    `${SUPPLY_MILLIVOLTS / 1000} V; a cable with a length loses what its copper takes.`,
  `Power factor ${ASSUMED_POWER_FACTOR}.`,
  `UPS: ${threshold(ASSUMED_EFFICIENCY)} of what the battery gives comes out, ${threshold(ASSUMED_DEPTH)} of its charge ` +
    `is used, and ${threshold(ASSUMED_HEALTH)} of its capacity is left; a lead battery also loses by fast discharge ` +
    `(Peukert, k = ${PEUKERT_EXPONENT}).`,
  'A powered device without watts takes what its class allows; the average of a device is halfway between idle and maximum.',
  'When a switch goes dark, pictures go by what is left of a ring.',
];

export const CAUTIONS: readonly string[] = [
  'Watts on a label are the most it draws: measure where you can.',
  'Batteries age, and half of the runtime is gone in three to five years: try them under load every year. A lead battery ' +
    'loses about 1 % for each degree below 25 °C.',
  'Let the recorder shut down five minutes before the end, so that its files are whole. Some supplies of servers do not ' +
    'bear a stepped waveform.',
  'Plug no second UPS, no socket strip and no laser printer into a UPS. Its sockets stay live when its plug is pulled.',
  'Batteries are heavy, give off gas and can burn. Generators, inverters, anything behind a socket and anything outdoors ' +
    'are for licensed practice under local codes.',
];
