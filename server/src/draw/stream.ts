/**
 * The way of a stream: camera, server, group, screens, and only the links that carry it.
 *
 * One picture in one file; its branches and words are in `stream/`.
 */

import { oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { deviceAnswer } from '../report/answer/device.ts';
import { streamAnswer } from '../report/answer/stream.ts';
import { rateWords } from '../report/answer/words.ts';
import { isRateKnown } from '../site/media.ts';
import { type Device, type Stream, portName } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';
import {
  type Drawing,
  type DrawingKind,
  type Look,
  type Mark,
  type Row,
  type Thing,
  type DrawingOptions,
  deviceNamed,
  portNamed,
  streamNamed,
} from './drawing.ts';
import { type Hop, type Onward, type Sent, type StreamStop, sentOf } from './stream/branch.ts';
import { addressWords, hopWords, missedWords, saidOf, whatFor } from './stream/way-words.ts';
import { BUS, type Branch, INDENT, LEVEL, type Lead, type PlacedBranch, ROUND, leadsOf, placed } from './tree.ts';
import { widthOf, words, wrapped } from './words.ts';

export const streamWay: DrawingKind = {
  kind: 'stream',
  title: 'Way of a stream',
  summary: 'from the camera to the screens: each link that carries it, whom it reaches, and where it ends',
  subjects: ({ site }) => {
    const sent = site.streams.filter((stream) => senderOf(site, stream) !== undefined);
    const sources = sent.filter(({ carries: carried }) => carried === undefined).flatMap(({ source }) => source ?? []);
    return [...new Set([...sent.map(({ name }) => name), ...sources])];
  },
  draw(plan, subject, wanted) {
    const stream = plan.site.streamByName.get(subject);
    return stream === undefined ? ofSource(plan, subject, wanted) : ofStream(plan, stream, wanted);
  },
};

/** What it carries comes in front of it. */
function ofStream(plan: Plan, stream: Stream, wanted: DrawingOptions): Drawing {
  const { site } = plan;
  const chain = [stream];
  for (let at = stream; at.carries !== undefined;) {
    const next = site.streamByName.get(at.carries);
    if (next === undefined || chain.includes(next) || senderOf(site, next) === undefined) break;
    chain.unshift(next);
    at = next;
  }
  const senderAt = (index: number): Device | undefined => {
    const one = chain[index];
    return one === undefined ? undefined : senderOf(site, one);
  };
  const shown = new Set<Stream>();
  const onward: Onward = (receiver, from) => {
    const index = chain.indexOf(from) + 1;
    const next = chain[index];
    if (next === undefined || senderAt(index) !== receiver || shown.has(next)) return [];
    shown.add(next);
    return [{ stream: next, only: senderAt(index + 1) }];
  };
  // What does not come to who sends it on is drawn for itself, and the rest below it.
  const roots = chain.flatMap((one, index) => {
    const sender = senderAt(index);
    if (shown.has(one) || sender === undefined) return [];
    shown.add(one);
    return [sendingStop(sender, [sentOf(plan, one, onward, senderAt(index + 1))])];
  });
  return drawn(plan, `Way of ${stream.name}`, roots, wanted);
}

/** All that a source sends, and what is made of it. */
function ofSource(plan: Plan, name: string, wanted: DrawingOptions): Drawing {
  const { site } = plan;
  const own = site.streams.filter(({ source, carries: carried }) => source === name && carried === undefined);
  const [first] = own;
  const sender = first === undefined ? undefined : senderOf(site, first);
  if (sender === undefined) throw new Error(`${name} sends no stream of this site`);
  const shown = new Set(own);
  const onward: Onward = (receiver, from) =>
    site.streams.flatMap((stream) => {
      if (stream.carries !== from.name || senderOf(site, stream) !== receiver || shown.has(stream)) return [];
      shown.add(stream);
      return [{ stream }];
    });
  const sends = own.map((stream) => sentOf(plan, stream, onward));
  return drawn(plan, `What ${name} sends`, [sendingStop(sender, sends)], wanted);
}

function sendingStop(device: Device, sends: readonly Sent[]): StreamStop {
  return { device, role: 'sends', missed: undefined, hops: [], lost: [], sends };
}

/** A box of the picture. */
type Piece =
  | {
      readonly piece: 'stop';
      readonly stop: StreamStop;
      readonly by: Hop | undefined;
      readonly lines: readonly string[];
    }
  | { readonly piece: 'sent'; readonly sent: Sent; readonly lines: readonly string[] };

const MARGIN = 16;
const NAME = 13;
const SMALL = 11;
const HEAD = 24;
const LINE = 15;
/** Least and greatest width of a box. */
const NARROW = 96;
const WIDE = 230;
const PAD = 10;
/** What is wider is not seen at once. */
const SIGHT = 1280;

function drawn(plan: Plan, title: string, roots: readonly StreamStop[], wanted: DrawingOptions): Drawing {
  const tree = placed(
    roots.map((root) => stopBranch(plan, root, undefined, wanted)),
    MARGIN,
    MARGIN,
    SIGHT,
  );
  const marks: Mark[] = [];
  const rows: Row[] = [];
  for (const root of tree.roots) paint({ plan, wanted, isFolded: tree.isFolded, marks, rows }, root);
  return {
    title,
    description: summaryOf(plan, roots, wanted),
    width: tree.right + MARGIN,
    height: tree.bottom + MARGIN,
    marks,
    tables: [{ title: 'The way, hop by hop', head: ['Stream', 'From', 'To', 'VLAN', 'Rate', 'What for'], rows }],
  };
}

function summaryOf(plan: Plan, roots: readonly StreamStop[], { rate }: DrawingOptions): string {
  const all: Sent[] = [];
  const visitStop = (stop: StreamStop): void => {
    for (const sent of stop.sends) visitSent(sent);
    for (const hop of stop.hops) visitStop(hop.to);
    for (const lost of stop.lost) visitStop(lost);
  };
  const visitSent = (sent: Sent): void => {
    all.push(sent);
    for (const hop of sent.hops) visitStop(hop.to);
    for (const lost of sent.lost) visitStop(lost);
  };
  for (const root of roots) visitStop(root);
  const said = all.map(({ stream }) => `${stream.name}: ${streamAnswer(plan, stream)}`);
  return `${said.join('; ')}. Rates on the line, ${rate === 'peak' ? 'at peak' : 'as usual'}; dotted: nobody there asked for it.`;
}

function stopBranch(plan: Plan, stop: StreamStop, by: Hop | undefined, wanted: DrawingOptions): Branch<Piece> {
  const { device, sends, hops, lost } = stop;
  const said = saidOf(plan, stop, by);
  const lines = said.flatMap((one) => wrapped(one, WIDE - 2 * PAD, SMALL));
  return {
    value: { piece: 'stop', stop, by, lines },
    ...sizeOf(device.name, lines),
    lead: by === undefined ? (stop.missed === undefined ? 0 : 2 * BUS + 24) : leadFor(plan, by, wanted),
    said: by === undefined ? 0 : 2,
    next: nextOf(plan, hops, lost, wanted),
    below: sends.map((sent) => sentBranch(plan, sent, wanted)),
  };
}

function sentBranch(plan: Plan, sent: Sent, wanted: DrawingOptions): Branch<Piece> {
  const { stream, hops, lost, toItself } = sent;
  const rate = rateWords(plan.network.rates(stream).untagged.line, isRateKnown(plan.site, stream));
  const said = [
    addressWords(stream),
    rate,
    ...(toItself ? ['also to itself'] : []),
    ...(hops.length + lost.length === 0 && !toItself ? ['nobody receives it'] : []),
  ];
  const lines = said.flatMap((one) => wrapped(one, WIDE - 2 * PAD, SMALL));
  return {
    value: { piece: 'sent', sent, lines },
    ...sizeOf(stream.name, lines),
    lead: 0,
    said: 0,
    next: nextOf(plan, hops, lost, wanted),
    below: [],
  };
}

/** To receivers first, then those that get nothing, and last what nobody asked for. */
function nextOf(
  plan: Plan,
  hops: readonly Hop[],
  lost: readonly StreamStop[],
  wanted: DrawingOptions,
): Branch<Piece>[] {
  const all = hops.map((hop) => ({ hop, branch: stopBranch(plan, hop.to, hop, wanted) }));
  const of = (isUnasked: boolean): Branch<Piece>[] =>
    all.flatMap(({ hop, branch }) => ((hop.leadsTo === 'nobody') === isUnasked ? [branch] : []));
  return [...of(false), ...lost.map((one) => stopBranch(plan, one, undefined, wanted)), ...of(true)];
}

function sizeOf(name: string, lines: readonly string[]): { width: number; height: number } {
  const needed = Math.max(widthOf(name, NAME, true), ...lines.map((line) => widthOf(line, SMALL)));
  const width = Math.min(WIDE, Math.max(NARROW, needed + 2 * PAD));
  return { width, height: HEAD + lines.length * LINE + 8 };
}

function leadFor(plan: Plan, hop: Hop, wanted: DrawingOptions): number {
  const { over, under } = hopWords(plan, hop, wanted);
  return BUS + 22 + Math.max(widthOf(over, SMALL), widthOf(under, SMALL));
}

interface Painting {
  readonly plan: Plan;
  readonly wanted: DrawingOptions;
  readonly isFolded: boolean;
  readonly marks: Mark[];
  readonly rows: Row[];
}

/** The box, then line and box of each that follows. */
function paint(on: Painting, box: PlacedBranch<Piece>): void {
  on.marks.push(boxThing(on.plan, box));
  const { leads, foot } = leadsOf(box, on.isFolded);
  for (const lead of leads) {
    paintHop(on, lead);
    paint(on, lead.to);
  }
  let from = foot;
  for (const below of box.below) {
    const [x, y] = [box.x + INDENT / 2, below.y + LEVEL];
    const points = [
      { x, y: from },
      { x, y },
      { x: below.x, y },
    ];
    on.marks.push({ mark: 'line', points, look: 'main', round: ROUND });
    from = y - ROUND;
    paint(on, below);
  }
}

function paintHop(
  { plan, wanted, marks, rows }: Painting,
  { to, points, left, room, first, second }: Lead<Piece>,
): void {
  if (to.value.piece === 'sent') return;
  const { stop, by } = to.value;
  if (by === undefined) {
    marks.push({ mark: 'line', points, look: 'lost', round: ROUND, arrow: true });
    rows.push(lostRow(stop));
    return;
  }
  const look: Look = by.leadsTo === 'receiver' ? 'main' : by.leadsTo === 'end' ? 'plain' : 'unwanted';
  const { over, under, vlan } = hopWords(plan, by, wanted);
  const maxWidth = Math.min(room, WIDE);
  const into = portName(oppositePort(by.link, by.out));
  marks.push({
    mark: 'thing',
    at: portNamed(portName(by.out)),
    role: 'link',
    label: `${portName(by.out)} to ${into}: ${by.stream.name}, ${over}, ${vlan}`,
    marks: [
      { mark: 'line', points, look, round: ROUND, arrow: true },
      words(over, left, first, { size: SMALL, maxWidth }),
      words(under, left, second, { size: SMALL, look: 'quiet', maxWidth }),
    ],
  });
  rows.push({
    things: [portNamed(portName(by.out)), deviceNamed(stop.device.name)],
    cells: [
      { names: [streamNamed(by.stream.name)] },
      { names: [portNamed(portName(by.out))] },
      { names: [portNamed(into)] },
      vlan,
      { figure: over },
      whatFor(plan, by, stop),
    ],
  });
}

function lostRow({ device, missed }: StreamStop): Row {
  const own = deviceNamed(device.name);
  return {
    things: [own],
    cells: [
      missed === undefined ? '' : { names: [streamNamed(missed.stream.name)] },
      '',
      { names: [own] },
      '',
      '',
      missed === undefined ? '' : `gets nothing: ${missedWords(device, missed)}`,
    ],
  };
}

function boxThing(plan: Plan, { value, x, y, width, height }: PlacedBranch<Piece>): Thing {
  const { lines } = value;
  const maxWidth = width - 2 * PAD;
  const text = (name: string): Mark[] => [
    words(name, x + PAD, y + 19, { size: NAME, strong: true, maxWidth }),
    ...lines.map((line, index) =>
      words(line, x + PAD, y + HEAD + 11 + index * LINE, { size: SMALL, look: 'quiet', maxWidth }),
    ),
  ];
  const box = (look: Look, round: number): Mark => ({ mark: 'box', x, y, width, height, look, round });
  if (value.piece === 'sent') {
    const { stream } = value.sent;
    return {
      mark: 'thing',
      at: streamNamed(stream.name),
      role: 'stream',
      label: `${stream.name}: ${streamAnswer(plan, stream)}`,
      marks: [box('main', 14), ...text(stream.name)],
    };
  }
  const { stop, by } = value;
  const { device, role } = stop;
  const looks: Readonly<Record<StreamStop['role'], Look>> = {
    'sends': 'plain',
    'passes': 'plain',
    'receives': 'plain',
    'gets it unasked': 'unwanted',
    'does not take it': 'unwanted',
    'gets nothing': 'bad',
  };
  return {
    mark: 'thing',
    at: deviceNamed(device.name),
    role: device.kind ?? 'device',
    label: `${device.name}: ${deviceAnswer(plan, device)}`,
    marks: [box(by?.leadsTo === 'nobody' ? 'unwanted' : looks[role], 4), ...text(device.name)],
  };
}
