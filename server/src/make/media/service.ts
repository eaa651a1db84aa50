/** A service of systemd that runs FFmpeg and goes on running it: systemd.service(5), systemd.exec(5). */

import type { Plan } from '../../plan.ts';
import type { Device, Site } from '../../site/model.ts';
import { commented, header } from '../header.ts';
import { mountUnits, unitText, unitWord } from '../quoting/unit.ts';

export interface Service {
  /** How to make it again. */
  readonly command: string;
  readonly description: string;
  /** Lines of `[Unit]`, `[Service]` and `[Install]`, ready to be written. */
  readonly unit: readonly string[];
  readonly service: readonly string[];
  readonly install: readonly string[];
}

export function serviceFile(site: Site, { command, description, unit, service, install }: Service): string {
  const sections = [
    ['[Unit]', `Description=${unitText(description)}`, ...unit],
    ['[Service]', ...service, ...CONFINED],
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

/** For as long as the machine is on: whatever ends it, it is begun again. */
export const ALWAYS: readonly string[] = ['Restart=always', 'RestartSec=2s'];

/** No number of failures makes systemd give up: a camera may be without power for a week. */
export const NEVER_GIVES_UP = 'StartLimitIntervalSec=0';

/** It begins after these, where they are there, and does without them where they fail. */
export function rather(units: readonly string[]): readonly string[] {
  return units.length === 0 ? [] : [`Wants=${units.join(' ')}`, `After=${units.join(' ')}`];
}

export const AFTER_NETWORK: readonly string[] = rather(['network-online.target']);

/** It begins again when a disk is mounted at the path, or mounted anew: with the disk it was held back, or ended. */
export function begunBy(paths: readonly string[]): string[] {
  return [...new Set(paths.flatMap((path) => mountUnits(path).slice(-1)))].map((unit) => `WantedBy=${unit}`);
}

/**
 * FFmpeg ends with 255 when it has closed its files. What takes the password out of its words beside it heeds no signal,
 * and ends after it: `mixed` would kill it before it has handed on why FFmpeg ended.
 */
export const ENDS_IN_ORDER: readonly string[] = [
  'KillMode=control-group',
  'SuccessExitStatus=255',
  'TimeoutStopSec=15s',
];

/**
 * FFmpeg says the description of what it sends by RTP each time that it begins. What goes wrong it says elsewhere, which
 * would go the same way if nothing were said of it.
 */
export const WITHOUT_DESCRIPTION: readonly string[] = ['StandardOutput=null', 'StandardError=journal'];

/** It cannot write but where it is told, nor be more than it is. */
const CONFINED: readonly string[] = [
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

/** Where the scripts are put. */
export const LIBRARY = '/usr/local/lib/plumbline';
/** Where descriptions and credentials are put. */
export const SETTINGS = '/etc/plumbline';

export function whereTo(kind: string, { name }: Device): string {
  return (
    `${kind}: on ${name}, *.service and *.timer belong in /etc/systemd/system/, what is in lib/ in ${LIBRARY}/, what is in sdp/ in ` +
    `${SETTINGS}/sdp/; then \`systemctl daemon-reload\`, and \`systemctl enable --now\` each. They need FFmpeg.`
  );
}

/** Names are by the clock of the site, whatever the machine's is. */
export function zoneLines({ site }: Plan): readonly string[] {
  return site.timezone === undefined ? [] : [`Environment=${unitWord(`TZ=${site.timezone}`) ?? 'TZ=UTC'}`];
}

export function zoneNotes({ site }: Plan, { name }: Device): readonly string[] {
  return site.timezone === undefined
    ? [`recorders: the site says no time zone, so files are named by the clock of ${name}. Say it: \`timezone\`.`]
    : [];
}
