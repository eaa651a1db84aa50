// The server of Harrow Lane, on which everything that was made for it runs from its units.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { MadeFile } from '../../server/src/make/output.ts';
import { fileNames } from '../../server/src/recordings/file-names.ts';
import type { Recording } from '../../server/src/site/model.ts';
import { program } from '../cli/run.ts';
import { until } from '../lab/until.ts';
import type { House } from './house.ts';
import { ProcessList } from './process-list.ts';
import { Server, type Service } from './service.ts';
import { ACCESS, secretsOf } from './site.ts';

const KINDS = ['announcements', 'relays', 'recorders', 'deletion'];
const ANNOUNCER = /^plumbline-announce-.*\.service$/;
const LASTING = /^plumbline-(?:ingest|relay|record)-.*\.service$/;

export class Recorder {
  readonly server: Server;
  /** Those that run as long as the machine is on, by the name of their unit. */
  readonly services = new Map<string, Service>();
  /** Of all that runs on this machine while the services do. */
  readonly processes = new ProcessList([...ACCESS.values()].flatMap(secretsOf));
  /** Milliseconds since 1970: before anything was recorded. */
  readonly begun = Date.now();
  private readonly house: House;

  /** @param made the folder of what was made, one folder a kind */
  constructor(house: House, made: string) {
    this.house = house;
    const { plan, lab } = house;
    this.server = new Server(lab, house.host('recorder'));
    for (const kind of KINDS) this.server.install(filesBelow(join(made, kind)));
    this.server.program('plumbline', program);
    for (const { name } of plan.site.volumes) this.server.volume(name);
    for (const [name, { user, password }] of ACCESS) this.server.credentials(name, `${user}\n${password}\n`);
  }

  /** Begins everything, until something of each recording is on the disk; then the announcer crashes, once. */
  async start(): Promise<void> {
    this.processes.watch();
    await this.server.finish('plumbline-folders.service');
    this.begin(ANNOUNCER);
    this.begin(LASTING);
    await until(
      () => this.house.plan.site.recordings.every((recording) => this.filesOf(recording).length > 0),
      () => this.said,
    );
    this.announcer.kill();
  }

  private begin(which: RegExp): void {
    for (const name of this.server.unitNames.filter((each) => which.test(each)))
      this.services.set(name, this.server.start(name));
  }

  async stop(): Promise<void> {
    this.processes.end();
    await this.server.stop();
  }

  get announcer(): Service {
    return [...this.services].find(([name]) => ANNOUNCER.test(name))?.[1] ?? assert.fail('no announcer');
  }

  service(name: string): Service {
    return this.services.get(name) ?? assert.fail(`no ${name}`);
  }

  recording(name: string): Recording {
    return this.house.plan.site.recordingByName.get(name) ?? assert.fail(`no ${name}`);
  }

  /** The folder of a volume, as seen from outside. */
  volume(name = ''): string {
    return join(this.server.root, 'srv', name);
  }

  /** In the order of their names, which is that of time. */
  filesOf({ name, volume }: Recording): string[] {
    const folder = join(this.volume(volume), name);
    if (!existsSync(folder)) return [];
    return readdirSync(folder)
      .map((file) => join(folder, file))
      .sort();
  }

  /** When a file was started, as its name says; milliseconds since 1970. */
  instantOf({ file = '', volume }: Recording, path: string): number {
    const names = fileNames(file, this.house.plan.site.timezone);
    return names.read(relative(this.volume(volume), path))?.instants?.[0] ?? assert.fail(`${path} tells no time`);
  }

  /** The last words of each service. */
  get said(): string {
    return [...this.services]
      .map(([name, { output, starts }]) => `${name} (${starts}): ${output.slice(-400)}`)
      .join('\n');
  }

  /** How many the announcer has been given. */
  get announcedStreams(): number {
    const settings = join(this.server.root, 'etc');
    const folder = readdirSync(settings).find((each) => each.startsWith('announced-')) ?? assert.fail('none announced');
    return readdirSync(join(settings, folder)).length;
  }
}

export function filesBelow(folder: string): MadeFile[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => ({ path, full: join(folder, path) }))
    .filter(({ full }) => statSync(full).isFile())
    .map(({ path, full }) => ({
      path,
      text: readFileSync(full, 'utf8'),
      executable: (statSync(full).mode & 0o111) !== 0,
    }));
}
