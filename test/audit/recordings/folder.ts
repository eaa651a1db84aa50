// Folders of recordings that exist only as figures: the audit visits them like those on a disk.

import assert from 'node:assert/strict';
import { type Circumstances, auditRecordings } from '../../../server/src/audit/recordings/audit.ts';
import type { Space } from '../../../server/src/audit/recordings/space.ts';
import { Survey } from '../../../server/src/audit/recordings/survey.ts';
import type { FolderVisitor } from '../../../server/src/audit/recordings/visitor.ts';
import { planOf } from '../../../server/src/plan.ts';
import type { Diagnostic } from '../../../server/src/lint/rule.ts';
import { format } from '../../../server/src/standards/strftime-format.ts';
import { zonedTime } from '../../../server/src/standards/time-zone.ts';
import { siteOf } from '../../site-of.ts';

export interface Entry {
  readonly path: string;
  readonly size: number;
  /** Milliseconds since 1970. */
  readonly modified: number;
}

export const OFFSET = 'gate/%Y-%m-%d_%H-%M-%S%z.mp4';
export const LOCAL = 'gate/%Y-%m-%d_%H-%M-%S.mp4';

interface Choices {
  readonly zone?: string;
  readonly file?: string;
  readonly segment?: string;
  readonly keyframes?: string;
  readonly keep?: string;
  readonly bitrate?: string;
  /** Further sections. */
  readonly more?: string;
}

export function siteText({
  zone = 'Europe/London',
  file = OFFSET,
  segment = '60 s',
  keyframes = '2 s',
  keep = '14 d',
  bitrate = '6 Mb/s',
  more = '',
}: Choices = {}): string {
  return `site: {name: Harrow Lane, timezone: ${zone}}
devices:
  gate-cam: {kind: camera}
  recorder: {kind: server}
streams:
  gate: {source: gate-cam, transport: rtsp, video: {codec: h264, bitrate: ${bitrate}, peak-bitrate: 9 Mb/s, keyframe-interval: ${keyframes}}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB, reserve: 5 %, path: /recordings}
recordings:
  gate: {stream: gate, volume: archive, segment: ${segment}, keep: ${keep}, file: ${JSON.stringify(file)}}
${more}`;
}

export function pathAt(instant: number, pattern: string, zone = 'Europe/London'): string {
  return format(pattern, zonedTime(zone, instant));
}

/** Files that follow each other without a break, of 6 Mb/s, each last written to when the next begins. */
export function recorded(
  from: number,
  count: number,
  { length = 60_000, pattern = OFFSET, zone = 'Europe/London', rate = 6e6 } = {},
): Entry[] {
  return Array.from({ length: count }, (_, index) => {
    const start = from + index * length;
    return { path: pathAt(start, pattern, zone), size: Math.round((rate * length) / 8000), modified: start + length };
  });
}

interface Also extends Partial<Circumstances> {
  readonly space?: Space;
}

/** Shows the audit the entries, in the order in which they come. */
export function found(
  text: string,
  entries: readonly Entry[],
  { space, now = newestEnd(entries), ...also }: Also = {},
  emptied: readonly string[] = [],
): { found: Diagnostic[]; summary: string[] } {
  const site = siteOf(text);
  const volume = site.volumes[0];
  if (volume === undefined) throw new Error('there is no volume');
  const survey = new Survey(site, site.recordings);
  const folders = new Map<string, FolderVisitor>();
  const folderOf = (path: string): FolderVisitor => {
    const known = folders.get(path) ?? survey.enter(path);
    folders.set(path, known);
    return known;
  };
  for (const { path, size, modified } of entries) {
    const name = path.lastIndexOf('/') + 1;
    folderOf(path.slice(0, name)).file(path.slice(name), size, modified);
  }
  for (const folder of folders.values()) folder.leave(false);
  for (const path of emptied) folderOf(path).leave(true);
  const { found: diagnostics, summary } = auditRecordings(planOf(site), [{ volume, survey, space }], { now, ...also });
  return { found: [...diagnostics], summary: [...summary] };
}

/** `severity id: message` of each. */
export function told(...shown: Parameters<typeof found>): string[] {
  return found(...shown).found.map(({ severity, rule, message }) => `${severity} ${rule.id}: ${message}`);
}

export function newestEnd(entries: readonly Entry[]): number {
  return entries.reduce((latest, { modified }) => Math.max(latest, modified), 0);
}

/** One finding, which begins and goes on so. */
export function only(shown: readonly string[], ...parts: readonly string[]): void {
  assert.equal(shown.length, 1, shown.join('\n'));
  let at = 0;
  for (const part of parts) {
    const where: number = (shown[0] ?? '').indexOf(part, at);
    assert.ok(where >= at, `${part} in ${shown[0] ?? ''}`);
    at = where + part.length;
  }
}
