/** Open vSwitch of our own: a database and a switch process that nothing else on the machine knows of. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Place, URGENT } from './place.ts';
import { killProcess, run } from './run.ts';

const SCHEMA = '/usr/share/openvswitch/vswitch.ovsschema';

/** The namespace that the switches and their ends of the cables are in. */
export const SWITCHES = 'switches';

export class OpenVSwitch {
  private readonly folder: string;
  private readonly environment: Readonly<Record<string, string>>;

  private constructor(place: Place) {
    this.folder = place.folder;
    this.environment = {
      OVS_RUNDIR: this.folder,
      OVS_LOGDIR: this.folder,
      OVS_DBDIR: this.folder,
      OVS_SYSCONFDIR: this.folder,
      OVS_PKGDATADIR: '/usr/share/openvswitch',
    };
  }

  /** Starts both processes; they end with the place. */
  static async start(place: Place): Promise<OpenVSwitch> {
    const daemons = new OpenVSwitch(place);
    const at = (name: string): string => join(place.folder, name);
    const usual = (name: string): string[] => [
      `--pidfile=${at(`${name}.pid`)}`,
      `--unixctl=${at(`${name}.ctl`)}`,
      `--log-file=${at(`${name}.log`)}`,
      '-vconsole:off',
      '--detach',
      '--no-chdir',
    ];
    const { environment } = daemons;
    place.atEnd(() => daemons.stop());
    await run('ovsdb-tool', ['create', at('conf.db'), SCHEMA], { environment });
    // Output of a daemon in the background would keep us waiting, so it writes only to its log.
    await detached(
      ['ovsdb-server', at('conf.db'), `--remote=punix:${at('db.sock')}`, ...usual('ovsdb-server')],
      environment,
    );
    await daemons.configure(['--no-wait', 'init']);
    const inside = ['ip', 'netns', 'exec', place.namespace(SWITCHES), ...(await beforeAll())];
    await detached(
      [...inside, 'ovs-vswitchd', `unix:${at('db.sock')}`, '--disable-system', ...usual('ovs-vswitchd')],
      environment,
    );
    return daemons;
  }

  /** A transaction of ovs-vsctl; returns when the switches have it. */
  async configure(args: readonly string[]): Promise<string> {
    return run('ovs-vsctl', [`--db=unix:${join(this.folder, 'db.sock')}`, '--timeout=20', ...args], {
      environment: this.environment,
    });
  }

  /** Asks a bridge by OpenFlow; once more where it hung up on a client that greeted it late, as on a busy machine. */
  async ofctl(args: readonly string[], tries = 5): Promise<string> {
    try {
      return await run('ovs-ofctl', args, { environment: this.environment });
    } catch (error) {
      if (tries <= 1 || !/\(Broken pipe\)/.test(String(error))) throw error;
      return this.ofctl(args, tries - 1);
    }
  }

  /** Asks the switch process itself. */
  appctl(args: readonly string[]): Promise<string> {
    return run('ovs-appctl', ['-t', join(this.folder, 'ovs-vswitchd.ctl'), ...args], { environment: this.environment });
  }

  /** Kills them: nothing of theirs outlives them and their namespace, and an orderly end takes seconds. */
  private stop(): void {
    for (const name of ['ovs-vswitchd', 'ovsdb-server']) {
      const pidFile = join(this.folder, `${name}.pid`);
      if (existsSync(pidFile)) killProcess(Number(readFileSync(pidFile, 'utf8')));
    }
  }
}

/**
 * A hardware switch forwards frames no matter what the hosts do. This one reads sockets that hold some hundred frames
 * each and loses frames when they are full: so it gets real-time priority, where the machine allows that (sched(7)).
 */
async function beforeAll(): Promise<readonly string[]> {
  const realTime = ['chrt', '--rr', '1'];
  try {
    await run('chrt', [...realTime.slice(1), 'true']);
    return realTime;
  } catch {
    // Where that is missing or refused, by a low nice value.
    return ['nice', ...URGENT];
  }
}

async function detached(command: readonly string[], environment: Readonly<Record<string, string>>): Promise<void> {
  await run('sh', ['-c', 'exec "$@" >/dev/null 2>&1', 'sh', ...command], { environment });
}
