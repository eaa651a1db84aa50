// Services from units that were made, run on a host of the lab with the same arguments, environment, file mode and
// rights, and restarted as the unit says. Missing of systemd: its sandbox, its journal, and its order of starting.
import { chmodSync, chownSync, cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Device } from '../../server/src/site/model.ts';
import type { MadeFile } from '../../server/src/make/output.ts';
import type { HostProgram } from '../lab/host-program.ts';
import type { Lab } from '../lab/lab.ts';
import { sleep } from '../lab/run.ts';
import { Unit } from './unit.ts';

const STAGE = fileURLToPath(new URL('./stage.sh', import.meta.url));

/** Some user who is not root; numbers need no entry in /etc/passwd. */
export const USER = 64_123;

/** What a server has been given: the made files in their places, credentials, and folders for volumes. */
export class Server {
  readonly root: string;
  private readonly lab: Lab;
  private readonly host: Device;
  private readonly units = new Map<string, Unit>();
  private readonly services: Service[] = [];

  constructor(lab: Lab, host: Device) {
    this.lab = lab;
    this.host = host;
    this.root = join(lab.folder, `root-${host.name}`);
    for (const folder of ['etc/credentials', 'lib', 'srv', 'run'])
      mkdirSync(join(this.root, folder), { recursive: true });
  }

  /** Puts the files of this host where their notes say. */
  install(files: readonly MadeFile[]): void {
    const own = `${this.host.name}/`;
    for (const { path, text, executable } of files.filter((file) => file.path.startsWith(own))) {
      const below = path.slice(own.length);
      if (/\.(service|timer)$/.test(below)) {
        this.units.set(below, new Unit(below, text));
        continue;
      }
      const target = join(this.root, below.startsWith('lib/') ? below : `etc/${below}`);
      mkdirSync(join(target, '..'), { recursive: true });
      writeFileSync(target, text);
      chmodSync(target, executable === true ? 0o755 : 0o644);
    }
  }

  credentials(name: string, text: string): void {
    writeFileSync(join(this.root, 'etc/credentials', name), text, { mode: 0o600 });
  }

  /**
   * A program that the services find by its name: a file of JavaScript, with those that lie beside it in `programs`.
   */
  program(name: string, script: string): void {
    const folder = join(this.root, 'bin');
    mkdirSync(folder, { recursive: true });
    cpSync(script, join(folder, `${name}.cjs`));
    const beside = join(dirname(script), 'programs');
    if (existsSync(beside)) cpSync(beside, join(folder, 'programs'), { recursive: true });
    writeFileSync(join(folder, name), `#!/bin/sh\nexec ${process.execPath} /usr/local/bin/${name}.cjs "$@"\n`);
    for (const file of [name, `${name}.cjs`]) chmodSync(join(folder, file), 0o755);
  }

  /** A folder below /srv that belongs to the user of the services; as seen from outside. */
  volume(name: string): string {
    const path = join(this.root, 'srv', name);
    mkdirSync(path, { recursive: true });
    chownSync(path, USER, USER);
    return path;
  }

  get unitNames(): readonly string[] {
    return [...this.units.keys()];
  }

  unit(name: string): Unit {
    const unit = this.units.get(name);
    if (unit === undefined) throw new Error(`no unit ${name} among ${[...this.units.keys()].join(', ')}`);
    return unit;
  }

  start(name: string): Service {
    const service = new Service(this.unit(name), (unit, command) => this.run(unit, command));
    this.services.push(service);
    return service;
  }

  /** Runs a unit of `Type=oneshot`: its commands one after the other. @throws where one fails */
  async finish(name: string): Promise<void> {
    const unit = this.unit(name);
    for (const command of unit.commands('ExecStart')) {
      const program = this.run(unit, command);
      const code = await program.ended;
      if (code !== 0) throw new Error(`${name}: ${command.join(' ')}: exit ${code}: ${program.output}`);
    }
  }

  async stop(): Promise<void> {
    await Promise.all(this.services.map((service) => service.stop()));
  }

  private run(unit: Unit, command: readonly string[]): HostProgram {
    const environment = Object.entries(unit.environment()).map(([key, value]) => `${key}=${value}`);
    const loaded = unit.all('Service', 'LoadCredential');
    if (loaded.length > 0) environment.push(`CREDENTIALS_DIRECTORY=/run/credentials/${unit.name}`);
    if (unit.one('Service', 'RuntimeDirectory') !== undefined) {
      const kept = join(this.root, 'run', `${unit.name}.kept`);
      mkdirSync(kept, { recursive: true });
      chownSync(kept, USER, USER);
      environment.push(`RUNTIME_DIRECTORY=/run/credentials/${unit.name}.kept`);
    }
    const folder = join(this.root, 'run', unit.name);
    mkdirSync(folder, { recursive: true });
    for (const each of loaded) {
      const [name = '', from = ''] = each.split(':');
      const target = join(folder, name);
      cpSync(join(this.root, from.replace(/^\/etc\/plumbline\//, 'etc/')), target);
      chmodSync(target, 0o400);
      chownSync(target, USER, USER);
    }
    return this.lab.start(this.host, 'bash', [
      STAGE,
      this.root,
      unit.one('Service', 'UMask') ?? '0022',
      String(USER),
      ...environment,
      '--',
      ...command,
    ]);
  }
}

/** Goes on until it is stopped, as `Restart=` says. */
export class Service {
  readonly unit: Unit;
  /** How often its program has been started. */
  starts = 0;
  private readonly run: (unit: Unit, command: readonly string[]) => HostProgram;
  private readonly past: string[] = [];
  private current: HostProgram | undefined;
  private stopped = false;
  private readonly ended: Promise<void>;

  constructor(unit: Unit, run: (unit: Unit, command: readonly string[]) => HostProgram) {
    this.unit = unit;
    this.run = run;
    this.ended = this.goOn();
  }

  /** Everything that it and those before it have said. */
  get output(): string {
    return [...this.past, this.current?.output ?? ''].join('');
  }

  get pid(): number | undefined {
    return this.current?.pid;
  }

  /** What /proc shows to everybody of the program that runs now. */
  get commandLine(): readonly string[] {
    return this.pid === undefined ? [] : readFileSync(`/proc/${this.pid}/cmdline`, 'utf8').split('\0').slice(0, -1);
  }

  kill(): void {
    this.current?.kill();
  }

  async stop(): Promise<void> {
    this.stopped = true;
    this.current?.stop();
    await this.ended;
  }

  private async goOn(): Promise<void> {
    const pause = Number.parseInt(this.unit.one('Service', 'RestartSec') ?? '0', 10) * 1000;
    const restart = this.unit.one('Service', 'Restart');
    for (;;) {
      if (this.starts > 0) await sleep(pause);
      if (this.stopped) return;
      let ok = true;
      for (const command of this.unit.commands('ExecStartPre')) ok &&= (await this.finish(command)) === 0;
      if (!ok) this.starts++;
      else
        for (const command of this.unit.commands('ExecStart')) {
          if (this.stopped) return;
          this.starts++;
          ok &&= (await this.finish(command)) === 0;
        }
      const again = restart === 'always' || (restart === 'on-failure' && !ok);
      if (this.stopped || !again) return;
    }
  }

  private async finish(command: readonly string[]): Promise<number> {
    this.current = this.run(this.unit, command);
    const code = await this.current.ended;
    this.past.push(this.current.output);
    this.current = undefined;
    return code;
  }
}
