// A network namespace with the interfaces of one host in it, each with a cable to nowhere.
import { spawnSync } from 'node:child_process';
import { Place } from '../lab/place.ts';
import { run, runIn } from '../lab/run.ts';

/** Why there can be no namespace here, or one of the programs is missing; `undefined` where all is there. */
export function whyNoNamespace(...programs: readonly string[]): string | undefined {
  if (process.platform !== 'linux') return 'network namespaces are of Linux';
  if (process.getuid?.() !== 0) return 'network namespaces need root';
  const missing = ['ip', ...programs].find(
    (program) => spawnSync('sh', ['-c', 'command -v "$1"', 'sh', program]).status !== 0,
  );
  if (missing !== undefined) return `${missing} is not installed`;
  const { status, stderr } = spawnSync('unshare', ['--net', 'true'], { encoding: 'utf8' });
  return status === 0 ? undefined : `no network namespace: ${stderr.trim()}`;
}

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export class Namespace {
  readonly place = new Place();
  readonly name: string;

  private constructor() {
    this.name = this.place.namespace('host');
  }

  /**
   * Interfaces that are down and have no address; the other end of each is up. Call `end` also where something fails.
   */
  static async with(interfaces: readonly string[]): Promise<Namespace> {
    const made = new Namespace();
    await made.place.addNamespaces(['host']);
    // No IPv6: its addresses come by themselves, and later than what is looked at.
    await made.run([
      'for i in all default; do echo 1 >/proc/sys/net/ipv6/conf/$i/disable_ipv6; done',
      'ip link set dev lo up',
    ]);
    for (const [index, name] of interfaces.entries()) await made.plug(name, `far${index}`);
    return made;
  }

  async plug(name: string, far: string): Promise<void> {
    await run('ip', ['-n', this.name, 'link', 'add', 'dev', name, 'type', 'veth', 'peer', 'name', far]);
    await run('ip', ['-n', this.name, 'link', 'set', 'dev', far, 'up']);
  }

  /** Commands of a shell; throws where one fails. */
  run(commands: readonly string[]): Promise<void> {
    return runIn(this.name, commands);
  }

  /** A program inside, with what it said and how it ended. */
  exec(program: string, ...args: readonly string[]): Ran {
    const { status, stdout, stderr } = spawnSync('ip', ['netns', 'exec', this.name, program, ...args], {
      encoding: 'utf8',
    });
    return { status, out: stdout, err: stderr };
  }

  /** Addresses, links and routes as they are. */
  state(): string {
    return ['addr', 'route', '-d link'].map((what) => this.exec('ip', ...what.split(' '), 'show').out).join('\n');
  }

  /** Whether the kernel has VLAN devices; tried on an interface. */
  async hasVlans(card: string): Promise<boolean> {
    const { status } = this.exec('ip', 'link', 'add', 'link', card, 'name', 'probe', 'type', 'vlan', 'id', '99');
    if (status === 0) await this.run(['ip link delete dev probe']);
    return status === 0;
  }

  end(): void {
    this.place.clear();
  }
}
