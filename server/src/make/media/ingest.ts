/**
 * The unit by which a server takes in a stream: one FFmpeg, whatever is done with it. Of a unicast stream each process
 * would ask for a copy of its own, where the plan counts one to each receiver.
 */

import type { Plan } from '../../plan.ts';
import { headOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { list } from '../../text/words.ts';
import { type Made, type MadeFile, refusal } from '../output.ts';
import { mountUnits, unitCommand, unitPath } from '../quoting/unit.ts';
import type { Consumer } from './consumer.ts';
import { credentialLines, credentialNotes } from './credentials.ts';
import { alone, amongOthers } from './destination.ts';
import { FOLDERS, isDated } from './folders.ts';
import { probedSeconds, pullOf } from './pull.ts';
import { MAKE_FOLDERS, makeFoldersFile } from './scripts.ts';
import {
  AFTER_NETWORK,
  ALWAYS,
  ENDS_IN_ORDER,
  NEVER_GIVES_UP,
  WITHOUT_DESCRIPTION,
  begunBy,
  rather,
  serviceFile,
  whereTo,
  zoneLines,
  zoneNotes,
} from './service.ts';

/** At least one of them, all on one host and of one stream; those that send come before those that record. */
export type Ingest = readonly [Consumer, ...Consumer[]];

/** @param kind that it is asked for by: the file is the same for either */
export function ingestUnit(plan: Plan, ingest: Ingest, kind: Consumer['kind']): Made {
  const [{ host, takes }] = ingest;
  const pull = pullOf(plan, takes, host);
  if ('message' in pull) return refusal(pull);
  const command = unitCommand([...pull.command, ...outputs(plan, ingest)]);
  if (command === undefined)
    return refusal({
      at: headOf(takes.item),
      message: `${takes.name} cannot be written into a unit. Take the control characters out of what it says.`,
    });
  const stores = ingest.flatMap(({ store }) => store ?? []);
  const { before, first, writable, begun } = ingest.length > 1 ? independent(ingest) : dependent(ingest);
  const text = serviceFile(plan.site, {
    command: `make ${ingest[0].kind} ${ingest[0].name}`,
    description: describe(ingest),
    unit: [...AFTER_NETWORK, ...before, NEVER_GIVES_UP],
    service: [
      ...(stores.length === 0 ? ['DynamicUser=yes'] : ['User=plumbline', 'Group=plumbline', ...zoneLines(plan)]),
      ...credentialLines(pull.credentials),
      ...first,
      `ExecStart=${command}`,
      ...(stores.length === 0 ? [] : READ_ONLY),
      ...ALWAYS,
      ...ENDS_IN_ORDER,
      ...WITHOUT_DESCRIPTION,
      ...writable,
    ],
    install: ['WantedBy=multi-user.target', ...begun],
  });
  const files: MadeFile[] = [
    { path: `${host.name}/${unitName(ingest)}`, text },
    ...(stores.length === 0 ? [] : [makeFoldersFile(host.name)]),
    ...pull.files,
  ];
  return { files, refused: [], notes: notes(plan, ingest, kind, pull.credentials) };
}

/** Whether the unit leaves it to others to make the folders that it writes to. */
export function leavesFolders(ingest: Ingest): boolean {
  const stores = ingest.flatMap(({ store }) => store ?? []);
  return stores.some(isDated) || (ingest.length > 1 && stores.some(({ names }) => names.folder !== ''));
}

const READ_ONLY: readonly string[] = [
  '# Files are made read-only, so that none can be opened a second time and overwritten: FFmpeg begins again some seconds',
  '# later under another name. Nobody but the user and the group may look at them.',
  'UMask=0227',
];

function unitName([first, ...others]: Ingest): string {
  if (others.length > 0) return `plumbline-ingest-${first.takes.name}.service`;
  return ownName(first);
}

/** What the unit is called if there is nothing else to be done with the stream. */
function ownName({ kind, name }: Consumer): string {
  return `plumbline-${kind === 'relays' ? 'relay' : 'record'}-${name}.service`;
}

function describe(ingest: Ingest): string {
  const [{ name, takes, store }] = ingest;
  if (ingest.length > 1) return `Takes ${takes.name} in once, and ${deeds(ingest)}`;
  return store === undefined
    ? `Sends ${takes.name} on as ${name}`
    : `Records ${takes.name} to ${visible(store.names.volume, 100)} as ${name}`;
}

function deeds(ingest: Ingest): string {
  const names = (kind: Consumer['kind']): string[] =>
    ingest.filter((each) => each.kind === kind).map(({ name }) => name);
  const [sent, written] = [names('relays'), names('recorders')];
  return [
    ...(sent.length === 0 ? [] : [`sends it on as ${list(sent)}`]),
    ...(written.length === 0 ? [] : [`records it as ${list(written)}`]),
  ].join(' and ');
}

/** Seconds for which a disk may be slow before anything is left out. */
const SLOW = 20;

/** Pictures a second where the site does not say. */
const USUAL_FRAME_RATE = 30;

/** Packets of sound a second: 20 ms in each (RFC 3551 §4.2). */
const SOUND_RATE = 50;

function outputs(plan: Plan, ingest: Ingest): readonly string[] {
  const destinations = ingest.flatMap((consumer) => consumer.destinations);
  if (ingest.length === 1 && !manyReceivers(plan, ingest[0])) return destinations.flatMap(alone);
  const [{ takes }] = ingest;
  const { video, audio } = plan.site.mediaOf(takes);
  const rate =
    (video === undefined ? 0 : (video.frameRate ?? USUAL_FRAME_RATE)) + (audio === undefined ? 0 : SOUND_RATE);
  // What was read until the stream was known comes all at once.
  const packets = Math.ceil(Math.max(1, rate) * Math.max(SLOW, 2 * probedSeconds(plan, takes)));
  // A queue has no time base of its own. That of the stream is taken: else times are rounded to whole pictures.
  return ['-copytb', '1', ...destinations.flatMap((each) => amongOthers(each, packets))];
}

/** Of a copy to each receiver, and more than one. A group needs none: nothing waits for who joined it. */
function manyReceivers({ site }: Plan, { kind, name, destinations }: Consumer): boolean {
  return kind === 'relays' && destinations.length > 1 && site.streamByName.get(name)?.group === undefined;
}

interface Needs {
  /** Lines of `[Unit]`. */
  readonly before: readonly string[];
  /** What is done before FFmpeg begins, and where it may write. */
  readonly first: readonly string[];
  readonly writable: readonly string[];
  /** Lines of `[Install]`. */
  readonly begun: readonly string[];
}

/** Nothing is begun without the disk, nor without the folder. */
function dependent([{ store }]: Ingest): Needs {
  if (store === undefined) return { before: [], first: [], writable: [], begun: [] };
  const root = unitPath(store.names.volume) ?? '';
  const folders = unitCommand([MAKE_FOLDERS, store.names.volume, store.names.folder]) ?? '';
  return {
    before: [`RequiresMountsFor=${root}`],
    first: [`ExecStartPre=${folders}`],
    writable: [`ReadWritePaths=${root}`],
    begun: begunBy([store.names.volume]),
  };
}

/** A disk that is not there holds up nothing but its own recording. */
function independent(ingest: Ingest): Needs {
  const stores = ingest.flatMap(({ store }) => store ?? []);
  const roots = [...new Set(stores.map(({ names }) => names.volume))];
  const folders = stores.some(({ names }) => names.folder !== '') ? [FOLDERS] : [];
  return {
    before: rather([...folders, ...new Set(roots.flatMap(mountUnits))]),
    first: [],
    writable: roots.map((root) => `ReadWritePaths=${unitPath(root, '-') ?? ''}`),
    // It goes on with a disk that is mounted later, as soon as the folders are made.
    begun: [],
  };
}

function notes(plan: Plan, ingest: Ingest, kind: Consumer['kind'], credentials: string | undefined): readonly string[] {
  const [{ host }] = ingest;
  const stored = ingest.some(({ store }) => store !== undefined);
  return [
    whereTo(kind, host),
    ...(ingest.length === 1 ? [] : [togetherNote(ingest), ALIKE]),
    ...(stored ? [ownerNote(host), ...zoneNotes(plan, host)] : []),
    ...credentialNotes(credentials, host),
    ...(stored ? [PRIVACY] : []),
  ];
}

function togetherNote(ingest: Ingest): string {
  const [{ host, takes }] = ingest;
  return `${unitName(ingest)}: ${host.name} takes ${takes.name} in once, as the plan has it, and ${deeds(ingest)}. Where ${list(ingest.map(ownName), 'or')} is enabled, disable it.`;
}

const ALIKE =
  'plumbline-ingest-*.service: make relays and make recorders write the same files; place each once. In them a disk that is full, slow or broken ' +
  'holds up nothing but its own recordings, which go on when there is room again, or it is mounted again.';

function ownerNote({ name }: Device): string {
  return `recorders: ${name} needs a user plumbline, \`useradd --system plumbline\`, to whom the folders of its volumes belong once they are mounted: \`chown plumbline:plumbline\`. The empty folder beneath a mount stays root's, so that nothing is written there while the disk is not. Who is to see recordings joins the group plumbline.`;
}

const PRIVACY =
  'recorders: people in the picture, and more so their voices, may be recorded only as privacy law where you are allows. Ask before you record ' +
  'a lane, a neighbour, or those who work for you; tell them.';
