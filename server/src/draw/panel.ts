/** A patch panel as built: each port with what its cable runs from and to; on paper as large as the panel is. */

import type { Plan } from '../plan.ts';
import { portAnswer } from '../report/answer/port.ts';
import { type Cable, type CableEnd, type Device, type Port, portAt as portOfEnd, portName } from '../site/model.ts';
import { OPENING } from '../standards/rack.ts';
import { textAt } from '../text/syntax.ts';
import { naturally } from '../text/natural-order.ts';
import { count, metres } from '../text/words.ts';
import { type Drawing, type DrawingKind, type Mark, type Name, type Row, deviceNamed, portNamed } from './drawing.ts';
import { leastVlanWords, vlanWords } from './vlan.ts';
import { words } from './words.ts';

/** CSS pixels for a millimetre of the panel. */
const SCALE = 4;
const CELL = 76;
const MARGIN = 16;
const HEAD = 42;
const GAP = 4;
/** Ports in a row, as most panels have them. */
const IN_A_ROW = 24;
/** What fits beside each other on a sheet of A4, mm. */
const SHEET = 240;

export const panelPorts: DrawingKind = {
  kind: 'panel',
  title: 'Patch panel',
  summary: 'the ports as built: what each runs from and to, and which are free; on paper as large as the panel',
  subjects: ({ site }) => site.devices.filter(isPanel).map(({ name }) => name),
  draw(plan, subject) {
    const device = plan.site.deviceByName.get(subject);
    if (device === undefined) throw new Error(`${subject} is not a device of this site`);
    return drawn(plan, device);
  },
};

function isPanel({ kind, ports }: Device): boolean {
  return kind === 'patch-panel' && ports.length > 0;
}

function drawn(plan: Plan, device: Device): Drawing {
  const grid = gridOf(device);
  const runs = runsThrough(plan, device);
  const { columns, rows, pitch, across } = grid;
  const blocks = Math.ceil(columns / across);
  const width = across * pitch * SCALE + 2 * MARGIN;
  const block = rows * (CELL + GAP) + 18;
  const free = device.ports.filter((port) => !runs.has(port)).length;
  const answer = `${count(device.ports.length, 'port')}, ${free} free`;
  const cells = grid.ports.map((port, index) => {
    const { column, row } = grid.at(index);
    const x = MARGIN + (column % across) * pitch * SCALE;
    const y = HEAD + Math.floor(column / across) * block + row * (CELL + GAP);
    return portThing(plan, port, runs.get(port), { x, y, width: pitch * SCALE - 2 });
  });
  const isBuilt = columns >= 12 && columns <= IN_A_ROW;
  return {
    title: `Patch panel ${device.name}`,
    description:
      `${device.name}: ${answer}. ` +
      (isBuilt
        ? `On paper at its own size, ${Number(pitch.toFixed(2))} mm from port to port (${OPENING} mm for ${columns}); measure the ` +
          `panel before you cut${blocks > 1 ? ', and put the parts side by side' : ''}.`
        : 'Not at its own size, as it is not known how far its ports are apart.'),
    width,
    height: HEAD + blocks * block + MARGIN - 18,
    ...(isBuilt && { paper: width / SCALE }),
    marks: [
      {
        mark: 'thing',
        at: deviceNamed(device.name),
        role: 'patch panel',
        label: `${device.name}: ${answer}`,
        marks: [
          words(`${device.name} · ${answer}`, MARGIN, 26, { size: 14, strong: true, maxWidth: width - 2 * MARGIN }),
        ],
      },
      ...cells,
    ],
    tables: [
      {
        title: 'Ports',
        head: ['Port', 'From', 'By way of', 'To', 'VLANs', 'Cable'],
        rows: grid.ports.flatMap((port) => portRows(plan, port, runs.get(port))),
      },
    ],
  };
}

interface Grid {
  readonly ports: readonly Port[];
  readonly columns: number;
  readonly rows: number;
  /** Millimetres from port to port. */
  readonly pitch: number;
  /** Columns that are drawn side by side. */
  readonly across: number;
  at(index: number): { readonly column: number; readonly row: number };
}

/** In the order in which the panel counts them. */
function gridOf({ ports: all, grid }: Device): Grid {
  const ports = [...all].sort((a, b) => naturally(a.name, b.name));
  const rows = Math.min(ports.length, grid.rows ?? Math.ceil(ports.length / IN_A_ROW));
  const columns = Math.ceil(ports.length / rows);
  const pitch = OPENING / (columns >= 12 ? Math.min(columns, IN_A_ROW) : IN_A_ROW);
  return {
    ports,
    columns,
    rows,
    pitch,
    across: Math.min(columns, Math.floor(SHEET / pitch)),
    at: (index) =>
      grid.order === 'by-column'
        ? { column: Math.floor(index / rows), row: index % rows }
        : { column: index % columns, row: Math.floor(index / columns) },
  };
}

/** A cable that runs through a port of the panel, or ends in it. */
interface Run {
  readonly cable: Cable;
  /** Towards the switch: what the port is patched to. */
  readonly near: Stop | undefined;
  /** Panel ports on the way, in order from `near`. */
  readonly between: readonly Name[];
  readonly far: Stop | undefined;
}

interface Stop {
  readonly name: Name;
  readonly text: string;
  readonly port: Port | undefined;
}

function runsThrough({ site }: Plan, device: Device): ReadonlyMap<Port, readonly Run[]> {
  const found = new Map<Port, Run[]>();
  for (const cable of site.cables) {
    const ends = [cable.from, ...cable.through, cable.to];
    for (const end of ends) {
      if (end?.device !== device.name) continue;
      const port = portOfEnd(site, end);
      if (port === undefined) continue;
      const here = found.get(port);
      const run = runOf(site, cable);
      if (here === undefined) found.set(port, [run]);
      else here.push(run);
    }
  }
  return found;
}

/** From the end at what forwards frames. */
function runOf(site: Plan['site'], cable: Cable): Run {
  const [from, to] = [stopOf(site, cable.from), stopOf(site, cable.to)];
  const isTurned = from?.port?.forwards !== true && to?.port?.forwards === true;
  const between = cable.through.flatMap((end) => {
    const port = portOfEnd(site, end);
    return port === undefined ? [] : [portNamed(portName(port))];
  });
  return isTurned
    ? { cable, near: to, between: between.toReversed(), far: from }
    : { cable, near: from, between, far: to };
}

function stopOf(site: Plan['site'], end: CableEnd | undefined): Stop | undefined {
  if (end === undefined) return undefined;
  const port = portOfEnd(site, end);
  const device = site.deviceByName.get(end.device);
  if (device === undefined) return undefined;
  if (port === undefined || device.ports.length === 1)
    return { name: deviceNamed(device.name), text: device.name, port };
  return { name: portNamed(portName(port)), text: portName(port), port };
}

function portThing(
  plan: Plan,
  port: Port,
  runs: readonly Run[] | undefined,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): Mark {
  const [run, another] = runs ?? [];
  const maxWidth = width - 8;
  const line = (at: number, text: string, look: 'plain' | 'quiet' = 'plain'): Mark =>
    words(text, x + 4, y + at, { size: 11, maxWidth, look });
  const isTwice = another !== undefined;
  return {
    mark: 'thing',
    at: portNamed(portName(port)),
    role: 'port',
    label: `${portName(port)}: ${run === undefined ? 'free' : wayWords(run) || portAnswer(plan, port)}`,
    marks: [
      {
        mark: 'box',
        x,
        y,
        width,
        height: CELL,
        look: run === undefined ? 'idle' : isTwice ? 'bad' : 'plain',
        round: 2,
      },
      words(isTwice ? `▲ ${port.name}` : port.name, x + 4, y + 16, { size: 13, strong: true, maxWidth }),
      ...(run === undefined
        ? [line(34, 'free', 'quiet')]
        : [line(34, run.far?.text ?? '?'), line(50, run.near?.text ?? '?'), line(66, lastLine(plan, run), 'quiet')]),
    ],
  };
}

/** Its VLAN, or else the label of the cable. */
function lastLine(plan: Plan, { near, cable }: Run): string {
  const vlans = near?.port === undefined ? '' : leastVlanWords(plan, near.port);
  return vlans === '' ? (textAt(cable.item.data, ['label']) ?? '') : vlans;
}

/** `core/10 – panel-a/10 – office-pc` */
function wayWords({ near, between, far }: Run): string {
  return [near?.text ?? '?', ...between.map(({ name }) => name), far?.text ?? '?'].join(' – ');
}

function portRows(plan: Plan, port: Port, runs: readonly Run[] | undefined): Row[] {
  const own = portNamed(portName(port));
  if (runs === undefined) return [{ things: [own], cells: [{ names: [own] }, 'free', '', '', '', ''] }];
  return runs.map((run) => {
    const { cable, near, between, far } = run;
    const others = between.filter(({ name }) => name !== own.name);
    return {
      things: [own],
      cells: [
        { names: [own] },
        near === undefined ? '?' : { names: [near.name] },
        { names: others },
        far === undefined ? '?' : { names: [far.name] },
        near?.port === undefined ? '' : vlanWords(plan, near.port),
        [textAt(cable.item.data, ['label']), cable.type, cable.length === undefined ? undefined : metres(cable.length)]
          .filter((part) => part !== undefined)
          .join(', '),
      ],
    };
  });
}
