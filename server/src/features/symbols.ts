/** The outline of a file, and the search for names of a site. */

import { type Node, dataAt, keyText } from '../text/syntax.ts';
import { type SiteText, placeInFile, pieceStart } from '../site/folder.ts';
import { type Item, type Place, contentOf, placeOf } from '../site/item.ts';
import type { Site } from '../site/model.ts';
import { type SectionName, SECTIONS, sectionOf } from '../site/shape.ts';

export interface SymbolNode {
  readonly name: string;
  readonly kind: 'section' | SectionName | 'ports' | 'key';
  readonly detail: string;
  /** The whole item, and its name alone; both in the same file. */
  readonly whole: Place;
  readonly at: Place;
  readonly children: readonly SymbolNode[];
}

/** Sections, their items, and the ports of devices. */
export function documentSymbols(file: SiteText): SymbolNode[] {
  const sections: { name: string; head: Place; end: number; items: SymbolNode[] }[] = file.cut.headers.flatMap(
    ({ section, start, end }) =>
      sectionOf(section) === undefined
        ? []
        : [{ name: section, head: placeInFile(file, { start, end }), end, items: [] }],
  );
  const inOrder = (a: (typeof sections)[number], b: (typeof sections)[number]): number => a.head.start - b.head.start;
  const headed = [...sections];
  let at = 0;
  for (const piece of file.read) {
    const { items, tree } = contentOf(piece);
    const start = pieceStart(file, piece);
    if (piece.role === 'item') {
      while ((headed[at + 1]?.head.start ?? Infinity) <= start) at++;
      const section = headed[at];
      for (const item of items) section?.items.push(itemSymbol(item));
      if (section !== undefined && items.length > 0) section.end = start + piece.text.trimEnd().length;
      continue;
    }
    if (tree.root?.kind !== 'mapping') continue;
    for (const { key, value } of tree.root.entries) {
      const section = sectionOf(keyText(key));
      if (section === undefined) continue;
      const own = items.filter((item) => item.section === section);
      const head = placeInFile(file, { start: start + key.start, end: start + key.end });
      sections.push({
        name: section,
        head,
        end: start + Math.max(key.end, value.end),
        items: own.map(itemSymbol),
      });
    }
  }
  return sections.sort(inOrder).map(({ name, head, end, items }) => ({
    name,
    kind: 'section',
    detail: '',
    at: head,
    whole: { ...head, end: Math.max(end, head.end) },
    children: items,
  }));
}

function itemSymbol(item: Item): SymbolNode {
  const at = placeOf(item, [], item.key === undefined ? 'value' : 'key');
  const whole = placeOf(item, [], 'entry');
  return {
    name: nameOf(item),
    kind: SECTIONS[item.section] === 'fixed' ? 'key' : item.section,
    detail: detailOf(item),
    whole,
    at: within(at, whole),
    children: ports(item),
  };
}

/** The item's name; a cable is named by its ends. */
function nameOf(item: Item): string {
  if (item.name !== '') return item.name;
  return `${textOf(item, 'from') ?? '?'} – ${textOf(item, 'to') ?? '?'}`;
}

function detailOf(item: Item): string {
  switch (item.section) {
    case 'vlans':
      return textOf(item, 'subnet') ?? '';
    case 'racks': {
      const units = textOf(item, 'units');
      return units === undefined ? '' : `${units} U`;
    }
    case 'devices':
      return textOf(item, 'kind') ?? '';
    case 'cables':
      return textOf(item, 'type') ?? '';
    case 'streams':
      return textOf(item, 'group') ?? textOf(item, 'source') ?? '';
    case 'traffic':
      return `${textOf(item, 'from') ?? '?'} to ${textOf(item, 'to') ?? '?'}`;
    case 'volumes':
      return textOf(item, 'capacity') ?? '';
    case 'recordings':
      return textOf(item, 'stream') ?? '';
    default:
      return '';
  }
}

function textOf({ data }: Item, key: string): string | undefined {
  const value = dataAt(data, [key]);
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
}

function ports(item: Item): SymbolNode[] {
  if (item.section !== 'devices' || item.node.kind !== 'mapping') return [];
  const under = item.node.entries.find(({ key, merged }) => !merged && keyText(key) === 'ports')?.value;
  if (under?.kind !== 'mapping') return [];
  return under.entries
    .filter(({ merged }) => !merged)
    .map(({ key, value, start, end }) => ({
      name: keyText(key),
      kind: 'ports',
      detail: scalarUnder(value, 'vlan') ?? scalarUnder(value, 'address') ?? '',
      at: { piece: item.piece, start: key.start, end: key.end },
      whole: { piece: item.piece, start, end: Math.max(end, key.end) },
      children: [],
    }));
}

function scalarUnder(node: Node, key: string): string | undefined {
  const value = node.kind === 'mapping' ? node.entries.find((entry) => keyText(entry.key) === key)?.value : undefined;
  return value?.kind === 'scalar' ? String(value.value ?? '') : undefined;
}

/** The part of `at` inside `whole`: a symbol's name must lie within it, even in half-typed text. */
function within(at: Place, whole: Place): Place {
  return { ...at, start: Math.max(at.start, whole.start), end: Math.min(Math.max(at.end, whole.start), whole.end) };
}

export interface NamedPlace {
  readonly name: string;
  readonly kind: SymbolNode['kind'];
  readonly detail: string;
  readonly at: Place;
}

/** Things of the site whose name has the letters of `query` in their order; ports once a `/` is typed. */
export function siteSymbols(site: Site, query: string): NamedPlace[] {
  const letters = query.toLowerCase();
  const found: NamedPlace[] = [];
  for (const item of site.items) {
    const kind = item.section;
    if (SECTIONS[kind] === 'fixed') continue;
    if (SECTIONS[kind] === 'map' && hasInOrder(item.name, letters))
      found.push({ name: item.name, kind, detail: detailOf(item), at: placeOf(item, [], 'key') });
    if (kind !== 'devices' || !letters.includes('/')) continue;
    for (const port of ports(item)) {
      const name = `${item.name}/${port.name}`;
      if (hasInOrder(name, letters)) found.push({ name, kind: 'ports', detail: port.detail, at: port.at });
    }
  }
  return found;
}

function hasInOrder(name: string, letters: string): boolean {
  let at = 0;
  for (const character of name.toLowerCase()) if (character === letters.charAt(at)) at++;
  return at >= letters.length;
}
