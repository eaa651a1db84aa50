/** Declares a thing that is used but not declared, with no more than its uses show. */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import { dataAt, textAt } from '../text/syntax.ts';
import { type NamedSection, THING } from './declared.ts';
import { type Edit, type Fix, fixOf, lineBreakOf, nameText } from './edit.ts';
import { type SiteText, placeInFile } from './folder.ts';
import { type Item, fileOf, namePlace } from './item.ts';
import { type CableEnd, MOST_UNITS, type Site } from './model.ts';
import { readEnd } from './read.ts';
import { kindWords } from './shape-words.ts';

/** A name that an item uses, of a thing of the section. */
export interface Undeclared {
  readonly item: Item;
  readonly section: NamedSection;
  readonly name: string;
}

/** The new item goes below the last of its section, in the same file if it has the section; else into a new section. */
export function declaring(site: Site, files: readonly SiteText[], { item, section, name }: Undeclared): Fix[] {
  const value = valueOf(site, item, section, name);
  if (value === undefined) return [];
  const edit = added(site, files, { item, section, name }, `${nameText(name)}: ${value.text}`);
  return fixOf(`Declare ${THING[section]} ${name}${value.as === undefined ? '' : ` as ${value.as}`}`, edit);
}

interface Value {
  readonly text: string;
  readonly as?: string;
}

function valueOf(site: Site, item: Item, section: NamedSection, name: string): Value | undefined {
  switch (section) {
    case 'devices':
      return deviceOf(site, name);
    case 'vlans':
      return { text: `{id: ${freeId(site)}}` };
    case 'streams':
      return { text: streamText(site, name) };
    case 'racks':
      return { text: `{units: ${unitsNeeded(site, name)}}` };
    case 'volumes':
      return { text: volumeText(site, item) };
    default:
      return undefined;
  }
}

/** The kind follows from its uses; where only a cable names it, the kind that most cables lead to. */
function deviceOf(site: Site, name: string): Value | undefined {
  const ends = endsIn(site.cables).get(name) ?? [];
  if (ends.some(({ item }) => textAt(item.data, ['type'])?.startsWith('coax') === true)) return undefined;
  const ports = [...new Set(ends.flatMap(({ port }) => (port === undefined ? [] : [port])))];
  const kind = ends.some(({ isThrough }) => isThrough) ? 'patch-panel' : kindOf(site, name, ports.length > 0);
  const declared = ports.length === 0 ? '' : `, ports: {${ports.map((port) => `${nameText(port)}: {}`).join(', ')}}`;
  return { text: `{kind: ${kind}${declared}}`, as: kindWords(kind) };
}

function kindOf({ vlans, sections, streams }: Site, name: string, hasPorts: boolean): string {
  const { gateways, queriers } = namedIn(vlans);
  if (gateways.has(name)) return 'router';
  if (queriers.has(name)) return 'switch';
  if (hostsIn(sections.volumes).has(name)) return 'server';
  const sent = sourcesIn(streams).get(name);
  if (sent !== undefined) return sent.some(({ data }) => dataAt(data, ['carries']) !== undefined) ? 'server' : 'camera';
  return receiversIn(streams).has(name) ? 'display' : hasPorts ? 'switch' : 'camera';
}

/** A device that a cable names, declared or not. */
type End = CableEnd & { readonly item: Item; readonly isThrough: boolean };

// There may be thousands of names that are not declared, each with a fix: the uses of all are looked up once.

const endsIn = perObject((cables: Site['cables']): ReadonlyMap<string, readonly End[]> => {
  const ends = cables.flatMap(({ item, from, to, through }) =>
    [from, to, ...through].flatMap((end) =>
      end === undefined ? [] : [{ ...end, item, isThrough: through.includes(end) }],
    ),
  );
  return grouped(ends, ({ device }) => device);
});

const namedIn = perObject((vlans: Site['vlans']) => ({
  gateways: new Set(vlans.map(({ item }) => textAt(item.data, ['gateway']))),
  queriers: new Set(vlans.map(({ item }) => textAt(item.data, ['querier']))),
}));

const hostsIn = perObject((volumes: readonly Item[]) => new Set(volumes.map(({ data }) => textAt(data, ['host']))));

const sourcesIn = perObject((streams: Site['streams']) =>
  grouped(
    streams.map(({ item }) => item),
    ({ data }) => textAt(data, ['source']),
  ),
);

const receiversIn = perObject((streams: Site['streams']): ReadonlySet<string> => {
  const receivers = streams.flatMap(({ item }) => {
    const all = dataAt(item.data, ['receivers']);
    return Array.isArray(all) ? all.flatMap((end) => readEnd(end, [])?.device ?? []) : [];
  });
  return new Set(receivers);
});

function freeId({ vlans }: Site): number {
  const taken = new Set(vlans.map(({ id }) => id));
  let id = 10;
  while (taken.has(id)) id += 10;
  return id;
}

/** The stream of the camera whose name begins with the stream's. */
function streamText({ devices }: Site, name: string): string {
  const source = devices.find(({ kind, name: own }) => kind === 'camera' && own.startsWith(name));
  return source === undefined ? '{}' : `{source: ${source.name}}`;
}

/** Enough for the devices that are declared in it, and at least those of a small cabinet. */
function unitsNeeded({ devices }: Site, name: string): number {
  const tops = devices.flatMap(({ mounting: { rack, unit = 1, units } }) => (rack === name ? [unit + units - 1] : []));
  return Math.min(
    MOST_UNITS,
    tops.reduce((highest, top) => Math.max(highest, top), 12),
  );
}

/** The volume is on the server that receives the stream, where there is only one. */
function volumeText({ devices, streamByName }: Site, { data }: Item): string {
  const receivers = streamByName.get(textAt(data, ['stream']) ?? '')?.receivers;
  const servers = devices.filter(
    ({ kind, name }) => kind === 'server' && (receivers === undefined || receivers.includes(name)),
  );
  return servers.length === 1 && servers[0] !== undefined ? `{host: ${servers[0].name}}` : '{}';
}

function added(
  { sections, items }: Site,
  files: readonly SiteText[],
  { item, section }: Undeclared,
  text: string,
): Edit | undefined {
  const { uri } = fileOf(namePlace(item));
  const there = sections[section];
  const last = there.findLast(({ piece }) => piece.file.uri === uri) ?? there[there.length - 1];
  if (last !== undefined) {
    const { piece, node, key } = last;
    if (piece.role !== 'item') return undefined;
    const end = Math.max(node.end, key?.end ?? 0);
    const newline = piece.text.slice(end).search(/\r?\n/);
    const at = newline === -1 ? piece.text.length : end + newline;
    return { at: { piece, start: at, end: at }, text: `${lineBreakOf(piece.text)}${' '.repeat(piece.indent)}${text}` };
  }
  const file = files.find((candidate) => candidate.uri === uri);
  if (file === undefined) return undefined;
  const indent = ' '.repeat(items.find(({ piece }) => piece.role === 'item' && piece.indent > 0)?.piece.indent ?? 2);
  const line = lineBreakOf(file.text);
  const header = file.cut.headers.find((candidate) => candidate.section === section);
  if (header !== undefined) {
    const newline = file.text.slice(header.end).search(/\r?\n/);
    const at = newline === -1 ? file.text.length : header.end + newline;
    return { at: placeInFile(file, { start: at, end: at }), text: `${line}${indent}${text}` };
  }
  const gap = file.text.endsWith('\n') ? line : line + line;
  const end = file.text.length;
  return { at: placeInFile(file, { start: end, end }), text: `${gap}${section}:${line}${indent}${text}${line}` };
}
