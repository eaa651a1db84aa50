/** The power that a switch sets aside for the devices that it feeds. */

import type { PowerSource } from '../../network/power.ts';
import { portName } from '../../site/model.ts';
import { portTypes } from '../../standards/poe.ts';
import { watts } from '../../text/words.ts';
import { answer } from '../answer/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import type { Figure } from './figure.ts';
import { inPortOrder } from './port-order.ts';
import { POWER_CLASSES } from './sources.ts';

function power(milliwatts: number): Figure {
  return { value: milliwatts / 1000, unit: 'W' };
}

export function drawExplained({ device, budget, draw, feeds }: PowerSource): Explanation {
  const lines = inPortOrder(feeds, ({ from }) => from).map(
    ({ from, type, to, class: own, allotted }): ExplanationLine => {
      const bound =
        allotted < own.pseMilliwatts ? `, of which the port gives ${watts(portTypes[type].pseMilliwatts)} at most` : '';
      return {
        label: portName(from),
        cells: [power(allotted)],
        formula: `${portName(to)}, class ${own.class}: ${watts(own.pseMilliwatts)} at the switch${bound}`,
        source: POWER_CLASSES,
      };
    },
  );
  const after: ExplanationLine[] =
    budget === undefined
      ? []
      : [
          { label: 'budget', cells: [power(budget)], formula: 'as declared' },
          { label: draw > budget ? 'over' : 'left', cells: [power(Math.abs(budget - draw))] },
        ];
  return {
    answer: answer(
      `${watts(draw)} of ${budget === undefined ? '?' : watts(budget)}`,
      budget === undefined ? undefined : `${watts(Math.abs(budget - draw))} ${draw > budget ? 'over' : 'left'}`,
    ),
    title: `${device.name}: power over Ethernet`,
    columns: [],
    lines,
    total: { label: 'draw', cells: [power(draw)] },
    after,
  };
}
