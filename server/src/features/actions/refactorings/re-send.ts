/** Makes a server re-send a unicast stream as a group, so that its source sends once, however many watch. */

import { nextFreeGroup } from '../../../site/free/group.ts';
import { nextFreePort } from '../../../site/free/port.ts';
import { scalarText } from '../../../site/edit.ts';
import { locate } from '../../../site/locate.ts';
import type { Device, Site, Stream } from '../../../site/model.ts';
import { formatAddress } from '../../../standards/ipv4.ts';
import { RTP_PORT } from '../../../standards/rtp.ts';
import { entryOf } from '../../../text/syntax.ts';
import { type Leaving, leavingBy } from './leaving-by.ts';
import { type Values, entryBehind } from '../../../site/new-entry.ts';
import { receiversOf } from './receivers.ts';
import type { RefactoringCursor, Offered, Refactoring } from './refactoring.ts';
import { asName } from '../../../text/words.ts';

/** The most servers that are offered, one action for each. */
const MAX_SERVERS = 3;

export const reSend: Refactoring = ({ checked: { plan }, file, offset }: RefactoringCursor): Offered[] => {
  const { site } = plan;
  const item = locate(file, offset)?.item;
  const stream = item?.section === 'streams' ? site.streamByName.get(item.name) : undefined;
  if (item === undefined || stream?.item !== item || !isUnicast(stream)) return [];
  const receivers = receiversOf(item);
  const group = nextFreeGroup(site);
  if (receivers === undefined || group === undefined) return [];
  return serversFor(site, stream)
    .slice(0, MAX_SERVERS)
    .flatMap((server): Offered[] => {
      const moved = stream.receivers.filter((name) => name !== server.name);
      const leaving = canMove(site, stream, moved) ? leavingBy(plan, server, moved, group) : undefined;
      if (leaving === undefined) return [];
      return [
        {
          title: `Re-send ${asName(stream.name)} by ${asName(server.name)} as a group`,
          kind: 'rewrite',
          makesFiles: false,
          change: () => {
            const values = valuesOf(site, stream, server, { group, moved, leaving });
            const added = entryBehind(item, freeName(site, stream.name), [
              ...values,
              ['receivers', receivers.without(server.name)],
            ]);
            return { edits: [receivers.keepOnly(server.name), added, ...leaving.edits], made: new Map() };
          },
        },
      ];
    });
};

function isUnicast({ source, item, transport }: Stream): boolean {
  return source !== undefined && transport !== undefined && entryOf(item.node, 'group') === undefined && !item.faulty;
}

/** Servers among the receivers, or else all. */
function serversFor({ devices }: Site, { source, receivers }: Stream): Device[] {
  const servers = devices.filter(({ kind, name }) => kind === 'server' && name !== source);
  const among = servers.filter(({ name }) => receivers.includes(name));
  return among.length > 0 ? among : servers;
}

/** Whether a receiver can change over to the group: it neither records nor re-sends the stream itself. */
function canMove({ streams, recordings, volumeByName }: Site, { name }: Stream, moved: readonly string[]): boolean {
  const needs = (device: string | undefined): boolean => device !== undefined && moved.includes(device);
  return (
    moved.length > 0 &&
    !streams.some(({ carries, source }) => carries === name && needs(source)) &&
    !recordings.some(({ stream, volume }) => stream === name && needs(volumeByName.get(volume ?? '')?.host))
  );
}

interface Sent {
  readonly group: number;
  readonly moved: readonly string[];
  readonly leaving: Leaving;
}

function valuesOf(site: Site, stream: Stream, server: Device, { group, moved, leaving: { egress } }: Sent): Values {
  // A transport stream is re-sent as a transport stream, padding included.
  const transport = stream.transport === 'ts-udp' || stream.transport === 'ts-rtp' ? stream.transport : 'rtp';
  const port = nextFreePort(site, stream, RTP_PORT, { transport, group, receivers: moved });
  const muxRate = entryOf(stream.item.node, 'mux-rate')?.value;
  const values: (readonly [string, string] | undefined)[] = [
    ['source', scalarText(server.name, true)],
    ['carries', scalarText(stream.name, true)],
    ['transport', transport],
    ['group', formatAddress(group)],
    port === undefined ? undefined : ['port', String(port)],
    transport === 'rtp' || muxRate?.kind !== 'scalar'
      ? undefined
      : ['mux-rate', scalarText(String(muxRate.value), true)],
    egress === undefined ? undefined : ['egress', scalarText(egress, true)],
  ];
  return values.filter((value) => value !== undefined);
}

/** NAME-live, or the first of that name with a number that no stream has. */
function freeName({ streamByName }: Site, name: string): string {
  for (let number = 1; ; number++) {
    const own = number === 1 ? `${name}-live` : `${name}-live-${number}`;
    if (!streamByName.has(own)) return own;
  }
}
