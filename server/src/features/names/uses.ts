/** Where names are declared and used: one index for definition, references, highlights, rename and colouring. */

import { perObject } from '../../memo.ts';
import { type KeyPath, dataAt, isMapping, textAt } from '../../text/syntax.ts';
import type { Piece } from '../../text/cut.ts';
import { partOf } from '../../site/places.ts';
import type { Checked } from '../../lint/check.ts';
import { type Item, type Place, contentOf, namePlace, placeOf } from '../../site/item.ts';
import { pieceAt } from '../../site/locate.ts';
import { type SiteText, pieceStart } from '../../site/folder.ts';
import { portNames } from '../../site/port-names.ts';
import { readEnd } from '../../site/read.ts';
import { SECTIONS } from '../../site/shape.ts';
import { acceptedNames } from './accepted.ts';
import type { Named, NamedKind } from './named.ts';

export interface Use {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly part: 'key' | 'value';
  /** The things it names; a range of ports names several. An acceptance names what its rule's findings are about. */
  readonly names: readonly Named[];
  readonly isDeclaration: boolean;
  /** The part of the value that is the name; the whole value where absent. */
  readonly within?: { readonly start: number; readonly end: number };
  /** A device that stands for its only port. */
  readonly isAlone?: boolean;
  /** The rule and the text of an acceptance, resolved by the findings of that rule. */
  readonly accepts?: { readonly rule: string; readonly text: string };
}

export const usesIn = perObject((item: Item): readonly Use[] => [
  ...declarations(item),
  ...mentions(item),
  ...acceptances(item),
]);

function* declarations(item: Item): Iterable<Use> {
  const { section, name } = item;
  if (SECTIONS[section] !== 'map' || item.key === undefined) return;
  yield { item, keyPath: [], part: 'key', names: [{ kind: section as NamedKind, name }], isDeclaration: true };
  const ports = section === 'devices' ? dataAt(item.data, ['ports']) : undefined;
  if (!isMapping(ports)) return;
  for (const key of Object.keys(ports)) {
    yield {
      item,
      keyPath: ['ports', key],
      part: 'key',
      names: portNames(key).map((port) => portOf(name, port)),
      isDeclaration: true,
    };
  }
}

function* mentions(item: Item): Iterable<Use> {
  for (const mention of item.mentions) {
    if (mention.mention !== 'name') continue;
    const { keyPath, part, text, names } = mention;
    const use = { item, keyPath, part, isDeclaration: false } as const;
    if (names === 'port-end') {
      const end = readEnd(text, []);
      if (end === undefined) continue;
      const within = { start: 0, end: end.device.length };
      if (end.port === undefined) yield { ...use, names: [{ kind: 'devices', name: end.device }], isAlone: true };
      else {
        yield { ...use, names: [{ kind: 'devices', name: end.device }], within };
        yield { ...use, names: [portOf(end.device, end.port)], within: { start: within.end + 1, end: text.length } };
      }
    } else if (names === 'own-port') {
      const device = item.section === 'devices' ? item.name : textAt(item.data, ['source']);
      if (device !== undefined) yield { ...use, names: [portOf(device, text)] };
    } else yield { ...use, names: [{ kind: names, name: text }] };
  }
}

function* acceptances(item: Item): Iterable<Use> {
  if (item.section !== 'lint' || item.name !== 'accept' || !Array.isArray(item.data)) return;
  for (const [index, element] of item.data.entries()) {
    if (!isMapping(element)) continue;
    const { at, rule } = element;
    if (typeof at !== 'string' || typeof rule !== 'string') continue;
    const use = { item, keyPath: [index, 'at'], part: 'value', isDeclaration: false } as const;
    const slash = at.indexOf('/');
    if (slash === -1) yield { ...use, names: [], accepts: { rule, text: at } };
    else {
      const device = at.slice(0, slash);
      yield { ...use, names: [{ kind: 'devices', name: device }], within: { start: 0, end: slash } };
      yield { ...use, names: [portOf(device, at.slice(slash + 1))], within: { start: slash + 1, end: at.length } };
    }
  }
}

function portOf(device: string, port: string): Named {
  return { kind: 'ports', name: `${device}/${port}` };
}

/** The things that a use names, those of an acceptance by the findings of its rule. */
export function namesOf(checked: Checked, use: Use): readonly Named[] {
  return use.accepts === undefined ? use.names : acceptedNames(checked, use.accepts.rule, use.accepts.text);
}

export const placeOfUse = perObject(({ item, keyPath, part, within }: Use): Place => {
  if (keyPath.length === 0) return namePlace(item);
  if (within !== undefined) return partOf(item, keyPath, within.start, within.end);
  return placeOf(item, keyPath, part);
});

/** The name at an offset of a file: the narrowest, where one is part of another. */
export function nameAt(
  checked: Checked,
  file: SiteText,
  offset: number,
): { readonly use: Use; readonly named: Named; readonly place: Place } | undefined {
  const piece = pieceAt(file, offset);
  if (piece === undefined) return undefined;
  const at = offset - pieceStart(file, piece);
  for (const item of contentOf(piece).items) {
    for (const use of usesIn(item)) {
      const place = placeOfUse(use);
      if (at < place.start || at > place.end) continue;
      const [named] = namesOf(checked, use);
      if (named !== undefined) return { use, named, place };
    }
  }
  return undefined;
}

/** Every place that declares or uses a name; the same place once, however many aliases lead to it. */
export function usesOf(checked: Checked, named: Named): Use[] {
  const found: Use[] = [];
  const seen = new Map<Piece, Set<string>>();
  const { site } = checked.plan;
  const [device = ''] = named.name.split('/');
  const isOnly = named.kind === 'ports' && site.deviceByName.get(device)?.ports.length === 1;
  for (const item of site.items) {
    for (const use of usesIn(item)) {
      const isMeant = isOnly && use.isAlone === true && use.names[0]?.name === device;
      if (!isMeant && !hasName(namesOf(checked, use), named)) continue;
      const { piece, start, end } = placeOfUse(use);
      const ofPiece = seen.get(piece) ?? new Set<string>();
      seen.set(piece, ofPiece);
      const key = `${start} ${end}`;
      if (ofPiece.has(key)) continue;
      ofPiece.add(key);
      found.push(use);
    }
  }
  return found;
}

function hasName(names: readonly Named[], { kind, name }: Named): boolean {
  for (const own of names) if (own.name === name && own.kind === kind) return true;
  return false;
}
