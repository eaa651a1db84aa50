/** The fix that puts an attenuator where too much arrives. */

import { type Fix, fixOf } from '../site/edit.ts';
import { type Connector, type Site, connectorName } from '../site/model.ts';
import { attenuatorEdits } from '../site/television/insert-part.ts';
import { directCurrentOf } from './direct-current.ts';
import { runsByConnector } from './run.ts';
import type { Television } from './television.ts';

/** In front of the connector; none where no coax ends there. */
export function attenuatorInFront(
  site: Site,
  television: Television,
  at: Connector | undefined,
  loss: number,
): readonly Fix[] {
  if (at === undefined) return [];
  return fixOf(
    `Put an attenuator of ${loss} dB in front of ${connectorName(at)}`,
    ...attenuatorEdits(site, at, loss, carriesCurrent(site, television, at)),
  );
}

/** Whether a supply is lost to what it feeds without the coax that ends there. */
function carriesCurrent({ devices }: Site, { runs, directCurrent }: Television, at: Connector): boolean {
  const others = runs.filter(({ a, b }) => a !== at && b !== at);
  const feeds = ({ consumers }: Television['directCurrent']): number =>
    consumers.reduce((sum, consumer) => sum + consumer.feeds.length, 0);
  return feeds(directCurrentOf(devices, runsByConnector(others))) < feeds(directCurrent);
}
