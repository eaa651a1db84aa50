/** The devices in each rack, and its free units. */

import type { Plan } from '../../plan.ts';
import { kilograms, millimetres } from '../../text/words.ts';
import { freeUnitsWords, placeWords, weightWords } from '../answer/rack.ts';
import { type Naming, type Row, figure, table, text } from './cells.ts';

export function racksSection({ racks }: Plan, naming: Naming): string {
  return table({
    title: 'Racks',
    note: 'A unit is 44.45 mm high (IEC 60297). Earthing and mains in a rack: local codes and licensed practice decide. Lift nothing heavy alone.',
    head: ['Rack', 'Units', 'Depth', 'Weight'],
    rows: racks.flatMap((figures): Row[] => {
      const { rack, placed, elsewhere, weight, unweighed } = figures;
      const row = ({ name, mounting: { depth, weight: own } }: (typeof elsewhere)[number], units: string): Row => ({
        cells: [
          { html: naming({ names: 'devices', name }) },
          text(units),
          figure(depth === undefined ? '?' : millimetres(depth)),
          figure(own === undefined ? '?' : kilograms(own)),
        ],
        part: true,
      });
      return [
        {
          cells: [
            { html: naming({ names: 'racks', name: rack.name }) },
            text(freeUnitsWords(figures)),
            figure(rack.depth === undefined ? '?' : millimetres(rack.depth)),
            figure(weightWords(weight, unweighed.length > 0, rack.bears) ?? '?'),
          ],
        },
        ...placed.map((one) => row(one.device, placeWords(one))),
        ...elsewhere.map((device) => row(device, '?')),
      ];
    }),
  });
}
