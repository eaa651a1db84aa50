/** What is written in a picture of what feeds what. */

import type { Plan } from '../../plan.ts';
import { camerasOn } from '../../report/supply/figures.ts';
import { lastsWords } from '../../report/supply/words.ts';
import type { Device } from '../../site/model.ts';
import { aboutWatts, count, percent, runtime, voltAmperes } from '../../text/words.ts';
import type { Look } from '../drawing.ts';
import { drawingKindWords } from '../kind-words.ts';

/** What it takes with all that it feeds: `24.5 W`, or `24.5 W + ?` where some of those declare no watts. */
export function wattsWords(plan: Plan, device: Device): string {
  const { basis, taken, undeclared } = plan.supply().power(device);
  if (taken.most === 0 && basis === 'undeclared') return 'not said';
  return `${aboutWatts(taken.most)}${undeclared.length > 0 ? ' + ?' : ''}`;
}

/** How long it has power once the mains has failed; empty where the site has no UPS. */
export function goesOnWords(plan: Plan, device: Device): string {
  const supply = plan.supply();
  if (supply.upses.length === 0) return '';
  const lasts = supply.lasts(device);
  return lasts === 0 ? '✕ ends at once' : lastsWords(lasts);
}

/** Below the name of what feeds others. */
export function headLines(plan: Plan, device: Device): string[] {
  const supply = plan.supply();
  const ups = supply.ups(device);
  if (ups === undefined) {
    const goesOn = goesOnWords(plan, device);
    return [
      drawingKindWords(device),
      `${wattsWords(plan, device)} with all on it`,
      ...(goesOn === '' ? [] : [goesOn.startsWith('✕') ? goesOn : `has power for ${goesOn}`]),
    ];
  }
  const { load, apparent, runtime: time, ups: said } = ups;
  const share = (part: number, rated: number | undefined): string =>
    rated === undefined || rated === 0 ? '' : `, ${sign(part / rated)}${percent(part, rated)}`;
  return [
    drawingKindWords(device),
    `${aboutWatts(load)}${share(load, said.ratedPower)}`,
    `${voltAmperes(apparent)}${share(apparent, said.rated)}`,
    `lasts ${time === undefined ? '?' : runtime(time)}`,
    `${camerasOn(plan, ups).length} of ${count(plan.cameraRuntimes().length, 'camera')}`,
  ];
}

/** The sign of a share of a rating, before its figure. */
function sign(share: number): string {
  return share > 1 ? '▲ ' : share > 0.8 ? '△ ' : '';
}

export function lookOfDevice(plan: Plan, device: Device): Look {
  const supply = plan.supply();
  const ups = supply.ups(device);
  if (ups !== undefined) {
    const { load, apparent, ups: said } = ups;
    const share = Math.max(load / (said.ratedPower ?? Infinity), apparent / (said.rated ?? Infinity));
    return share > 1 ? 'bad' : share > 0.8 ? 'warn' : 'plain';
  }
  return supply.upses.length > 0 && supply.lasts(device) === 0 ? 'lost' : 'plain';
}
