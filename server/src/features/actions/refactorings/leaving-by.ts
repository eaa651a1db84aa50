/** The port by which a server must send a group, so that its receivers get it. */

import type { Interface } from '../../../network/interface.ts';
import type { Plan } from '../../../plan.ts';
import { sendMulticastBy } from '../../../site/multicast-route.ts';
import type { Edit } from '../../../site/edit.ts';
import type { Device } from '../../../site/model.ts';

export interface Leaving {
  /** The port, where the server has several. */
  readonly egress: string | undefined;
  /** The route that the server needs for it. */
  readonly edits: readonly Edit[];
}

/** `undefined` where the receivers share no network with the server, or no route leads to them. */
export function leavingBy(
  { site, network }: Plan,
  server: Device,
  receivers: readonly string[],
  group: number,
): Leaving | undefined {
  const { interfaces, deliveries } = network;
  const devices = receivers.map((name) => site.deviceByName.get(name));
  const reachesAll = (own: Interface): boolean =>
    devices.every((device) => device !== undefined && interfaces.in(device, own.domain) !== undefined);
  const fitting = interfaces.of(server).filter(reachesAll);
  const now = interfaces.towardsGroup(server, group);
  const [first] = fitting;
  if (first === undefined) return undefined;
  const egress = (port: string): string | undefined => (server.ports.length > 1 ? port : undefined);
  const by = now?.by;
  if (by !== undefined && fitting.some((own) => own.domain === by.domain))
    return { egress: egress(by.port.name), edits: [] };
  if (server.item.faulty) return undefined;
  const othersLeaveThere = deliveries.some(
    ({ source, stream, leaves, reaches }) =>
      source === server &&
      stream.group !== undefined &&
      leaves !== undefined &&
      leaves === by &&
      reaches.some((name) => name !== server.name),
  );
  const [fix] = sendMulticastBy(server, interfaces.target(first), now?.route, othersLeaveThere ? group : undefined);
  return fix === undefined ? undefined : { egress: egress(first.port.name), edits: fix.edits };
}
