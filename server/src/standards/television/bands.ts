/**
 * Where television is sent, Hz.
 *
 * Source: the Radio Regulations of the ITU, Article 5, and the agreement GE06, which plans digital television in bands
 * III to V, both from memory, with room for what single countries do: ATSC is also sent in bands I and II; what cable
 * networks use; and the satellite bands C, Ku and Ka.
 */

import { type System, isSatellite } from './system.ts';

export interface Band {
  readonly from: number;
  readonly to: number;
}

const MHZ = 1e6;
const TERRESTRIAL: readonly Band[] = [{ from: 160 * MHZ, to: 960 * MHZ }];
const ATSC: readonly Band[] = [{ from: 40 * MHZ, to: 960 * MHZ }];
const CABLE: readonly Band[] = [{ from: 40 * MHZ, to: 1218 * MHZ }];
const SATELLITE: readonly Band[] = [
  { from: 3400 * MHZ, to: 4200 * MHZ },
  { from: 10_700 * MHZ, to: 12_750 * MHZ },
  { from: 17_300 * MHZ, to: 21_200 * MHZ },
];

export function bandsOf(system: System): readonly Band[] {
  if (isSatellite(system)) return SATELLITE;
  if (system === 'dvb-c' || system === 'j83b') return CABLE;
  return system === 'atsc' ? ATSC : TERRESTRIAL;
}
