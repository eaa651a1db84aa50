/** systemd units that announce streams by SAP, each with its session descriptions. */

import type { Plan } from '../../plan.ts';
import type { Interface } from '../../network/interface.ts';
import { type Device, type Stream, portName } from '../../site/model.ts';
import { placeOfPort } from '../../site/places.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { sapGroupFor } from '../../standards/multicast.ts';
import { few } from '../../text/words.ts';
import { refusedName } from '../file-name.ts';
import { commented, header } from '../header.ts';
import { type Made, type Output, type Refusal, together } from '../output.ts';
import { unitText } from '../quoting/unit.ts';
import { describable } from './describe.ts';
import { descriptionFile } from './sdp.ts';

export const announcements: Output = {
  kind: 'announcements',
  title: 'Announcements of streams (SAP)',
  summary: 'systemd units by which a server announces multicast streams, so that players and recorders list them',
  subjects: (plan) => [...new Set(announcers(plan).map(({ at }) => at.device.name))].sort(),
  make(plan, subject) {
    const made = announcers(plan)
      .filter(({ at }) => subject === undefined || at.device.name === subject)
      .map((announcer) => unitOf(plan, announcer));
    const silent = subject === undefined ? unannounced(plan) : [];
    const note =
      `announcements: nobody announces ${few(silent.map(({ name }) => name))}: no server is in the network that ` +
      'they are sent into.';
    return together([...made, { files: [], refused: [], notes: silent.length === 0 ? [] : [note] }]);
  },
};

interface Announcing {
  readonly at: Interface;
  readonly streams: readonly Stream[];
}

/**
 * A server announces its own streams, by the interface that sends them. The first server in a network announces the
 * streams that a camera or a tuner sends into it.
 */
function announcers(plan: Plan): readonly Announcing[] {
  const found = new Map<Interface, Stream[]>();
  for (const stream of multicastStreams(plan)) {
    const at = announcerOf(plan, stream);
    if (at === undefined) continue;
    const streams = found.get(at);
    if (streams === undefined) found.set(at, [stream]);
    else streams.push(stream);
  }
  return [...found].map(([at, streams]) => ({ at, streams }));
}

function unannounced(plan: Plan): readonly Stream[] {
  return multicastStreams(plan).filter((stream) => announcerOf(plan, stream) === undefined);
}

function multicastStreams({ site }: Plan): readonly Stream[] {
  return site.streams.filter(
    (stream) => describable(stream) && stream.group !== undefined && isMulticast(stream.group),
  );
}

function announcerOf(plan: Plan, stream: Stream): Interface | undefined {
  const { source, leaves } = plan.network.delivery(stream);
  if (leaves === undefined || isServer(source)) return leaves;
  const servers = plan.site.devices.filter(isServer).sort((a, b) => (a.name < b.name ? -1 : 1));
  return servers.map((server) => plan.network.interfaces.in(server, leaves.domain)).find((at) => at !== undefined);
}

function isServer(device: Device | undefined): boolean {
  return device?.kind === 'server';
}

function unitOf(plan: Plan, { at, streams }: Announcing): Made {
  const { device } = at;
  const unnamed = refusedName(device.item);
  if (unnamed !== undefined) return { files: [], refused: [unnamed], notes: [] };
  const silent = withoutAddress(at);
  if (silent !== undefined || at.address === undefined) return { files: [], refused: silent ?? [], notes: [] };
  const address = formatAddress(at.address);
  const folder = `announced-${address}`;
  const unit = `plumbline-announce-${address}.service`;
  const announceable = streams.filter(({ group }) => sapGroupFor(group ?? 0) !== undefined);
  const descriptions = together([
    ...announceable.map((stream) => descriptionFile(plan, stream, `${device.name}/${folder}/`)),
    { files: [], refused: [], notes: noScope(streams.filter((stream) => !announceable.includes(stream))) },
  ]);
  if (descriptions.files.length === 0) return descriptions;
  const text = unitText(
    `Announces ${few(announceable.map(({ name }) => name))} of ${plan.site.name ?? 'a site without a name'}`,
  );
  return together([
    {
      files: [
        {
          path: `${device.name}/${unit}`,
          text: unitFile(header(plan.site, `make announcements ${device.name}`), text, address, folder),
        },
      ],
      refused: [],
      notes: [],
    },
    descriptions,
    { files: [], refused: [], notes: [placementNote(device, folder, unit)] },
  ]);
}

function withoutAddress({ port, address }: Interface): readonly Refusal[] | undefined {
  if (address !== undefined) return undefined;
  const message = `${portName(port)} has no address, so nothing can be announced by it. Say its address.`;
  return [{ rule: 'not-made', at: placeOfPort(port), message }];
}

/** A note that the unit cannot see a program linked from a home folder: `ProtectHome=yes`. */
function placementNote({ name }: Device, folder: string, unit: string): string {
  return (
    `announcements: on ${name}, ${folder} belongs in /etc/plumbline/ and ${unit} in /etc/systemd/system/; then ` +
    `\`systemctl daemon-reload\` and \`systemctl enable --now ${unit}\`. It needs Node.js and the plumbline ` +
    'program: in a clone, `npm ci && npm run build && npm install --global --install-links .`, as a link into a ' +
    'home folder does not do: the unit sees none.'
  );
}

function noScope(streams: readonly Stream[]): readonly string[] {
  if (streams.length === 0) return [];
  return [
    `announcements: nobody announces ${few(streams.map(({ name }) => name))}: no RFC says on which group sessions of ` +
      `the scope of ${formatAddress(streams[0]?.group ?? 0)} are. Groups of 239.255.0.0/16 and 239.192.0.0/14 have one.`,
  ];
}

function unitFile(head: readonly string[], description: string, address: string, folder: string): string {
  return `${commented('#', head)}
[Unit]
Description=${description}
Wants=network-online.target
After=network-online.target

[Service]
ExecStart=/usr/bin/env plumbline announce /etc/plumbline/${folder} --interface ${address}
# What is announced is withdrawn at the end.
KillSignal=SIGTERM
TimeoutStopSec=10s
# Also where the address is not there yet.
Restart=on-failure
RestartSec=10s

DynamicUser=yes
CapabilityBoundingSet=
NoNewPrivileges=yes
PrivateDevices=yes
PrivateTmp=yes
ProtectClock=yes
ProtectControlGroups=yes
ProtectHome=yes
ProtectHostname=yes
ProtectKernelLogs=yes
ProtectKernelModules=yes
ProtectKernelTunables=yes
ProtectSystem=strict
RestrictAddressFamilies=AF_INET AF_INET6 AF_UNIX AF_NETLINK
RestrictNamespaces=yes
RestrictRealtime=yes
RestrictSUIDSGID=yes
SystemCallArchitectures=native

[Install]
WantedBy=multi-user.target
`;
}
