/** What a picture of the network shows, as tables. */

import { type Link, oppositePort } from '../../network/link.ts';
import { portName } from '../../site/model.ts';
import { bitRate } from '../../text/words.ts';
import { type Row, type Table, deviceNamed, portNamed } from '../drawing.ts';
import { bothLoads } from '../load.ts';
import { membershipWords } from '../vlan.ts';
import type { Boxes, NetworkBox } from './boxes.ts';
import { type Shown, headWords, stateOf, streamCountWords } from './rows.ts';

export function boxesTable(shown: Shown, { roots }: Boxes): Table {
  const all = (boxes: readonly NetworkBox[]): NetworkBox[] => boxes.flatMap((box) => [box, ...all(box.children)]);
  return {
    title: 'Boxes',
    head: ['Device', 'What it is'],
    rows: all(roots).map((box) => {
      const own = deviceNamed(box.device.name);
      return { things: [own], cells: [{ names: [own] }, headWords(shown, box).join(' · ')] };
    }),
  };
}

export function rowOf(shown: Shown, link: Link): Row {
  const { plan, wanted, loops } = shown;
  const [from, to] = [link.a, oppositePort(link, link.a)];
  const { out, into } = bothLoads(plan, link, from, wanted);
  const state = stateOf(link, loops);
  const stream = wanted.stream === undefined ? undefined : plan.site.streamByName.get(wanted.stream);
  const figure = (load: typeof out, by: typeof from): { figure: string } => ({
    figure:
      state === 'blocked' && load.rate === 0
        ? ''
        : stream === undefined
          ? `${load.sign} ${load.words} (${load.rateWords})`.trim()
          : streamCountWords(shown, link, by, stream),
  });
  return {
    things: [
      portNamed(portName(from)),
      portNamed(portName(to)),
      deviceNamed(from.device.name),
      deviceNamed(to.device.name),
    ],
    cells: [
      { names: [portNamed(portName(from))] },
      { names: [portNamed(portName(to))] },
      membershipWords(link),
      { figure: link.capacity === undefined ? '?' : bitRate(link.capacity) },
      figure(out, from),
      figure(into, to),
      state,
    ],
  };
}
