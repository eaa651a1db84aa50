// systemd-networkd itself, in a network namespace, with no files but those that it is given.
import { existsSync } from 'node:fs';
import { HostProgram } from '../../lab/host-program.ts';
import type { Namespace } from '../namespace.ts';

export const NETWORKD = '/lib/systemd/systemd-networkd';

export function whyNoNetworkd(): string | undefined {
  return existsSync(NETWORKD) ? undefined : `${NETWORKD} is not there: it is in the package systemd`;
}

/**
 * In mounts of its own, where /run is empty, so that it meets no bus and no udev of the machine. It waits for udev
 * unless /sys cannot be written, as in a container. $1 is the folder of its files.
 */
export const START = `
mount -o remount,ro,bind /sys
mount -t tmpfs none /run
[ ! -d /etc/systemd/network ] || mount -t tmpfs none /etc/systemd/network
mkdir -p /run/systemd/network /run/systemd/netif/links /run/systemd/netif/leases /run/systemd/netif/lldp
[ ! -d "$1" ] || cp "$1"/* /run/systemd/network/
chown -R systemd-network:systemd-network /run/systemd/netif
SYSTEMD_LOG_LEVEL=info SYSTEMD_LOG_TARGET=console exec ${NETWORKD} 2>&1
`;

/** Starts it; what it says of its files is said before it has enumerated the interfaces. */
export async function startNetworkd(host: Namespace, folder: string): Promise<HostProgram> {
  const program = new HostProgram(host.place, host.name, 'unshare', ['--mount', 'sh', '-ec', START, 'sh', folder]);
  await program.says('Enumeration completed');
  return program;
}

/** What it complains of in its files. */
export function complaintsOf({ output }: HostProgram): string[] {
  return output
    .split('\n')
    .filter((line) =>
      /^\/run\/systemd\/network\/|^[^ ]*\.(network|netdev): |Failed to (parse|load)|[Uu]nknown/.test(line),
    );
}
