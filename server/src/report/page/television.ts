/** Levels at outlets and receivers, and tuners. */

import type { Plan } from '../../plan.ts';
import { connectorName } from '../../site/model.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { occasionReport } from '../occasions.ts';
import { type Cell, type Naming, type Row, figure, table, text } from './cells.ts';

export function levelsSection({ television: { reception } }: Plan, naming: Naming): string {
  const points = [...reception.outlets, ...reception.receivers].flatMap((one) => one.points);
  const known = (value: number | undefined): Cell => figure(value === undefined ? '?' : decibels(value));
  return table({
    title: 'Television',
    note: 'Levels at 75 Ω; carrier to noise as it is and as it is needed. ▲ less than needed.',
    head: ['At', 'Multiplex', 'Level', 'C/N', 'Needed', 'Margin'],
    rows: points.map(({ signal, carrierToNoise, needed, margin }): Row => ({
      cells: [
        { html: naming({ names: 'ports', name: connectorName(signal.at) }) },
        { html: naming({ names: 'multiplexes', name: signal.multiplex.name }) },
        figure(level(signal.level)),
        known(carrierToNoise),
        known(needed),
        margin !== undefined && margin < 0
          ? { html: `<strong>▲ ${decibels(margin)}</strong>`, number: true }
          : known(margin),
      ],
    })),
  });
}

export function occasionsSection({ site, television: { tuning } }: Plan, naming: Naming): string {
  return table({
    title: 'Occasions',
    note: 'Each tuner takes one multiplex at a time.',
    head: ['Occasion', 'Multiplex', 'Tuner'],
    rows: site.occasions.flatMap((occasion): Row[] => {
      const { name, assigned, unmet } = occasionReport(occasion, tuning.of(occasion));
      const row = (multiplex: string, tuner: Cell, index: number): Row => ({
        cells: [
          { html: naming({ names: 'occasions', name }) },
          { html: naming({ names: 'multiplexes', name: multiplex }) },
          tuner,
        ],
        part: index > 0,
      });
      const none: Cell = { html: '<strong>▲ none left</strong>' };
      const all: (readonly [string, Cell])[] = [
        ...Object.entries(assigned).map(([multiplex, tuner]) => [multiplex, text(tuner)] as const),
        ...unmet.map((multiplex) => [multiplex, none] as const),
      ];
      return all.map(([multiplex, tuner], index) => row(multiplex, tuner, index));
    }),
  });
}
