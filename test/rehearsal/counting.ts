// Counts what every port carries, and what every screen shows, in windows of time.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { TABLE, lineOf, octetsOf } from '../lab/readings.ts';
import { sleep } from '../lab/run.ts';
import type { Row } from '../lab/table.ts';
import { LOOP } from './films.ts';
import type { House } from './house.ts';
import { disagreements, rehearsedRows } from './loads.ts';
import type { Screen } from './screens.ts';

/** Milliseconds from one reading to the next. */
const EVERY = 2000;

export class Counting {
  /** What was read in the last window, as `plumbline audit counters` takes it. */
  readonly files: readonly string[];
  /** Of the last window. */
  rows: readonly Row[] = [];
  seconds = 0;
  windows = 0;
  /** Of ports and screens that have not had a window in order yet: what was wrong in the last one. */
  private readonly unloaded = new Map<number, string>();
  private readonly unshown = new Map<Screen, readonly string[]>();
  private readonly house: House;
  private readonly screens: readonly Screen[];

  constructor(house: House, screens: readonly Screen[]) {
    [this.house, this.screens] = [house, screens];
    this.files = ['counters.jsonl', 'octets.csv'].map((name) => join(house.folder, name));
  }

  /** What was wrong at ports and screens in each of the windows so far. */
  get wrong(): readonly string[] {
    return [...this.unloaded.values(), ...[...this.unshown.values()].flat()];
  }

  /** Counts for the length of a film, over which its rate is what the site declares, wherever it begins. */
  async window(): Promise<void> {
    const { house, screens } = this;
    const { network, site } = house.plan;
    const { devices } = site;
    const hosts = devices.filter((device) => network.interfaces.of(device).length > 0);
    const switches = devices.filter(({ bridging }) => bridging);
    const lines: string[] = [];
    const rows: string[] = [];
    for (const screen of screens) screen.beginAnew();
    const first = await this.count();
    const left = (): number => LOOP * 1000 - (performance.now() - first.at);
    // The last reading comes so early that the count after it is in time.
    while (left() > EVERY) {
      for (const each of hosts) lines.push(await lineOf(house.lab, each));
      for (const each of switches) rows.push(...(await octetsOf(house.lab, each)));
      await sleep(Math.max(0, Math.min(EVERY, left())));
    }
    await sleep(Math.max(0, left()));
    const last = await this.count();
    this.seconds = (last.at - first.at) / 1000;
    this.files.forEach((file, index) => writeFileSync(file, (index === 0 ? lines : [TABLE, ...rows]).join('\n')));
    this.rows = rehearsedRows(
      house.plan,
      last.bytes.map((bytes, direction) => bytes - (first.bytes[direction] ?? 0)),
      this.seconds,
    );
    const wrongPorts = disagreements(this.rows);
    for (const direction of this.windows === 0 ? wrongPorts.keys() : [...this.unloaded.keys()])
      keep(this.unloaded, direction, wrongPorts.get(direction));
    for (const screen of this.windows === 0 ? screens : [...this.unshown.keys()])
      keep(this.unshown, screen, screen.wrong(this.seconds));
    this.windows++;
  }

  /** Bytes by direction of link, at a time that lies between the question and the answer. */
  private async count(): Promise<{ readonly at: number; readonly bytes: readonly number[] }> {
    const asked = performance.now();
    const bytes = await this.house.lab.count();
    return { at: (asked + performance.now()) / 2, bytes };
  }
}

function keep<K, V>(map: Map<K, V>, key: K, value: V | undefined): void {
  if (value === undefined) map.delete(key);
  else map.set(key, value);
}
