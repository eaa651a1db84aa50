/** What a picture of what feeds what shows, as a table. */

import type { Plan } from '../../plan.ts';
import { lastsWords } from '../../report/supply/words.ts';
import type { Device } from '../../site/model.ts';
import { aboutWatts } from '../../text/words.ts';
import { type Row, type Table, deviceNamed } from '../drawing.ts';
import { headLines, wattsWords } from './words.ts';

export function feedingTable(plan: Plan, shown: readonly Device[]): Table {
  return {
    title: 'What feeds what',
    head: ['Device', 'Fed from', 'Own', 'With all on it', 'Without mains', 'Battery'],
    rows: shown.map((device) => rowOf(plan, device)),
  };
}

function rowOf(plan: Plan, device: Device): Row {
  const supply = plan.supply();
  const fed = supply.feeding.of(device);
  const { own, basis, taken } = supply.power(device);
  return {
    things: [deviceNamed(device.name)],
    cells: [
      { names: [deviceNamed(device.name)] },
      fed.by === 'mains'
        ? fed.isDeclared
          ? 'mains'
          : 'mains, as nothing is said'
        : { names: [deviceNamed(fed.device.name)] },
      { figure: basis === 'undeclared' ? '?' : basis === 'none' ? '' : aboutWatts(own.most) },
      { figure: taken.most === 0 ? '' : wattsWords(plan, device) },
      { figure: supply.upses.length === 0 ? '' : lastsWords(supply.lasts(device)) },
      supply.ups(device) === undefined ? '' : headLines(plan, device).slice(1).join('; '),
    ],
  };
}
