/** Everything that is computed from a site. */

import { lastResult } from './memo.ts';
import { type Air, airOf } from './network/airtime.ts';
import { type Blank, blanksOf } from './network/blanks.ts';
import { type Network, networker } from './network/network.ts';
import { type Overload, overloadsOf } from './network/overload.ts';
import { type PoeFigures, poeOf } from './network/poe.ts';
import { type RackFigures, racksOf } from './racks/racks.ts';
import { assembler } from './site/assemble.ts';
import type { Item } from './site/item.ts';
import type { Site } from './site/model.ts';
import { type Storage, storageOf } from './storage/storage.ts';
import { type CameraRuntime, cameraRuntimes } from './supply/camera-runtimes.ts';
import { type Supply, supplyOf } from './supply/supply.ts';
import { type Television, televisioner } from './television/television.ts';

export interface Plan {
  readonly site: Site;
  readonly network: Network;
  readonly storage: Storage;
  readonly television: Television;
  readonly racks: readonly RackFigures[];
  /** What each switch feeds. */
  readonly poe: readonly PoeFigures[];
  /** What feeds each device, and for how long without mains: computed once it is asked for. */
  readonly supply: () => Supply;
  /** How long each camera goes on without mains, likewise. */
  readonly cameraRuntimes: () => readonly CameraRuntime[];
  /** What multicast takes of the air of access points. */
  readonly air: readonly Air[];
  readonly overloads: readonly Overload[];
  /** What is still to be filled in. */
  readonly blanks: readonly Blank[];
}

export function planOf(site: Site): Plan {
  return sitePlanner()(site);
}

/** The same for one site that is edited: what an edit leaves as it is stays the same object. */
export function planner(): (items: readonly Item[]) => Plan {
  const siteOf = assembler();
  const plan = sitePlanner();
  return (items) => plan(siteOf(items));
}

function sitePlanner(): (site: Site) => Plan {
  const networkOf = networker();
  const televisionOf = televisioner();
  const keepStorage = lastResult(
    (
      recordings: Site['recordings'],
      volumeByName: Site['volumeByName'],
      streamByName: Site['streamByName'],
      media: Site['media'],
      rates: Network['rates'],
    ) => storageOf({ recordings, volumeByName, streamByName, media, rates }),
  );
  const keepRacks = lastResult(racksOf);
  const keepPoe = lastResult(poeOf);
  const keepAir = lastResult(airOf);
  const keepOverloads = lastResult(overloadsOf);
  const keepSupply = lastResult((...of: Parameters<typeof supplyOf>): Plan['supply'] =>
    lastResult(() => supplyOf(...of)),
  );
  const keepLives = lastResult((supply: Plan['supply'], network: Network, site: Site): Plan['cameraRuntimes'] =>
    lastResult(() => cameraRuntimes({ ...site, ...network }, supply())),
  );
  return (site) => {
    const network = networkOf(site);
    const poe = keepPoe(site.devices, network.topology.linkAt);
    const supply = keepSupply(site.devices, site.deviceByName, poe, network.topology.linkAt);
    const { recordings, volumeByName, streamByName, media } = site;
    return {
      site,
      network,
      storage: keepStorage(recordings, volumeByName, streamByName, media, network.rates),
      television: televisionOf(site),
      racks: keepRacks(site.racks, site.devices),
      poe,
      supply,
      cameraRuntimes: keepLives(supply, network, site),
      air: keepAir(network, site.devices),
      overloads: keepOverloads(network, site.policies.linkLoad),
      blanks: blanksOf(site, network.topology),
    };
  };
}
