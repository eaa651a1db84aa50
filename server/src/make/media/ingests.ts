/** What is taken in on each server, and what for: consumers of the same unicast stream share what comes in. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { type Made, type Refusal, once, refusal, together } from '../output.ts';
import type { Consumer } from './consumer.ts';
import { foldersOn } from './folders.ts';
import { type Ingest, ingestUnit, leavesFolders } from './ingest.ts';
import { recorded, recordings } from './recorded.ts';
import { relayed, relays } from './relayed.ts';

interface Candidate {
  readonly kind: Consumer['kind'];
  readonly name: string;
  readonly host: Device;
  readonly made: Consumer | Refusal;
}

/** By name within a kind: in whichever order the site has them, the unit is the same. */
function candidates(plan: Plan): readonly Candidate[] {
  const byName = (a: Candidate, b: Candidate): number => (a.name < b.name ? -1 : 1);
  return [
    ...relays(plan)
      .map((each): Candidate => ({
        kind: 'relays',
        name: each.stream.name,
        host: each.host,
        made: relayed(plan, each),
      }))
      .sort(byName),
    ...recordings(plan)
      .map((each): Candidate => ({
        kind: 'recorders',
        name: each.recording.name,
        host: each.host,
        made: recorded(plan, each),
      }))
      .sort(byName),
  ];
}

/** A group may be joined as often as one likes: it comes once. */
function keyOf({ kind, name, host, takes }: Consumer): string {
  return JSON.stringify([host.name, takes.name, ...(takes.group === undefined ? [] : [kind, name])]);
}

/** The units that do what is asked for, with all else that each of them does; and why some cannot be. */
export function madeOf(plan: Plan, kind: Consumer['kind'], subject: string | undefined): Made {
  const all = candidates(plan);
  const ingests = new Map<string, Ingest>();
  for (const { made } of all) {
    if ('message' in made) continue;
    const before = ingests.get(keyOf(made));
    ingests.set(keyOf(made), before === undefined ? [made] : [...before, made]);
  }
  const wanted = all.filter(
    (each) => each.kind === kind && (subject === undefined || subject === each.name || subject === each.host.name),
  );
  const done = new Set<string>();
  const withFolders = new Set<Device>();
  const made = wanted.map((each): Made => {
    if ('message' in each.made) return refusal(each.made);
    const key = keyOf(each.made);
    const ingest = ingests.get(key);
    if (ingest === undefined || done.has(key)) return { files: [], refused: [], notes: [] };
    done.add(key);
    const unit = ingestUnit(plan, ingest, kind);
    if (unit.files.length > 0 && leavesFolders(ingest)) withFolders.add(each.host);
    return unit;
  });
  const { files, refused, notes } = together(made);
  const folders = [...withFolders].flatMap((host) => foldersOn(plan, host));
  return { files: once([...files, ...folders]), refused, notes };
}

export function subjectsOf(plan: Plan, kind: Consumer['kind']): string[] {
  return [
    ...new Set(
      candidates(plan)
        .filter((each) => each.kind === kind)
        .flatMap(({ host, name }) => [host.name, name]),
    ),
  ].sort();
}
