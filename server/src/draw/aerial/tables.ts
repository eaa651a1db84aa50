/** What a picture of an aerial system shows, as tables. */

import type { Plan } from '../../plan.ts';
import { type Connector, type Device, connectorName } from '../../site/model.ts';
import { decibels, level as levelWords } from '../../text/radio-words.ts';
import { type Row, type Table, deviceNamed, portNamed } from '../drawing.ts';
import { drawingKindWords } from '../kind-words.ts';
import type { Part } from './branch.ts';
import { cableWords, remarkOf } from './words.ts';

export function pointsTable({ television: { reception } }: Plan, ends: readonly Connector[]): Table {
  const known = (value: number | undefined): { figure: string } => ({
    figure: value === undefined ? '?' : decibels(value),
  });
  const rows = ends.flatMap((at): Row[] => {
    const own = portNamed(connectorName(at));
    const points = reception.pointsAt(at);
    const systems = reception.receivers.find((one) => one.at === at)?.systems;
    if (points.length === 0)
      return [{ things: [own], cells: [{ names: [own] }, '', '', '', '', '', 'nothing arrives'] }];
    return points.map((point) => ({
      things: [own],
      cells: [
        { names: [own] },
        { names: [{ names: 'multiplexes', name: point.signal.multiplex.name }] },
        { figure: levelWords(point.signal.level) },
        known(point.carrierToNoise),
        known(point.needed),
        known(point.margin),
        remarkOf(point, systems),
      ],
    }));
  });
  return {
    title: 'Outlets and receivers',
    head: ['At', 'Multiplex', 'Level', 'C/N', 'Needed', 'Margin', 'Remark'],
    rows,
  };
}

export function amplifiersTable({ television }: Plan): Table {
  const known = (value: number | undefined, shown: (of: number) => string): { figure: string } => ({
    figure: value === undefined ? '?' : shown(value),
  });
  return {
    title: 'Amplifiers',
    head: ['Amplifier', 'Gain', 'Strongest out', 'Limit', 'Below it'],
    rows: television.amplifiers.map(({ device, strongest, limit, headroom }) => ({
      things: [deviceNamed(device.name)],
      cells: [
        { names: [deviceNamed(device.name)] },
        known(device.aerial?.gain, decibels),
        { figure: levelWords(strongest.level) },
        known(limit, levelWords),
        known(headroom, (value) => `${value < 0 ? '▲ ' : ''}${decibels(value)}`),
      ],
    })),
  };
}

/** The coax in the order of the picture. */
export function partsTable(parts: readonly Part[]): Table {
  const rows: Row[] = [];
  const visit = (part: Part, from: Device | undefined): void => {
    const { device, by, run, through } = part;
    rows.push({
      things: [device, ...through].map(({ name }) => deviceNamed(name)),
      cells: [
        { names: from === undefined ? [] : [deviceNamed(from.name)] },
        { names: [by === undefined ? deviceNamed(device.name) : portNamed(connectorName(by))] },
        drawingKindWords(device),
        run === undefined ? '' : cableWords(run).join(', '),
        { names: through.map(({ name }) => deviceNamed(name)) },
        part.isAgain ? 'see above' : '',
      ],
    });
    for (const next of part.next) visit(next, device);
  };
  for (const part of parts) visit(part, undefined);
  return { title: 'Parts', head: ['From', 'To', 'Kind', 'Coax', 'By way of', 'Remark'], rows };
}
