// A camera that is unplugged, and plugged in again when everybody has noticed.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { interfaceOf } from '../lab/addresses.ts';
import { sleep } from '../lab/run.ts';
import { until } from '../lab/until.ts';
import type { House } from './house.ts';
import type { Recorder } from './recorder.ts';
import type { Service } from './service.ts';

/** Milliseconds without it: longer than the five seconds after which the units count a stream as gone. */
const UNPLUGGED = 8000;

export interface Outage {
  /** Milliseconds since 1970. */
  readonly from: number;
  readonly to: number;
  /** Files that were complete before it, with their hashes; and all that there were. */
  readonly whole: ReadonlyMap<string, string>;
  readonly all: readonly string[];
  /** Services that have nothing to do with the camera, and those of them that restarted meanwhile. */
  readonly others: readonly Service[];
  readonly begunAnew: readonly Service[];
}

/** Unplugs the camera at the gate, until it is recorded again. */
export async function unplug(house: House, recorder: Recorder): Promise<Outage> {
  const { recordings } = house.plan.site;
  const gate = recorder.recording('gate');
  const all = recordings.flatMap((recording) => recorder.filesOf(recording));
  const complete = recordings.flatMap((recording) => recorder.filesOf(recording).slice(0, -1));
  const whole = new Map(complete.map((path) => [path, hashOf(path)]));
  const own = [recorder.service('plumbline-ingest-gate.service')];
  const others = [...recorder.services.values()].filter((service) => !own.includes(service));
  const starts = new Map(others.map((service) => [service, service.starts]));
  const port = house.host('gate-cam').ports.map(interfaceOf)[0] ?? '';
  await house.onHost('gate-cam', `ip link set ${port} down`);
  const from = Date.now();
  await until(
    () => own.every(({ starts }) => starts > 1),
    () => recorder.said,
  );
  await sleep(Math.max(0, from + UNPLUGGED - Date.now()));
  const before = recorder.filesOf(gate).length;
  await house.onHost('gate-cam', `ip link set ${port} up`);
  const to = Date.now();
  // Two whole ones and what is being written.
  await until(
    () => recorder.filesOf(gate).length >= before + 3,
    () => recorder.said,
  );
  const begunAnew = others.filter((service) => service.starts !== starts.get(service));
  return { from, to, whole, all, others, begunAnew };
}

export function hashOf(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}
