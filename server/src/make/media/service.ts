/** A systemd service that keeps FFmpeg running: systemd.service(5), systemd.exec(5). */

import type { Plan } from '../../plan.ts';
import type { Device, Site } from '../../site/model.ts';
import { commented, header } from '../header.ts';
import { mountUnits, unitText, unitWord } from '../quoting/unit.ts';

export interface SystemdService {
  /** How to make it again: `make recorders recorder`. */
  readonly command: string;
  readonly description: string;
  /** Lines of `[Unit]`, `[Service]` and `[Install]`, quoted already. */
  readonly unit: readonly string[];
  readonly service: readonly string[];
  readonly install: readonly string[];
}

export function serviceFile(site: Site, { command, description, unit, service, install }: SystemdService): string {
  const sections = [
    ['[Unit]', `Description=${unitText(description)}`, ...unit],
    ['[Service]', ...service, ...SANDBOX],
    ...(install.length === 0 ? [] : [['[Install]', ...install]]),
  ];
  return `${commented('#', header(site, command))}${sections.map((lines) => `\n${lines.join('\n')}\n`).join('')}`;
}

export function timerFile(site: Site, command: string, description: string, calendar: string): string {
  return `${commented('#', header(site, command))}
[Unit]
Description=${unitText(description)}

[Timer]
OnCalendar=${calendar}
Persistent=yes

[Install]
WantedBy=timers.target
`;
}

/** systemd always starts it again. */
export const RESTART_ALWAYS: readonly string[] = ['Restart=always', 'RestartSec=2s'];

/** However often it fails, systemd does not give up: a camera may be without power for a week. */
export const NO_START_LIMIT = 'StartLimitIntervalSec=0';

/** The unit starts after these if they exist, even where one fails. */
export function wants(units: readonly string[]): readonly string[] {
  return units.length === 0 ? [] : [`Wants=${units.join(' ')}`, `After=${units.join(' ')}`];
}

export const AFTER_NETWORK: readonly string[] = wants(['network-online.target']);

/**
 * The unit starts when a disk is mounted at the path: without the disk it did not start, or was stopped.
 */
export function startedByMounts(paths: readonly string[]): string[] {
  return [...new Set(paths.flatMap((path) => mountUnits(path).slice(-1)))].map((unit) => `WantedBy=${unit}`);
}

/**
 * FFmpeg exits with 255 once it has closed its files. The filter that takes the password out of its messages ignores
 * signals, and ends after it: `mixed` would kill the filter before it has passed on why FFmpeg ended.
 */
export const ORDERLY_STOP: readonly string[] = [
  'KillMode=control-group',
  'SuccessExitStatus=255',
  'TimeoutStopSec=15s',
];

/**
 * FFmpeg prints the session description of what it sends by RTP each time it starts. Errors go to the standard error,
 * which by default would go where the standard output goes.
 */
export const ERRORS_TO_JOURNAL: readonly string[] = ['StandardOutput=null', 'StandardError=journal'];

/** The service can write only where the unit allows it, and gains no privileges. */
const SANDBOX: readonly string[] = [
  'CapabilityBoundingSet=',
  'NoNewPrivileges=yes',
  'PrivateDevices=yes',
  'PrivateTmp=yes',
  'ProtectClock=yes',
  'ProtectControlGroups=yes',
  'ProtectHome=read-only',
  'ProtectHostname=yes',
  'ProtectKernelLogs=yes',
  'ProtectKernelModules=yes',
  'ProtectKernelTunables=yes',
  'ProtectProc=invisible',
  'ProtectSystem=strict',
  'RestrictAddressFamilies=AF_INET AF_INET6 AF_UNIX AF_NETLINK',
  'RestrictNamespaces=yes',
  'RestrictRealtime=yes',
  'RestrictSUIDSGID=yes',
  'SystemCallArchitectures=native',
];

/** The folder of the scripts. */
export const LIBRARY = '/usr/local/lib/plumbline';
/** The folder of session descriptions and credentials. */
export const SETTINGS = '/etc/plumbline';

export function placementNote(kind: string, { name }: Device): string {
  return (
    `${kind}: on ${name}, *.service and *.timer belong in /etc/systemd/system/, what is in lib/ in ${LIBRARY}/, ` +
    `what is in sdp/ in ${SETTINGS}/sdp/; then \`systemctl daemon-reload\`, and \`systemctl enable --now\` each. ` +
    'They need FFmpeg.'
  );
}

/** Files are named by the clock of the site, in any zone of the machine. */
export function zoneLines({ site }: Plan): readonly string[] {
  return site.timezone === undefined ? [] : [`Environment=${unitWord(`TZ=${site.timezone}`) ?? 'TZ=UTC'}`];
}

export function zoneNotes({ site }: Plan, { name }: Device): readonly string[] {
  return site.timezone === undefined
    ? [`recorders: the site says no time zone, so files are named by the clock of ${name}. Say it: \`timezone\`.`]
    : [];
}
