/** A rack: its devices from top to bottom, its free units, and its weight. */

import { type MountedDevice, type RackFigures, unitWords } from '../../racks/racks.ts';
import { panelHeight } from '../../standards/rack.ts';
import { few, kilograms, millimetres } from '../../text/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { rackAnswer } from '../answer/rack.ts';

export function rackExplained(figures: RackFigures): Explanation {
  const { rack, placed, elsewhere, weight, unweighed } = figures;
  const fromTop = rack.numberedFrom === 'top' ? placed : placed.toReversed();
  const lines = [
    ...fromTop.map(line),
    ...elsewhere.map(({ name }) => ({ label: '', cells: [name], formula: 'its unit is undeclared' })),
  ];
  const missing =
    unweighed.length === 0 ? '' : `without ${few(unweighed.map(({ name }) => name))}, whose weight is undeclared`;
  return {
    answer: rackAnswer(figures),
    title: `rack ${rack.name}`,
    columns: [],
    lines,
    ...(weight > 0 && { total: { label: 'weight', cells: [kilograms(weight)], formula: missing } }),
    after: rack.bears === undefined ? [] : [{ label: 'bears', cells: [kilograms(rack.bears)] }],
  };
}

function line(placed: MountedDevice): ExplanationLine {
  const { device, first, last, side } = placed;
  const { depth, weight } = device.mounting;
  return {
    label: unitWords(placed),
    cells: [device.name],
    formula: [
      side === 'rear' ? 'rear' : '',
      device.kind?.replace('-', ' ') ?? '',
      `${Number(panelHeight(last - first + 1).toFixed(2))} mm high`,
      depth === undefined ? '' : `${millimetres(depth)} deep`,
      weight === undefined ? '' : kilograms(weight),
    ]
      .filter((part) => part !== '')
      .join(', '),
    source: 'IEC 60297-3-100',
  };
}
