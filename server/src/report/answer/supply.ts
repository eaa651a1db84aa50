import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { aboutWatts, count, percent, runtime, voltAmperes } from '../../text/words.ts';
import { camerasOn } from '../supply/figures.ts';
import { answer } from './words.ts';

/** `44 min, 10 of 12 cameras · 159 W, 38 % of 420 W · 167 VA, 24 % of 700 VA · feeds 3 devices` */
export function upsAnswer(plan: Plan, device: Device): string {
  const supply = plan.supply();
  const figures = supply.ups(device);
  if (figures === undefined) return '';
  const { ups, load, apparent, undeclared } = figures;
  const more = undeclared.length === 0 ? '' : ' + ?';
  const share = (part: number, rated: number | undefined, words: (amount: number) => string): string =>
    `${words(part)}${more}${rated === undefined || rated === 0 ? '' : `, ${percent(part, rated)} of ${words(rated)}`}`;
  return answer(
    upsLasts(plan, device),
    share(load, ups.ratedPower, aboutWatts),
    share(apparent, ups.rated, voltAmperes),
    `feeds ${count(supply.feeding.fedBy(device).length, 'device')}`,
  );
}

/** `44 min, 10 of 12 cameras`; with `?` where the battery is undeclared. */
export function upsLasts(plan: Plan, device: Device): string {
  const figures = plan.supply().ups(device);
  const cameras = plan.cameraRuntimes().length;
  if (figures === undefined || figures.load === 0) return 'feeds no device with declared watts';
  const time = figures.runtime === undefined ? '? min' : runtime(figures.runtime);
  return cameras === 0 ? time : `${time}, ${camerasOn(plan, figures).length} of ${count(cameras, 'camera')}`;
}

/** `86 W at most · feeds 3 devices, which end at once without mains` */
export function circuitAnswer(plan: Plan, device: Device): string {
  const { power, feeding } = plan.supply();
  const { taken, undeclared } = power(device);
  return answer(
    `${aboutWatts(taken.most)}${undeclared.length === 0 ? '' : ' + ?'} at most`,
    `feeds ${count(feeding.fedBy(device).length, 'device')}`,
  );
}
