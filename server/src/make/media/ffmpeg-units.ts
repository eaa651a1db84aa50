/** The FFmpeg units of all servers: consumers of the same unicast stream share one, so that it comes in once. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { type Made, type Refusal, once, refusal, together } from '../output.ts';
import type { MediaConsumer } from './consumer.ts';
import { folderUnits } from './folders.ts';
import { type Ingest, ingestUnit, needsFolders } from './ingest-unit.ts';
import { hostedRecordings, recordingConsumer } from './recording-consumer.ts';
import { relayConsumer, relaysOf } from './relay-consumer.ts';

interface Candidate {
  readonly kind: MediaConsumer['kind'];
  readonly name: string;
  readonly host: Device;
  readonly consumer: MediaConsumer | Refusal;
}

/** Sorted by name within a kind, so that the order in the site makes no difference. */
function candidates(plan: Plan): readonly Candidate[] {
  const byName = (a: Candidate, b: Candidate): number => (a.name < b.name ? -1 : 1);
  return [
    ...relaysOf(plan)
      .map((each): Candidate => ({
        kind: 'relays',
        name: each.stream.name,
        host: each.host,
        consumer: relayConsumer(plan, each),
      }))
      .sort(byName),
    ...hostedRecordings(plan)
      .map((each): Candidate => ({
        kind: 'recorders',
        name: each.recording.name,
        host: each.host,
        consumer: recordingConsumer(plan, each),
      }))
      .sort(byName),
  ];
}

/** Consumers with the same key share an input. A group can be joined any number of times, and still comes in once. */
function inputKey({ kind, name, host, input }: MediaConsumer): string {
  return JSON.stringify([host.name, input.name, ...(input.group === undefined ? [] : [kind, name])]);
}

/** The units that relay or record the subject. A unit may serve other consumers of its input too. */
export function makeUnits(plan: Plan, kind: MediaConsumer['kind'], subject: string | undefined): Made {
  const all = candidates(plan);
  const ingests = new Map<string, Ingest>();
  for (const { consumer } of all) {
    if ('message' in consumer) continue;
    const sharing = ingests.get(inputKey(consumer));
    ingests.set(inputKey(consumer), sharing === undefined ? [consumer] : [...sharing, consumer]);
  }
  const wanted = all.filter(
    (each) => each.kind === kind && (subject === undefined || subject === each.name || subject === each.host.name),
  );
  const done = new Set<string>();
  const withFolders = new Set<Device>();
  const made = wanted.map(({ host, consumer }): Made => {
    if ('message' in consumer) return refusal(consumer);
    const key = inputKey(consumer);
    const ingest = ingests.get(key);
    if (ingest === undefined || done.has(key)) return { files: [], refused: [], notes: [] };
    done.add(key);
    const unit = ingestUnit(plan, ingest, kind);
    if (unit.files.length > 0 && needsFolders(ingest)) withFolders.add(host);
    return unit;
  });
  const { files, refused, notes } = together(made);
  const folders = [...withFolders].flatMap((host) => folderUnits(plan, host));
  return { files: once([...files, ...folders]), refused, notes };
}

export function unitSubjects(plan: Plan, kind: MediaConsumer['kind']): string[] {
  return [
    ...new Set(
      candidates(plan)
        .filter((each) => each.kind === kind)
        .flatMap(({ host, name }) => [host.name, name]),
    ),
  ].sort();
}
