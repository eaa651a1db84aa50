/**
 * Figures at the ends of lines: what a stream takes, how full a cable is, how long a volume lasts, where a range ends.
 */

import { formatAddress, parseAddress } from '../standards/ipv4.ts';
import { bitRate, bitRateUpTo, bytes, days, list, percent } from '../text/words.ts';
import type { Checked } from '../lint/check.ts';
import { type Item, type Place, contentOf, placeOf } from '../site/item.ts';
import { type SiteText, pieceStart } from '../site/folder.ts';
import { portNames } from '../site/port-names.ts';
import { type Port, portName } from '../site/model.ts';
import { type Link, oppositePort } from '../network/link.ts';
import { isLinkLoaded, linkAt } from './link-at.ts';
import { dataAt, isMapping, textAt } from '../text/syntax.ts';

export interface Hint {
  /** The empty place where the hint is shown. */
  readonly at: Place;
  readonly label: string;
  readonly tooltip: string;
}

export interface HintKinds {
  readonly streams: boolean;
  readonly cables: boolean;
  /** The peak load from which a cable has a hint, in per cent of its speed. */
  readonly cablesFrom: number;
  readonly volumes: boolean;
  readonly ranges: boolean;
}

/** Hints between two offsets of the file. */
export function inlayHints(checked: Checked, file: SiteText, start: number, end: number, kinds: HintKinds): Hint[] {
  const hints: Hint[] = [];
  for (const piece of file.read) {
    const from = pieceStart(file, piece);
    if (from > end || from + piece.text.length < start) continue;
    for (const item of contentOf(piece).items) hints.push(...hintsOf(checked, item, kinds));
  }
  return hints;
}

function hintsOf(checked: Checked, item: Item, kinds: HintKinds): Hint[] {
  switch (item.section) {
    case 'streams':
      return kinds.streams ? stream(checked, item) : [];
    case 'cables':
      return kinds.cables ? cable(checked, item, kinds.cablesFrom) : [];
    case 'volumes':
      return kinds.volumes ? volume(checked, item) : [];
    case 'devices':
      return kinds.ranges ? ranges(item) : [];
    default:
      return [];
  }
}

/** The end of the line that a place of the item ends in. */
function endOfLine({ piece }: Item, end: number): Place {
  const newline = piece.text.indexOf('\n', end);
  const lineEnd = newline === -1 ? piece.text.length : newline;
  const at = piece.text.charAt(lineEnd - 1) === '\r' ? lineEnd - 1 : lineEnd;
  return { piece, start: at, end: at };
}

function besideName(item: Item): Place {
  return endOfLine(item, item.key?.end ?? item.node.start);
}

function stream({ plan: { site, network } }: Checked, item: Item): Hint[] {
  const own = site.streamByName.get(item.name);
  if (own?.item !== item) return [];
  const { nominal, peak } = network.rates(own).untagged.line;
  if (peak === 0) return [];
  const { reaches } = network.delivery(own);
  return [
    {
      at: besideName(item),
      label: bitRateUpTo(nominal, peak),
      tooltip:
        'One copy on the line, with its headers, preamble and gaps.\n' +
        (reaches.length === 0 ? 'It reaches nobody.' : `It reaches ${list(reaches)}.`),
    },
  ];
}

function cable({ plan }: Checked, item: Item, from: number): Hint[] {
  const link = linkAt(plan, item);
  if (link?.capacity === undefined) return [];
  const at = endOfLine(item, placeOf(item, ['to']).end);
  if (!isLinkLoaded(plan, link))
    return link.blocked === undefined ? [] : [{ at, label: 'idle', tooltip: 'Spanning tree keeps it idle.' }];
  const { a, b, capacity } = link;
  const peak = (out: Port): number => plan.network.load(link, out).line.peak;
  const fuller = peak(a) >= peak(b) ? a : b;
  if (peak(fuller) * 100 < from * capacity) return [];
  return [
    {
      at,
      label: `${fuller === a ? '→' : '←'} ${percent(peak(fuller), capacity)} of ${bitRate(capacity)}`,
      tooltip: [a, b].map((out) => directionWords(link, out, peak(out), capacity)).join('\n'),
    },
  ];
}

function directionWords(link: Link, out: Port, peak: number, capacity: number): string {
  const ends = `${portName(out)} → ${portName(oppositePort(link, out))}`;
  return `${ends}: ${bitRate(peak)} at peak, ${percent(peak, capacity)} of ${bitRate(capacity)}`;
}

function volume({ plan: { site, storage } }: Checked, item: Item): Hint[] {
  const own = site.volumeByName.get(item.name);
  const figures = own?.item === item ? storage.on(own) : undefined;
  if (figures?.daysUntilFull === undefined) return [];
  return [
    {
      at: besideName(item),
      label: `${days(figures.daysUntilFull)} of footage`,
      tooltip: `${bytes(figures.bytesPerDay)} a day. Then it is full, if nothing is deleted.`,
    },
  ];
}

/** The address that the last port of a range has; several ranges may be in one line. */
function ranges(item: Item): Hint[] {
  const ports = dataAt(item.data, ['ports']);
  if (!isMapping(ports)) return [];
  return Object.entries(ports).flatMap(([key, port]) => {
    const names = portNames(key);
    const last = names.at(-1);
    if (names.length < 2 || last === undefined || !isMapping(port)) return [];
    const legs = isMapping(port['addresses']) ? Object.keys(port['addresses']) : [];
    const keyPaths = [['ports', key, 'address'], ...legs.map((vlan) => ['ports', key, 'addresses', vlan])];
    return keyPaths.flatMap((keyPath) => {
      const first = parseAddress(textAt(item.data, keyPath) ?? '');
      if (first === undefined) return [];
      return [
        {
          at: endOfLine(item, placeOf(item, keyPath).end),
          label: `${last}: ${formatAddress(first + names.length - 1)}`,
          tooltip: `Each of the ${names.length} ports ${key} has an address of its own, counted up from ${formatAddress(first)}.`,
        },
      ];
    });
  });
}
