/** Matches the entries of sections that hold neither devices nor cables, renamed ones by what they keep. */

import type { Item } from '../site/item.ts';
import type { Site } from '../site/model.ts';
import type { SectionName } from '../site/shape.ts';
import { dataWords } from './data-words.ts';
import type { PairedNames, Side } from './paired-names.ts';
import { type MatchedPairs, matchedByName, matchedBySigns } from './pairing.ts';

/**
 * The keys that each keeps where only its name changes, the surest first; what names others comes before it, so that
 * these have one identity already. An entry that is otherwise the same is known too.
 */
const KEPT = {
  vlans: [['id'], ['subnet']],
  multiplexes: [],
  services: [['multiplex', 'service-id']],
  occasions: [],
  streams: [
    ['source', 'group'],
    ['source', 'transport', 'port', 'path'],
  ],
  traffic: [['between']],
  volumes: [
    ['host', 'path'],
    ['host', 'capacity'],
  ],
  recordings: [['file'], ['stream', 'volume']],
} as const satisfies Partial<Record<SectionName, readonly (readonly string[])[]>>;

/** Their keys are words of the language. */
const FIXED = ['site', 'policies'] as const satisfies readonly SectionName[];

type Renamable = keyof typeof KEPT;

export type EntrySection = Renamable | (typeof FIXED)[number];

export function matchedEntries(
  before: Site,
  after: Site,
  names: PairedNames,
): Record<EntrySection, readonly MatchedPairs<Item>[]> {
  const renamable = (section: Renamable): readonly MatchedPairs<Item>[] => {
    const pairs = matchedBySigns(
      before.sections[section],
      after.sections[section],
      (item) => signsOf(item, 'before', names),
      (item) => signsOf(item, 'after', names),
    );
    names.add(section, pairs);
    return pairs;
  };
  const fixed = (section: (typeof FIXED)[number]): readonly MatchedPairs<Item>[] =>
    matchedByName(before.sections[section], after.sections[section]);
  return {
    site: fixed('site'),
    vlans: renamable('vlans'),
    multiplexes: renamable('multiplexes'),
    services: renamable('services'),
    occasions: renamable('occasions'),
    streams: renamable('streams'),
    traffic: renamable('traffic'),
    volumes: renamable('volumes'),
    recordings: renamable('recordings'),
    policies: fixed('policies'),
  };
}

function signsOf(item: Item, side: Side, names: PairedNames): string[] {
  const { id: whole, parts } = dataWords(item, side, names);
  const kept: readonly (readonly string[])[] = item.section in KEPT ? KEPT[item.section as Renamable] : [];
  const signs = kept.flatMap((keys, rank) => {
    const ids = keys.flatMap((key) => parts.get(key)?.value.id ?? []);
    return ids.length === keys.length ? [`${rank} ${ids.join(', ')}`] : [];
  });
  return [...signs, `9 ${whole}`];
}
