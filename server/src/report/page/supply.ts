/** Power on a page: UPS, cameras without mains, the power of each device, and cautions. */

import type { Plan } from '../../plan.ts';
import { aboutWatts, percent, runtime, voltAmperes } from '../../text/words.ts';
import { type Bounds, boundsOf } from '../bounds.ts';
import { ASSUMPTIONS, CAUTIONS } from '../supply/assumed.ts';
import { camerasOn, kilowattHours, takesPower } from '../supply/figures.ts';
import { ownWattsWords } from '../supply/text.ts';
import { TURN_NOTE, lastsWords, outageWords, turnsWords } from '../supply/words.ts';
import { type Cell, type Naming, figure, html, namesCell, shareCell, signWords, table, text } from './cells.ts';

/** Common practice: no more than 80 % of a rating. */
const RATING: Bounds = boundsOf({ warn: 8000, limit: 10_000 });

/** Empty where the site declares nothing of power. */
export function supplySection(plan: Plan, naming: Naming): string {
  const supply = plan.supply();
  if (!supply.isDeclared) return '';
  const { total } = supply;
  const sum =
    `${outageWords(plan)} From the mains: ${aboutWatts(total.mean)} on average, ${aboutWatts(total.most)} at most; ` +
    `${Math.round(kilowattHours(total))} kWh in a year.`;
  return [upsTable(plan, naming), camerasTable(plan, naming), devicesTable(plan, naming, sum)].join('');
}

function upsTable(plan: Plan, naming: Naming): string {
  const share = (part: number, whole: number | undefined): Cell =>
    shareCell(whole === undefined || whole === 0 ? undefined : part / whole, RATING);
  return table({
    title: 'UPS',
    note: `At most. By classes: if each powered device took what its class may. ${signWords(RATING)}`,
    head: ['UPS', 'Load', 'Of its watts', 'Apparent', 'Of its VA', 'Lasts', 'By classes', 'Cameras'],
    rows: plan.supply().upses.map((figures) => {
      const { device, ups, load, apparent, runtime: time, runtimeByClass, undeclared } = figures;
      const more = undeclared.length === 0 ? '' : ' + ?';
      return {
        cells: [
          { html: naming({ names: 'devices', name: device.name }) },
          figure(`${aboutWatts(load)}${more}`),
          share(load, ups.ratedPower),
          figure(`${voltAmperes(apparent)}${more}`),
          share(apparent, ups.rated),
          figure(time === undefined ? '?' : runtime(time)),
          figure(runtimeByClass === undefined ? '?' : runtime(runtimeByClass)),
          figure(`${camerasOn(plan, figures).length} of ${plan.cameraRuntimes().length}`),
        ],
      };
    }),
  });
}

function camerasTable(plan: Plan, naming: Naming): string {
  if (plan.supply().upses.length === 0) return '';
  const lives = plan.cameraRuntimes();
  const turning = lives.some(({ turns }) => turns.length > 0);
  return table({
    title: 'Cameras without mains',
    note: `A camera goes on while all that it needs has power.${turning ? ` ${sentence(TURN_NOTE)}` : ''}`,
    head: ['Camera', 'Lasts', ...(turning ? ['Another way'] : []), 'Ends at', 'Needs'],
    rows: lives.map(({ camera, lasts, chain, endsAt, turns }) => ({
      cells: [
        { html: naming({ names: 'devices', name: camera.name }) },
        figure(chain.length === 0 ? 'no receiver' : lastsWords(lasts)),
        ...(turning ? [text(turnsWords(turns))] : []),
        endsAt === undefined ? text('') : { html: naming({ names: 'devices', name: endsAt.name }) },
        namesCell(
          naming,
          'devices',
          chain.map(({ name }) => name),
        ),
      ],
    })),
  });
}

function sentence(note: string): string {
  return `${note.slice(0, 1).toUpperCase()}${note.slice(1)}.`;
}

function devicesTable(plan: Plan, naming: Naming, sum: string): string {
  const { feeding, power, total } = plan.supply();
  return table({
    title: 'Power',
    note: sum,
    head: ['Device', 'Fed from', 'Own', 'With all on it', 'Of the site'],
    rows: plan.site.devices
      .filter((device) => takesPower(plan, device))
      .map((device) => {
        const { own, basis, taken, undeclared } = power(device);
        const fed = feeding.of(device);
        return {
          cells: [
            { html: naming({ names: 'devices', name: device.name }) },
            fed.by === 'mains'
              ? text(fed.isDeclared ? 'mains' : 'mains (assumed)')
              : { html: naming({ names: 'devices', name: fed.device.name }) },
            figure(ownWattsWords(basis, own.most)),
            figure(taken.most === 0 ? '?' : `${aboutWatts(taken.most)}${undeclared.length === 0 ? '' : ' + ?'}`),
            figure(total.most === 0 || taken.most === 0 ? '' : percent(taken.most, total.most)),
          ],
        };
      }),
    after: [...ASSUMPTIONS.map((one) => `Assumed where undeclared: ${one}`), ...CAUTIONS]
      .map((one) => `<p class="note">${html(one)}</p>\n`)
      .join(''),
  });
}
