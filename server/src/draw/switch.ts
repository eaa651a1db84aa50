/** The ports of a switch as a strip, in their order as on its front. */

import { linkEnd, oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { portAnswer } from '../report/answer/port.ts';
import { type Device, type Port, portName } from '../site/model.ts';
import { bitRate, watts } from '../text/words.ts';
import { naturally } from '../text/natural-order.ts';
import {
  type Drawing,
  type DrawingKind,
  type Mark,
  type Row,
  type Thing,
  type DrawingOptions,
  deviceNamed,
  portNamed,
} from './drawing.ts';
import { bothLoads, lookOf } from './load.ts';
import { shortVlanWords, vlanWords } from './vlan.ts';
import { widthOf, words } from './words.ts';

const PORT = { width: 124, height: 104, gap: 8 };
const MARGIN = 16;
const HEAD = 48;

export const switchPorts: DrawingKind = {
  kind: 'switch',
  title: 'Ports of a switch',
  summary: 'the ports as on its front: neighbour, VLANs, power and load of each',
  subjects: ({ site }) => site.devices.filter(hasStrip).map(({ name }) => name),
  draw(plan, subject, wanted) {
    const device = plan.site.deviceByName.get(subject);
    if (device === undefined) throw new Error(`${subject} is not a device of this site`);
    return strip(plan, device, wanted);
  },
};

function hasStrip({ bridging, ports }: Device): boolean {
  return bridging && ports.length > 1;
}

/** Ports side by side: that many are seen at once. */
const COLUMNS = 8;

function strip(plan: Plan, device: Device, wanted: DrawingOptions): Drawing {
  const ports = [...device.ports].sort((a, b) => naturally(a.name, b.name));
  const columns = Math.min(ports.length, COLUMNS);
  const rows = Math.ceil(ports.length / columns);
  const width = 2 * MARGIN + columns * (PORT.width + PORT.gap) + PORT.gap;
  const bottom = HEAD + rows * (PORT.height + PORT.gap) + PORT.gap;
  const answer = deviceAnswer(plan, device);
  const maxWidth = width - 2 * MARGIN - 2 * PORT.gap;
  const head: Mark[] = [
    { mark: 'box', x: MARGIN, y: MARGIN, width: width - 2 * MARGIN, height: bottom - MARGIN, look: 'plain', round: 6 },
    words(device.name, MARGIN + PORT.gap, MARGIN + 20, { size: 14, strong: true, maxWidth }),
  ];
  const cells = ports.map((port, index) => {
    const x = MARGIN + PORT.gap + (index % columns) * (PORT.width + PORT.gap);
    const y = HEAD + Math.floor(index / columns) * (PORT.height + PORT.gap);
    return portThing(plan, port, { x, y }, wanted);
  });
  return {
    title: `Ports of ${device.name}`,
    description: `${device.name}: ${answer}. Load ${wanted.rate === 'peak' ? 'at peak' : 'as usual'}; ▸ out of the port, ◂ into it.`,
    width,
    height: bottom + MARGIN,
    marks: [
      {
        mark: 'thing',
        at: deviceNamed(device.name),
        role: device.kind ?? 'device',
        label: `${device.name}: ${answer}`,
        marks: head,
      },
      ...cells,
    ],
    tables: [
      {
        title: 'Ports',
        head: ['Port', 'Neighbour', 'VLANs', 'Speed', 'Power', 'Out', 'In'],
        rows: ports.map((port) => portRow(plan, port, wanted)),
      },
    ],
  };
}

function portThing(plan: Plan, port: Port, { x, y }: { x: number; y: number }, wanted: DrawingOptions): Thing {
  const link = plan.network.topology.linkAt(port);
  const inner = PORT.width - 16;
  const loads = link === undefined ? undefined : bothLoads(plan, link, linkEnd(link, port), wanted);
  const isIdle = link === undefined || link.blocked !== undefined;
  const look = loads === undefined ? 'idle' : lookOf([loads.out, loads.into], isIdle ? 'idle' : 'plain');
  const line = (at: number, text: string, quiet = false): Mark =>
    words(text, x + 8, y + at, { maxWidth: inner, look: quiet ? 'quiet' : 'plain', size: quiet ? 11 : 12 });
  const number = words(port.name, x + 8, y + 19, { size: 14, strong: true, maxWidth: inner / 2 });
  const power = poeWords(plan, port);
  const marks: Mark[] = [
    { mark: 'box', x, y, width: PORT.width, height: PORT.height, look, round: 4 },
    number,
    ...(power === ''
      ? []
      : [
          words(power, x + PORT.width - 8, y + 19, {
            anchor: 'end',
            size: 11,
            look: 'quiet',
            maxWidth: inner - widthOf(port.name, 14, true) - 6,
          }),
        ]),
    line(38, shortVlanWords(plan, port), true),
    line(58, link === undefined ? 'free' : oppositePort(link, linkEnd(link, port)).device.name),
    ...(loads === undefined
      ? []
      : link?.blocked === undefined
        ? [line(78, `▸ ${loads.out.words} ${loads.out.sign}`), line(95, `◂ ${loads.into.words} ${loads.into.sign}`)]
        : [line(78, 'blocked', true)]),
  ];
  return {
    mark: 'thing',
    at: portNamed(portName(port)),
    role: 'port',
    label: `${portName(port)}: ${portAnswer(plan, port)}`,
    marks,
  };
}

function portRow(plan: Plan, port: Port, wanted: DrawingOptions): Row {
  const link = plan.network.topology.linkAt(port);
  const own = portNamed(portName(port));
  const vlans = vlanWords(plan, port);
  if (link === undefined)
    return {
      things: [own],
      cells: [{ names: [own] }, 'free', vlans, speedWords(port.speed), poeWords(plan, port), '', ''],
    };
  const far = oppositePort(link, linkEnd(link, port));
  const { out, into } = bothLoads(plan, link, linkEnd(link, port), wanted);
  const isBlocked = link.blocked !== undefined;
  const figure = (load: typeof out): { figure: string } => ({
    figure: isBlocked ? 'blocked' : `${load.sign} ${load.words} (${load.rateWords})`.trim(),
  });
  return {
    things: [own],
    cells: [
      { names: [own] },
      { names: [deviceNamed(far.device.name)] },
      vlans,
      speedWords(link.capacity),
      poeWords(plan, port),
      figure(out),
      figure(into),
    ],
  };
}

/** What the port holds ready for the device that it feeds; `PoE` where it could feed one. */
function poeWords({ poe }: Plan, port: Port): string {
  if (port.pse === undefined) return '';
  const feed = poe.find(({ device }) => device === port.device)?.feeds.find(({ from }) => from === port);
  return feed === undefined ? 'PoE' : `PoE ${watts(feed.allotted)}`;
}

function speedWords(speed: number | undefined): { figure: string } {
  return { figure: speed === undefined ? '?' : bitRate(speed) };
}
