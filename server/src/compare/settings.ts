/** Changed settings by the keys of the language: addresses, VLANs, streams of cameras, recordings. */

import type { Plan } from '../plan.ts';
import type { Device, Port, PortAddress } from '../site/model.ts';
import type { SectionName } from '../site/shape.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { type Data, isMapping } from '../text/syntax.ts';
import { type Match, type Matched, type Pair, matchedByName } from './match.ts';

export interface Setting {
  /** `vlans`, `devices`, `streams` … */
  readonly section: string;
  readonly of: Pair;
  /** `dhcp-pool`, `video bitrate`; empty where the whole thing is added or removed. */
  readonly key: string;
  readonly before: string | null;
  readonly after: string | null;
}

const SECTIONS: readonly SectionName[] = [
  'site',
  'vlans',
  'multiplexes',
  'services',
  'occasions',
  'streams',
  'traffic',
  'volumes',
  'recordings',
  'policies',
];

export function settingsOf(before: Plan, after: Plan, match: Match): Setting[] {
  return [
    ...SECTIONS.flatMap((section) =>
      matchedByName(before.site.sections[section], after.site.sections[section]).flatMap((pair) => {
        const of = { before: pair.before?.name ?? null, after: pair.after?.name ?? null };
        return changesIn(pair.before?.data, pair.after?.data, match).map((change) => ({ section, of, ...change }));
      }),
    ),
    ...match.devices.flatMap((pair) => ofDevice(pair, match)),
  ];
}

function ofDevice({ before, after }: Matched<Device>, match: Match): Setting[] {
  // A thing that is added or removed is work on site, not a setting.
  if (before === undefined || after === undefined) return [];
  const of = { before: before.name, after: after.name };
  const own = changesIn(withoutPorts(before), withoutPorts(after), match);
  const addresses = matchedByName(before.ports, after.ports).flatMap(({ before: old, after: current }) => {
    const [then, now] = [addressWords(old), addressWords(current)];
    return then === now ? [] : [{ key: `address at ${portOf(old, current)}`, before: then, after: now }];
  });
  return [...own, ...(before.item.data === after.item.data ? [] : addresses)].map((change) => ({
    section: 'devices',
    of,
    ...change,
  }));
}

function portOf(before: Port | undefined, after: Port | undefined): string {
  return after?.name ?? before?.name ?? '';
}

function addressWords(port: Port | undefined): string | null {
  const all = (port?.addresses ?? []).map(({ address, vlan }: PortAddress) =>
    vlan === undefined ? formatAddress(address) : `${formatAddress(address)} in ${vlan}`,
  );
  return all.length === 0 ? null : all.sort().join(', ');
}

/** The keys of a port, which a device of one port has beside its own. */
const OF_PORT = ['address', 'addresses', 'speed', 'medium', 'module', 'vlan', 'trunk', 'native', 'lag', 'lacp'];

/** The data without its ports, whose facts are compared: their ranges may be written in several ways. */
function withoutPorts({ item, bridging }: Device): Data {
  if (!isMapping(item.data)) return item.data;
  const isOne = item.data['ports'] === undefined && !bridging;
  return Object.fromEntries(
    Object.entries(item.data).filter(([key]) => key !== 'ports' && !(isOne && OF_PORT.includes(key))),
  );
}

type Change = Pick<Setting, 'key' | 'before' | 'after'>;

function changesIn(before: Data | undefined, after: Data | undefined, match: Match, key = ''): Change[] {
  if (before === after) return [];
  if (isMapping(before) && isMapping(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((own) => changesIn(before[own], after[own], match, key === '' ? own : `${key} ${own}`));
  }
  const [then, now] = [wordsOf(before, 'before', match), wordsOf(after, 'after', match)];
  return then.id === now.id ? [] : [{ key, before: then.words, after: now.words }];
}

/** A value as words: lists are sorted, and a renamed device has one name for both plans. */
function wordsOf(data: Data | undefined, side: 'before' | 'after', match: Match): { id: string; words: string | null } {
  if (data === undefined) return { id: '', words: null };
  if (Array.isArray(data)) {
    const all = data.map((one: Data) => wordsOf(one, side, match));
    return {
      id: `[${all
        .map(({ id }) => id)
        .sort()
        .join(', ')}]`,
      words: all.length === 0 ? 'none' : all.map(({ words }) => words ?? '').join(', '),
    };
  }
  if (isMapping(data)) {
    const all = Object.entries(data)
      .map(([key, value]) => ({ key, ...wordsOf(value, side, match) }))
      .sort((a, b) => (a.key < b.key ? -1 : 1));
    return {
      id: `{${all.map(({ key, id }) => `${key}: ${id}`).join(', ')}}`,
      words: all.map(({ key, words }) => `${key}: ${words ?? ''}`).join(', '),
    };
  }
  const text = String(data);
  return { id: match.id(text, side), words: text };
}
