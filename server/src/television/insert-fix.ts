/** Fixes that put a part into a coax. */

import { type Fix, fixOf } from '../site/edit.ts';
import { type Connector, type Site, connectorName } from '../site/model.ts';
import type { Values } from '../site/new-entry.ts';
import { insertEdits } from '../site/television/insert-part.ts';
import type { FrequencyRange } from '../text/quantity.ts';
import { megahertz } from '../text/radio-words.ts';
import { directCurrentOf } from './direct-current.ts';
import { runsByConnector } from './run.ts';
import type { Television } from './television.ts';

/** An attenuator in front of the connector; none where no coax ends there. */
export function attenuatorInFront(
  site: Site,
  television: Television,
  at: Connector | undefined,
  loss: number,
): readonly Fix[] {
  const values: Values = [
    ['kind', 'attenuator'],
    ['loss', `${loss} dB`],
  ];
  return inFront(site, television, at, { what: `an attenuator of ${loss} dB`, suffix: 'pad', values });
}

/** A filter with the usual loss in front of the connector; none where no coax ends there. */
export function filterInFront(
  site: Site,
  television: Television,
  at: Connector | undefined,
  { from, to }: FrequencyRange,
): readonly Fix[] {
  const values: Values = [
    ['kind', 'filter'],
    ['passes', `${from / 1e6}-${to / 1e6} MHz`],
    ['loss', '1.5 dB'],
  ];
  return inFront(site, television, at, {
    what: `a filter for ${megahertz(from)} to ${megahertz(to)}`,
    suffix: 'filter',
    values,
  });
}

interface Inserted {
  /** The part in words. */
  readonly what: string;
  /** The end of its name, behind that of the part that it stands in front of. */
  readonly suffix: string;
  readonly values: Values;
}

function inFront(
  site: Site,
  television: Television,
  at: Connector | undefined,
  { what, suffix, values }: Inserted,
): readonly Fix[] {
  if (at === undefined) return [];
  const part = { name: `${at.device.name}-${suffix}`, values, passesCurrent: carriesCurrent(site, television, at) };
  return fixOf(`Put ${what} in front of ${connectorName(at)}`, ...insertEdits(site, at, part));
}

/** Whether the coax that ends there carries the current of a supply. */
function carriesCurrent({ devices }: Site, { runs, directCurrent }: Television, at: Connector): boolean {
  const others = runs.filter(({ a, b }) => a !== at && b !== at);
  const feeds = ({ consumers }: Television['directCurrent']): number =>
    consumers.reduce((sum, consumer) => sum + consumer.feeds.length, 0);
  return feeds(directCurrentOf(devices, runsByConnector(others))) < feeds(directCurrent);
}
