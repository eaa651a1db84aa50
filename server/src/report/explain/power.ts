/** The power that a switch sets aside for the devices that it feeds. */

import type { PoeFigures } from '../../network/poe.ts';
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

export function drawExplained({ device, budget, allotted, feeds }: PoeFigures): Explanation {
  const lines = inPortOrder(feeds, ({ from }) => from).map(
    ({ from, type, to, class: own, allotted: ofPort }): ExplanationLine => {
      const bound =
        ofPort < own.pseMilliwatts ? `, of which the port gives ${watts(portTypes[type].pseMilliwatts)} at most` : '';
      return {
        label: portName(from),
        cells: [power(ofPort)],
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
          { label: allotted > budget ? 'over' : 'left', cells: [power(Math.abs(budget - allotted))] },
        ];
  return {
    answer: answer(
      `${watts(allotted)} of ${budget === undefined ? '?' : watts(budget)}`,
      budget === undefined ? undefined : `${watts(Math.abs(budget - allotted))} ${allotted > budget ? 'over' : 'left'}`,
    ),
    title: `${device.name}: power over Ethernet`,
    columns: [],
    lines,
    total: { label: 'draw', cells: [power(allotted)] },
    after,
  };
}
