/** Figures beside the text: what a stream takes, how full a cable is, how long a volume lasts, where a range ends. */

import { formatAddress, parseAddress } from '../standards/ipv4.ts';
import { bitRate, days, percent } from '../text/words.ts';
import type { Checked } from '../lint/check.ts';
import { type Item, type Place, contentOf, placeOf } from '../site/item.ts';
import { type SiteText, startOf } from '../site/folder.ts';
import type { Port } from '../site/model.ts';
import { portNames } from '../site/port-names.ts';
import { isLoaded, linkAt } from './link-at.ts';
import { dataAt, isMapping, textAt } from '../text/syntax.ts';

export interface Hint {
  /** Empty, where it is shown. */
  readonly at: Place;
  readonly label: string;
  readonly tooltip: string;
}

export interface HintKinds {
  readonly streams: boolean;
  readonly cables: boolean;
  readonly volumes: boolean;
  readonly ranges: boolean;
}

/** Hints between two offsets of the file. */
export function inlayHints(checked: Checked, file: SiteText, start: number, end: number, kinds: HintKinds): Hint[] {
  const hints: Hint[] = [];
  for (const piece of file.cut.pieces) {
    const from = startOf(file, piece);
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
      return kinds.cables ? cable(checked, item) : [];
    case 'volumes':
      return kinds.volumes ? volume(checked, item) : [];
    case 'devices':
      return kinds.ranges ? ranges(item) : [];
    default:
      return [];
  }
}

/** After the colon of the item's name. */
function afterName(item: Item): Place {
  const end = item.key?.end ?? item.node.start;
  const colon = item.piece.text.indexOf(':', end);
  const at = colon === -1 ? end : colon + 1;
  return { piece: item.piece, start: at, end: at };
}

function stream({ plan: { site, network } }: Checked, item: Item): Hint[] {
  const own = site.streamByName.get(item.name);
  const rates = own?.item === item ? network.rates(own) : undefined;
  if (rates === undefined || rates.untagged.line.peak === 0) return [];
  const { nominal, peak } = rates.untagged.line;
  const label = peak > nominal ? `${bitRate(nominal)}, at most ${bitRate(peak)}` : bitRate(nominal);
  return [
    {
      at: afterName(item),
      label,
      tooltip: 'One copy on the line: with its headers, and what Ethernet adds to each frame.',
    },
  ];
}

function cable({ plan }: Checked, item: Item): Hint[] {
  const link = linkAt(plan, item);
  if (link?.capacity === undefined) return [];
  const at = placeOf(item, ['to']);
  const end = { ...at, start: at.end };
  if (link.blocked !== undefined && !isLoaded(plan, link))
    return [{ at: end, label: 'idle', tooltip: 'Spanning tree keeps it idle.' }];
  if (!isLoaded(plan, link)) return [];
  const { a, b, capacity } = link;
  const share = (out: Port): string => percent(plan.network.load(link, out).line.peak, capacity);
  return [
    {
      at: end,
      label: `→ ${share(a)} ← ${share(b)}`,
      tooltip: `At peak, of ${bitRate(capacity)}: from → to, and back.`,
    },
  ];
}

function volume({ plan: { site, storage } }: Checked, item: Item): Hint[] {
  const own = site.volumeByName.get(item.name);
  const figures = own?.item === item ? storage.on(own) : undefined;
  if (figures?.daysUntilFull === undefined) return [];
  return [
    {
      at: afterName(item),
      label: `${days(figures.daysUntilFull)} of footage`,
      tooltip: 'Until it is full, with nothing deleted.',
    },
  ];
}

/** The address that the last port of a range has. */
function ranges(item: Item): Hint[] {
  const ports = dataAt(item.data, ['ports']);
  if (!isMapping(ports)) return [];
  return Object.entries(ports).flatMap(([key, port]) => {
    const names = portNames(key);
    if (names.length < 2 || !isMapping(port)) return [];
    const legs = isMapping(port['addresses']) ? Object.keys(port['addresses']) : [];
    const routes = [['ports', key, 'address'], ...legs.map((vlan) => ['ports', key, 'addresses', vlan])];
    return routes.flatMap((route) => {
      const first = parseAddress(textAt(item.data, route) ?? '');
      if (first === undefined) return [];
      const { piece, end } = placeOf(item, route);
      return [
        {
          at: { piece, start: end, end },
          label: `to ${formatAddress(first + names.length - 1)}`,
          tooltip: `One address for each of the ${names.length} ports.`,
        },
      ];
    });
  });
}
