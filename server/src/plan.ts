/** Everything that is computed from a site. */

import { type Blank, blanksOf } from './network/blanks.ts';
import { type Network, networkOf } from './network/network.ts';
import { type Overload, overloadsOf } from './network/overload.ts';
import { type PowerSource, powerOf } from './network/power.ts';
import type { Site } from './site/model.ts';
import { type Storage, storageOf } from './storage/storage.ts';

export interface Plan {
  readonly site: Site;
  readonly network: Network;
  readonly storage: Storage;
  readonly power: readonly PowerSource[];
  readonly overloads: readonly Overload[];
  /** What is still to be filled in. */
  readonly blanks: readonly Blank[];
}

/** `previous` is the plan of the same site before an edit; it is out of date afterwards. */
export function planOf(site: Site, previous?: Plan): Plan {
  const network = networkOf(site, previous?.network);
  const sameNetwork = previous !== undefined && previous.network === network;
  const samePolicies = previous?.site.policies === site.policies;
  const sameDisks = previous?.site.volumes === site.volumes && previous.site.recordings === site.recordings;
  return {
    site,
    network,
    storage: sameNetwork && sameDisks ? previous.storage : storageOf(site, network.rates),
    power: previous?.network.topology === network.topology ? previous.power : powerOf(site, network.topology),
    overloads: sameNetwork && samePolicies ? previous.overloads : overloadsOf(network, site.policies.linkLoad),
    blanks: blanksOf(site, network.topology),
  };
}
