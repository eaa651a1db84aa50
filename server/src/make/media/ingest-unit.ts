/**
 * The unit by which a server receives a stream: one FFmpeg for all consumers of a unicast stream. A process for each
 * would ask for a copy of its own, and the plan counts one copy for each receiver.
 */

import type { Plan } from '../../plan.ts';
import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { list } from '../../text/words.ts';
import { type Made, type MadeFile, refusal } from '../output.ts';
import { mountUnits, unitCommand, unitPath } from '../quoting/unit.ts';
import type { MediaConsumer } from './consumer.ts';
import { credentialLines, credentialNotes } from './credentials.ts';
import { directOutput, queuedOutput } from './destination.ts';
import { FOLDERS, isDated } from './folders.ts';
import { usualNotes } from './recording-consumer.ts';
import { probedSeconds, pullOf } from './pull.ts';
import { MAKE_FOLDERS, makeFoldersFile } from './scripts.ts';
import {
  AFTER_NETWORK,
  RESTART_ALWAYS,
  ORDERLY_STOP,
  NO_START_LIMIT,
  ERRORS_TO_JOURNAL,
  startedByMounts,
  wants,
  serviceFile,
  placementNote,
  zoneLines,
  zoneNotes,
} from './service.ts';

/** All consumers of one stream on one host: first those that relay, then those that record. */
export type Ingest = readonly [MediaConsumer, ...MediaConsumer[]];

/** @param kind of output that asks for the unit; the file is the same for both */
export function ingestUnit(plan: Plan, ingest: Ingest, kind: MediaConsumer['kind']): Made {
  const [{ host, input }] = ingest;
  const pull = pullOf(plan, input, host);
  if ('message' in pull) return refusal(pull);
  const command = unitCommand([...pull.command, ...outputs(plan, ingest)]);
  if (command === undefined)
    return refusal({
      rule: 'malformed-value',
      at: namePlace(input.item),
      message: `${input.name} cannot be written into a unit. Take the control characters out of what it says.`,
    });
  const stores = ingest.flatMap(({ store }) => store ?? []);
  const { unit, prepare, writable, install } = ingest.length > 1 ? optionalDisks(ingest) : requiredDisk(ingest);
  const text = serviceFile(plan.site, {
    command: `make ${ingest[0].kind} ${ingest[0].name}`,
    description: describe(ingest),
    unit: [...AFTER_NETWORK, ...unit, NO_START_LIMIT],
    service: [
      ...(stores.length === 0 ? ['DynamicUser=yes'] : ['User=plumbline', 'Group=plumbline', ...zoneLines(plan)]),
      ...credentialLines(pull.credentials),
      ...prepare,
      `ExecStart=${command}`,
      ...(stores.length === 0 ? [] : READ_ONLY),
      ...RESTART_ALWAYS,
      ...ORDERLY_STOP,
      ...ERRORS_TO_JOURNAL,
      ...writable,
    ],
    install: ['WantedBy=multi-user.target', ...install],
  });
  const files: MadeFile[] = [
    { path: `${host.name}/${unitName(ingest)}`, text },
    ...(stores.length === 0 ? [] : [makeFoldersFile(host.name)]),
    ...pull.files,
  ];
  return { files, refused: [], notes: notes(plan, ingest, kind, pull.credentials) };
}

/** Whether other units must make the folders that this one writes to. */
export function needsFolders(ingest: Ingest): boolean {
  const stores = ingest.flatMap(({ store }) => store ?? []);
  return stores.some(isDated) || (ingest.length > 1 && stores.some(({ names }) => names.folder !== ''));
}

const READ_ONLY: readonly string[] = [
  '# Files are made read-only, so that none can be opened a second time and overwritten: FFmpeg begins again some ' +
    'seconds',
  '# later under another name. Nobody but the user and the group may look at them.',
  'UMask=0227',
];

function unitName([first, ...others]: Ingest): string {
  if (others.length > 0) return `plumbline-ingest-${first.input.name}.service`;
  return singleName(first);
}

/** The name of the unit where the stream has no other consumer. */
function singleName({ kind, name }: MediaConsumer): string {
  return `plumbline-${kind === 'relays' ? 'relay' : 'record'}-${name}.service`;
}

function describe(ingest: Ingest): string {
  const [{ name, input, store }] = ingest;
  if (ingest.length > 1) return `Takes ${input.name} in once, and ${uses(ingest)}`;
  return store === undefined
    ? `Sends ${input.name} on as ${name}`
    : `Records ${input.name} to ${visible(store.names.volume, 100)} as ${name}`;
}

function uses(ingest: Ingest): string {
  const names = (kind: MediaConsumer['kind']): string[] =>
    ingest.filter((each) => each.kind === kind).map(({ name }) => name);
  const [relayed, recorded] = [names('relays'), names('recorders')];
  return [
    ...(relayed.length === 0 ? [] : [`sends it on as ${list(relayed)}`]),
    ...(recorded.length === 0 ? [] : [`records it as ${list(recorded)}`]),
  ].join(' and ');
}

/** Seconds of a stream that a queue holds while a disk is slow. */
const QUEUED = 20;

/** Pictures a second where the site declares no frame rate. */
const USUAL_FRAME_RATE = 30;

/** Packets of audio a second: 20 ms in each (RFC 3551 §4.2). */
const AUDIO_RATE = 50;

function outputs(plan: Plan, ingest: Ingest): readonly string[] {
  const destinations = ingest.flatMap((consumer) => consumer.destinations);
  if (ingest.length === 1 && !manyReceivers(plan, ingest[0])) return destinations.flatMap(directOutput);
  const [{ input }] = ingest;
  const { video, audio } = plan.site.media(input);
  const rate =
    (video === undefined ? 0 : (video.frameRate ?? USUAL_FRAME_RATE)) + (audio === undefined ? 0 : AUDIO_RATE);
  // The packets that FFmpeg reads while it probes the stream arrive in the queue all at once.
  const packets = Math.ceil(Math.max(1, rate) * Math.max(QUEUED, 2 * probedSeconds(plan, input)));
  // A queue has no time base of its own: without that of the stream, times are rounded to whole pictures.
  return ['-copytb', '1', ...destinations.flatMap((each) => queuedOutput(each, packets))];
}

/** Whether one slow receiver could hold up others. A group cannot: the sender does not wait for its members. */
function manyReceivers({ site }: Plan, { kind, name, destinations }: MediaConsumer): boolean {
  return kind === 'relays' && destinations.length > 1 && site.streamByName.get(name)?.group === undefined;
}

/** Lines of a unit about the disks that it records to. */
interface DiskLines {
  /** Lines for `[Unit]`. */
  readonly unit: readonly string[];
  /** Lines for `[Service]`: commands before FFmpeg, and the paths that FFmpeg may write to. */
  readonly prepare: readonly string[];
  readonly writable: readonly string[];
  /** Lines for `[Install]`. */
  readonly install: readonly string[];
}

/** The unit does not start without the disk and the folder. */
function requiredDisk([{ store }]: Ingest): DiskLines {
  if (store === undefined) return { unit: [], prepare: [], writable: [], install: [] };
  const root = unitPath(store.names.volume) ?? '';
  const folders = unitCommand([MAKE_FOLDERS, store.names.volume, store.names.folder]) ?? '';
  return {
    unit: [`RequiresMountsFor=${root}`],
    prepare: [`ExecStartPre=${folders}`],
    writable: [`ReadWritePaths=${root}`],
    install: startedByMounts([store.names.volume]),
  };
}

/** A missing disk holds up only its own recording. */
function optionalDisks(ingest: Ingest): DiskLines {
  const stores = ingest.flatMap(({ store }) => store ?? []);
  const roots = [...new Set(stores.map(({ names }) => names.volume))];
  const folders = stores.some(({ names }) => names.folder !== '') ? [FOLDERS] : [];
  return {
    unit: wants([...folders, ...new Set(roots.flatMap(mountUnits))]),
    prepare: [],
    writable: roots.map((root) => `ReadWritePaths=${unitPath(root, '-') ?? ''}`),
    // FFmpeg picks up a disk that is mounted later, as soon as the folders are made.
    install: [],
  };
}

function notes(
  plan: Plan,
  ingest: Ingest,
  kind: MediaConsumer['kind'],
  credentials: string | undefined,
): readonly string[] {
  const [{ host }] = ingest;
  const stored = ingest.some(({ store }) => store !== undefined);
  return [
    placementNote(kind, host),
    ...(ingest.length === 1 ? [] : [togetherNote(ingest), ALIKE]),
    ...(stored ? [ownerNote(host), ...zoneNotes(plan, host)] : []),
    ...ingest.flatMap(({ store }) => (store === undefined ? [] : usualNotes(store.recording))),
    ...credentialNotes(credentials, host),
    ...(stored ? [PRIVACY] : []),
  ];
}

function togetherNote(ingest: Ingest): string {
  const [{ host, input }] = ingest;
  return (
    `${unitName(ingest)}: ${host.name} takes ${input.name} in once, as planned, and ${uses(ingest)}. Where ` +
    `${list(ingest.map(singleName), 'or')} is enabled, disable it.`
  );
}

const ALIKE =
  'plumbline-ingest-*.service: make relays and make recorders write the same files; place each once. In them a disk ' +
  'that is full, slow or broken holds up nothing but its own recordings, which go on once there is room, or the ' +
  'disk is mounted again.';

function ownerNote({ name }: Device): string {
  return (
    `recorders: ${name} needs a user plumbline, \`useradd --system plumbline\`, to whom the folders of its volumes ` +
    "belong once they are mounted: `chown plumbline:plumbline`. The empty folder beneath a mount stays root's, so " +
    'that nothing is written there while the disk is not mounted. Whoever is to see recordings joins the group plumbline.'
  );
}

const PRIVACY =
  'recorders: people, and even more their voices, may be recorded only as local privacy law allows. Ask before you ' +
  'record a lane, a neighbour, or those who work for you, and tell them.';
