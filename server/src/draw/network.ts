/**
 * The network as a tree of boxes with the load of each link, and the links that spanning tree blocks.
 *
 * One picture in one file; its boxes, rows and tables are in `network/`.
 */

import { type Link } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { type Device, portName } from '../site/model.ts';
import { count } from '../text/words.ts';
import {
  type DrawingKind,
  type Mark,
  type Row,
  type Thing,
  type DrawingOptions,
  deviceNamed,
  portNamed,
} from './drawing.ts';
import { bothLoads } from './load.ts';
import { type Arrangement, type Standing, arranged } from './arranged.ts';
import { type Boxes, type NetworkBox, boxesOf } from './network/boxes.ts';
import {
  type BoxLine,
  type LinkFigure,
  type Shown,
  headWords,
  linesOf,
  shownOf,
  lookOfLink,
  stateOf,
} from './network/rows.ts';
import { widthOf, words, wrapped } from './words.ts';
import { boxesTable, rowOf } from './network/tables.ts';

/** With more links than this, a box lists the hosts at its ports by kind, not one by one. */
const MANY = 400;

export const networkPicture: DrawingKind = {
  kind: 'network',
  title: 'Network with its loads',
  summary: 'switches with their ports and what hangs on them, the load of each link both ways, and what is blocked',
  isOfSite: true,
  narrows: true,
  subjects: () => [],
  draw(plan, _, wanted) {
    const { links } = plan.network.topology;
    const shown = shownOf(plan, wanted, links.length > MANY);
    const boxes = boxesOf(plan);
    return {
      title: titleOf(plan, wanted),
      description: summaryOf(plan, boxes, wanted),
      ...painted(shown, boxes),
      tables: [
        {
          title: 'Links',
          head: ['From', 'To', 'VLANs', 'Speed', 'There', 'Back', 'State'],
          rows: links.map((link) => rowOf(shown, link)),
        },
        boxesTable(shown, boxes),
        ...(boxes.loose.length === 0
          ? []
          : [
              {
                title: 'Without a cable',
                head: ['Device', 'Kind'],
                rows: boxes.loose.map((device): Row => {
                  const own = deviceNamed(device.name);
                  return { things: [own], cells: [{ names: [own] }, device.kind ?? '?'] };
                }),
              },
            ]),
      ],
    };
  },
};

function titleOf({ site }: Plan, { vlan, stream }: DrawingOptions): string {
  const of = stream === undefined ? vlan : stream;
  return `Network of ${site.name ?? 'a site without a name'}${of === undefined ? '' : `: ${of}`}`;
}

function summaryOf({ network }: Plan, { across }: Boxes, { rate, stream }: DrawingOptions): string {
  const { links } = network.topology;
  const blocked = across.filter((link) => link.blocked !== undefined).length;
  const what =
    stream === undefined ? `Share of the speed ${rate === 'peak' ? 'at peak' : 'as usual'}` : `What ${stream} takes`;
  return (
    `${count(links.length, 'link')}${blocked === 0 ? '' : `, ${blocked} blocked by spanning tree`}. ` +
    `${what}: ▸ out of the port, ◂ into it. ▲ over the limit, △ over what the site warns at.`
  );
}

const NAME = 14;
const TEXT = 12;
const SMALL = 11;
const HEAD = 26;
const LINE = 15;
/** A target for a finger (WCAG 2.2, 2.5.8). */
const ROW = 24;
const PAD = 10;
const GAP = 10;
const MOST = { port: 60, name: 190, load: 100 };

/** A box with its text. */
interface Content {
  readonly box: NetworkBox;
  readonly head: readonly string[];
  readonly lines: readonly BoxLine[];
  readonly standing: Standing;
  readonly rowsAt: number;
}

interface Columns {
  readonly port: number;
  readonly name: number;
  readonly load: number;
  readonly width: number;
}

function painted(shown: Shown, { roots, across, loose }: Boxes): { width: number; height: number; marks: Mark[] } {
  const told = new Set<Link>();
  const isFirst = (link: Link): boolean => !told.has(link) && told.add(link) !== undefined;
  const lines = new Map<NetworkBox, readonly BoxLine[]>();
  const read = (box: NetworkBox): void => {
    lines.set(box, linesOf(shown, box, isFirst));
    for (const child of box.children) read(child);
  };
  for (const root of roots) read(root);
  const columns = columnsOf([...lines.values()].flat());
  const contents: Content[] = [];
  const stand = (box: NetworkBox): Standing => {
    const own = lines.get(box) ?? [];
    const head = wrapped(headWords(shown, box).join(' · '), columns.width - 2 * PAD, SMALL);
    const rowsAt = HEAD + head.length * LINE + 4;
    const rows = new Map(own.map(({ link }, index) => [link, index]));
    const rowOfChild = ({ up }: NetworkBox): number => (up === undefined ? -1 : (rows.get(up) ?? -1));
    const standing: Standing = {
      width: columns.width,
      height: rowsAt + own.length * ROW + 6,
      entry: HEAD / 2 + 3,
      children: box.children.map((child) => ({ box: stand(child), exit: rowsAt + (rowOfChild(child) + 0.5) * ROW })),
    };
    contents.push({ box, head, lines: own, standing, rowsAt });
    return standing;
  };
  const standings = roots.map(stand);
  const byDevice = new Map(contents.map((content) => [content.box.device, content]));
  const ending = (link: Link, device: Device): { box: Standing; at: number } => {
    const content = byDevice.get(device);
    if (content === undefined) throw new Error(`${device.name} has no box`);
    const row = content.lines.findIndex((line) => line.link === link);
    return { box: content.standing, at: content.rowsAt + (row + 0.5) * ROW };
  };
  const crossings = across.map((link) => ({ from: ending(link, link.a.device), to: ending(link, link.b.device) }));
  const arrangement = arranged(standings, crossings);
  const { marks: below, height, width } = looseBox(shown, loose, arrangement, columns.width);
  const byBox = new Map(contents.map((content) => [content.box, content]));
  const things: Mark[] = [];
  const paint = (box: NetworkBox): void => {
    const content = byBox.get(box);
    if (content === undefined) return;
    things.push(...boxThings(shown, content, columns, arrangement));
    for (const child of box.children) {
      const standing = byBox.get(child)?.standing;
      const points = standing === undefined ? undefined : arrangement.lines.get(standing);
      if (points !== undefined && child.up !== undefined) things.push(linkThing(shown, child.up, points));
      paint(child);
    }
  };
  for (const root of roots) paint(root);
  across.forEach((link, index) => things.push(linkThing(shown, link, arrangement.crossings[index] ?? [])));
  return { width, height, marks: [...things, ...below] };
}

function columnsOf(lines: readonly BoxLine[]): Columns {
  const widest = (texts: readonly string[], most: number, least: number): number =>
    Math.min(
      most,
      texts.reduce((widest, text) => Math.max(widest, widthOf(text, TEXT)), least),
    );
  const port = widest(
    lines.map((line) => line.port),
    MOST.port,
    24,
  );
  const name = widest(
    lines.map((line) => line.name),
    MOST.name,
    90,
  );
  const load = widest(
    lines.flatMap(({ out, into }) => [out?.words ?? '', into?.words ?? '']),
    MOST.load,
    56,
  );
  return { port, name, load, width: 2 * PAD + port + name + 2 * load + 3 * GAP };
}

function boxThings(
  { plan }: Shown,
  { box, head, lines, standing, rowsAt }: Content,
  columns: Columns,
  arrangement: Arrangement,
): Mark[] {
  const place = arrangement.places.get(standing);
  if (place === undefined) return [];
  const { x, y, width } = place;
  const { device } = box;
  const own: Thing = {
    mark: 'thing',
    at: deviceNamed(device.name),
    role: device.kind ?? 'device',
    label: `${device.name}: ${deviceAnswer(plan, device)}`,
    marks: [
      { mark: 'box', x, y, width, height: standing.height, look: 'plain', round: 6 },
      words(device.name, x + PAD, y + 20, {
        size: NAME,
        strong: true,
        maxWidth: width - 3 * PAD - 2 * (columns.load + GAP),
      }),
      ...(['▸ out', '◂ in'] as const).map((caption, index) =>
        words(caption, loadAt(x + width, columns, index), y + 20, { size: SMALL, look: 'quiet', anchor: 'end' }),
      ),
      ...head.map((line, index) =>
        words(line, x + PAD, y + HEAD + 11 + index * LINE, { size: SMALL, look: 'quiet', maxWidth: width - 2 * PAD }),
      ),
    ],
  };
  return [own, ...lines.map((line, index) => lineThing(line, columns, { x, y: y + rowsAt + index * ROW, width }))];
}

function lineThing(line: BoxLine, columns: Columns, { x, y, width }: { x: number; y: number; width: number }): Thing {
  const base = y + ROW / 2 + 3;
  const isQuiet = line.look === 'faded' || line.look === 'idle';
  const look = isQuiet ? line.look : 'plain';
  const isMarked = line.look === 'warn' || line.look === 'bad';
  const row = { x: x + 4, y: y + 1, width: width - 8, height: ROW - 2, round: 3 };
  const nameAt = x + PAD + columns.port + GAP;
  return {
    mark: 'thing',
    at: line.at,
    role: line.role,
    label: line.label,
    marks: [
      { mark: 'box', ...row, look: isMarked ? line.look : 'quiet' },
      words(line.port, x + PAD, base, { size: SMALL, look: isQuiet ? line.look : 'quiet', maxWidth: columns.port }),
      words(line.name, nameAt, base, { size: TEXT, maxWidth: columns.name, look, strong: isMarked }),
      ...[line.out, line.into].flatMap((figure, index) =>
        figure === undefined ? [] : figureMarks(figure, loadAt(x + width, columns, index), base, columns.load),
      ),
      ...(line.state === ''
        ? []
        : [
            words(line.state, x + width - PAD, base, {
              size: TEXT,
              look,
              anchor: 'end',
              maxWidth: 2 * columns.load + GAP,
            }),
          ]),
    ],
  };
}

/** Where a column of figures ends. @param right of the box */
function loadAt(right: number, { load }: Columns, index: number): number {
  return right - PAD - (1 - index) * (load + GAP);
}

/** With a bar below it, as long as the column where it is the whole. */
function figureMarks({ words: said, share }: LinkFigure, right: number, base: number, width: number): Mark[] {
  const text = words(said, right, base, { size: TEXT, maxWidth: width, anchor: 'end' });
  const place = { mark: 'box', x: right - width, y: base + 4, height: 3 } as const;
  const length = Math.min(1, share) * width;
  const rail: Mark = { ...place, width, look: 'rail' };
  return length < 0.5 ? [text, rail] : [text, rail, { ...place, width: length, look: 'gauge' }];
}

function linkThing(shown: Shown, link: Link, points: readonly { x: number; y: number }[]): Thing {
  const { plan, wanted, loops } = shown;
  const state = stateOf(link, loops);
  const there = bothLoads(plan, link, link.a, wanted);
  const usual = wanted.stream === undefined && wanted.vlan === undefined ? 'plain' : 'main';
  const look = shown.has(link) ? lookOfLink(link, state, [there.out, there.into], usual) : 'faded';
  return {
    mark: 'thing',
    at: portNamed(portName(link.a)),
    role: 'link',
    label: `${portName(link.a)} to ${portName(link.b)}: ${state === '' ? `${there.out.words} there, ${there.into.words} back` : state}`,
    marks: [{ mark: 'line', points, look, round: 8 }],
  };
}

/** Devices without a cable, at the foot. */
function looseBox(
  { plan }: Shown,
  loose: readonly Device[],
  { width, height }: Arrangement,
  least: number,
): { marks: Mark[]; width: number; height: number } {
  const wide = Math.max(width, least + 32);
  if (loose.length === 0) return { marks: [], width: wide, height };
  const across = Math.max(1, Math.floor((wide - 32) / 180));
  const cell = (wide - 32) / across;
  const top = height + HEAD;
  const marks: Mark[] = [
    words('Without a cable', 16, height + 16, { size: SMALL, look: 'quiet' }),
    ...loose.map((device, index): Thing => {
      const x = 16 + (index % across) * cell;
      const y = top + Math.floor(index / across) * (ROW + 6);
      return {
        mark: 'thing',
        at: deviceNamed(device.name),
        role: device.kind ?? 'device',
        label: `${device.name}: ${deviceAnswer(plan, device)}`,
        marks: [
          { mark: 'box', x, y, width: cell - 8, height: ROW, look: 'idle', round: 3 },
          words(device.name, x + PAD, y + 16, { size: TEXT, maxWidth: cell - 8 - 2 * PAD }),
        ],
      };
    }),
  ];
  return { marks, width: wide, height: top + Math.ceil(loose.length / across) * (ROW + 6) + 10 };
}
