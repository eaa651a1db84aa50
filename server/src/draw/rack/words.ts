/** What is written in a picture of a rack. */

import type { Clashes } from '../../racks/clashes.ts';
import type { Plan } from '../../plan.ts';
import type { MountedDevice, RackFigures } from '../../racks/racks.ts';
import { rackAnswer } from '../../report/answer/rack.ts';
import type { Device } from '../../site/model.ts';
import { heatOf } from '../../supply/device-power.ts';
import { kilograms, watts } from '../../text/words.ts';
import { drawingKindWords } from '../kind-words.ts';

/** `7 of 12 U free · 4 devices · 19.5 kg of 60 kg · 96 W of heat` */
export function wholeWords(plan: Plan, figures: RackFigures): string {
  return [rackAnswer(figures), heatWords(plan, figures)].filter((part) => part !== undefined).join(' · ');
}

/** What is wrong with a place, in few words; empty where nothing is. */
export function faultOf(
  { rack }: RackFigures,
  clashes: Clashes,
  placed: MountedDevice,
  units: number | undefined,
): string {
  const { depth } = placed.device.mounting;
  if (units !== undefined && placed.last > units) return 'beyond the rack';
  if (clashes.crowded(placed) !== undefined) return 'no room beside it';
  if (clashes.tooDeep(placed) !== undefined) return 'too deep with the front';
  return depth !== undefined && rack.depth !== undefined && depth > rack.depth ? 'too deep' : '';
}

/** `switch · 3.2 kg · 24 W` */
export function factsOf(plan: Plan, device: Device): string {
  const { kind, mounting } = device;
  const { weight } = mounting;
  return [
    kind === undefined ? undefined : drawingKindWords(device),
    weight === undefined ? undefined : kilograms(weight),
    ownWatts(plan, device),
  ]
    .filter((part) => part !== undefined)
    .join(' · ');
}

/** `fed by stairs-ups`; empty where the site does not say. */
export function fedWords({ supply }: Plan, device: Device): string {
  const fed = supply().feeding.of(device);
  if (fed.by === 'mains') return fed.isDeclared ? 'at the mains' : '';
  return `fed by ${fed.device.name}`;
}

/** What it draws itself; `undefined` where that is undeclared, or nothing. */
export function ownWatts({ supply }: Plan, device: Device): string | undefined {
  const { own, basis } = supply().power(device);
  return basis === 'undeclared' || basis === 'none' ? undefined : watts(own.most);
}

/** What turns into heat in the rack, of all that say what they draw. */
export function heatWords({ supply }: Plan, { placed, elsewhere }: RackFigures): string | undefined {
  const all = [...placed.map(({ device }) => device), ...elsewhere];
  const { power, isDeclared } = supply();
  const said = all.filter((device) => power(device).basis !== 'undeclared');
  if (!isDeclared || said.length === 0) return undefined;
  return `${watts(heatOf(power, all))} of heat${said.length < all.length ? ' + ?' : ''}`;
}
