/** Changed settings by the keys of the language: addresses, VLANs, streams of cameras, recordings. */

import type { Device, Port, PortAddress } from '../site/model.ts';
import { formatAddress } from '../standards/ipv4.ts';
import { type Data, isMapping } from '../text/syntax.ts';
import { type DataWords, NOTHING_SAID, dataWords } from './data-words.ts';
import type { Match, Pair } from './match.ts';
import type { Side } from './paired-names.ts';
import { type MatchedPairs, matchedByName } from './pairing.ts';

export interface Setting {
  /** `vlans`, `devices`, `streams` … */
  readonly section: string;
  readonly of: Pair;
  /** `dhcp-pool`, `video bitrate`; empty where the whole thing is added or removed. */
  readonly key: string;
  readonly before: string | null;
  readonly after: string | null;
}

export function settingsOf(match: Match): Setting[] {
  return [
    ...Object.entries(match.entries).flatMap(([section, pairs]) =>
      pairs.flatMap((pair) => {
        const of = { before: pair.before?.name ?? null, after: pair.after?.name ?? null };
        const isRenamed = of.before !== null && of.after !== null && of.before !== of.after;
        const name: Change[] = isRenamed ? [{ key: 'name', ...of }] : [];
        const wordsOf = (side: Side): DataWords => {
          const item = pair[side];
          return item === undefined ? NOTHING_SAID : dataWords(item, side, match.names);
        };
        const changes = [...name, ...changesIn(wordsOf('before'), wordsOf('after'))];
        return changes.map((change) => ({ section, of, ...change }));
      }),
    ),
    ...match.devices.flatMap((pair) => ofDevice(pair, match)),
  ];
}

function ofDevice({ before, after }: MatchedPairs<Device>, match: Match): Setting[] {
  // A thing that is added or removed is work on site, not a setting.
  if (before === undefined || after === undefined) return [];
  const of = { before: before.name, after: after.name };
  const own = changesIn(
    dataWords(before.item, 'before', match.names, withoutPorts(before)),
    dataWords(after.item, 'after', match.names, withoutPorts(after)),
  );
  const addresses = matchedByName(before.ports, after.ports).flatMap(({ before: old, after: current }) => {
    const isSame =
      addressWords(old, (vlan) => match.id(vlan, 'before')) ===
      addressWords(current, (vlan) => match.id(vlan, 'after'));
    if (isSame) return [];
    return [{ key: `address at ${portOf(old, current)}`, before: addressWords(old), after: addressWords(current) }];
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

function addressWords(port: Port | undefined, nameOf = (vlan: string): string => vlan): string | null {
  const all = (port?.addresses ?? []).map(({ address, vlan }: PortAddress) =>
    vlan === undefined ? formatAddress(address) : `${formatAddress(address)} in ${nameOf(vlan)}`,
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

function changesIn(before: DataWords, after: DataWords, key = ''): Change[] {
  if (before.id === after.id) return [];
  if (before.parts.size > 0 && after.parts.size > 0) {
    const ids = [...new Set([...before.parts.keys(), ...after.parts.keys()])];
    return ids.flatMap((id) => {
      const [then, now] = [before.parts.get(id), after.parts.get(id)];
      const own = now?.key ?? then?.key ?? '';
      const inner = key === '' ? own : `${key} ${own}`;
      return changesIn(then?.value ?? NOTHING_SAID, now?.value ?? NOTHING_SAID, inner);
    });
  }
  return [{ key, before: before.words, after: after.words }];
}
