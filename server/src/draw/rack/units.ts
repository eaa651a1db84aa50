/** The table of what is in each unit of a rack. */

import type { Clashes } from '../../racks/clashes.ts';
import type { Plan } from '../../plan.ts';
import { type RackFigures, type RackSide, unitWords } from '../../racks/racks.ts';
import { placeWords, rackAnswer } from '../../report/answer/rack.ts';
import type { Device } from '../../site/model.ts';
import { kilograms, millimetres } from '../../text/words.ts';
import { type Cell, type Drawing, type Name, type Row, deviceNamed } from '../drawing.ts';
import { drawingKindWords } from '../kind-words.ts';
import { faultOf, fedWords, heatWords, ownWatts } from './words.ts';

export function rackNamed(name: string): Name {
  return { names: 'racks', name };
}

export function tableOf(plan: Plan, figures: RackFigures, clashes: Clashes): Drawing['tables'][number] {
  const { rack, placed, elsewhere } = figures;
  const row = (device: Device, units: string, fault: string): Row => {
    const { depth, weight } = device.mounting;
    const known = (value: number | undefined, shown: (of: number) => string): Cell => ({
      figure: value === undefined ? '?' : shown(value),
    });
    return {
      things: [deviceNamed(device.name)],
      cells: [
        units,
        { names: [deviceNamed(device.name)] },
        device.kind === undefined ? '?' : drawingKindWords(device),
        known(depth, millimetres),
        known(weight, kilograms),
        { figure: ownWatts(plan, device) ?? (plan.supply().power(device).basis === 'none' ? '' : '?') },
        fedWords(plan, device),
        fault,
      ],
    };
  };
  const free = (side: RackSide): Row => ({
    things: [],
    cells: [runsOf(figures.free[side]), `free at the ${side}`, '', '', '', '', '', ''],
  });
  return {
    title: 'Units',
    head: ['Units', 'Device', 'Kind', 'Depth', 'Weight', 'Draws', 'Fed by', 'Remark'],
    rows: [
      {
        things: [rackNamed(rack.name)],
        cells: [
          rack.units === undefined ? '?' : `${rack.units} U`,
          { names: [rackNamed(rack.name)] },
          'rack',
          { figure: rack.depth === undefined ? '?' : millimetres(rack.depth) },
          { figure: rack.bears === undefined ? '?' : `bears ${kilograms(rack.bears)}` },
          { figure: heatWords(plan, figures) ?? '' },
          '',
          rackAnswer(figures),
        ],
      },
      ...placed.map((one) => row(one.device, placeWords(one), faultWords(faultOf(figures, clashes, one, rack.units)))),
      ...elsewhere.map((device) => row(device, '?', 'unit not said')),
      free('front'),
      free('rear'),
    ],
  };
}

function faultWords(fault: string): string {
  return fault === '' ? '' : `▲ ${fault}`;
}

/** `U 3–6, U 8`: units that follow each other as one. */
function runsOf(units: readonly number[]): string {
  const runs: { first: number; last: number }[] = [];
  for (const unit of units) {
    const run = runs.at(-1);
    if (run !== undefined && run.last === unit - 1) run.last = unit;
    else runs.push({ first: unit, last: unit });
  }
  return runs.length === 0 ? 'none' : runs.map(unitWords).join(', ');
}
