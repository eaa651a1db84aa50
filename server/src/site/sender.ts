/** Where a stream comes into the network. */

import type { Device, Site, Stream } from './model.ts';

/** The device that sends a stream: its source, or the host of a source that has no port of its own. */
export function senderOf(site: Pick<Site, 'deviceByName'>, { source }: Pick<Stream, 'source'>): Device | undefined {
  const device = source === undefined ? undefined : site.deviceByName.get(source);
  return device?.host === undefined ? device : site.deviceByName.get(device.host);
}
