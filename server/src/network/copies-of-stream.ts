/** The way of one stream in full: each hop with the broadcast domain that it is in. */

import type { Site, Stream } from '../site/model.ts';
import { senderOf } from '../site/sender.ts';
import type { Copy } from './delivery.ts';
import { routeMulticast } from './multicast.ts';
import type { Network } from './network.ts';
import { routeUnicast } from './unicast.ts';

/**
 * Every copy of a stream by its routes, also those that cross only while a screen shows it. For a stream to single
 * receivers, the way to one comes after the other.
 */
export function copiesOfStream(network: Network, { deviceByName }: Site, stream: Stream): readonly Copy[] {
  const source = senderOf({ deviceByName }, stream);
  if (source === undefined) return [];
  const { interfaces, routers, multicastRouters, tree } = network;
  const context = { interfaces, routers, multicastRouters, tree, deviceByName };
  return stream.group === undefined
    ? routeUnicast(context, stream, source).copies
    : routeMulticast(context, network.memberships, stream, source, stream.group).copies;
}
