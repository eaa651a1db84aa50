/** The fate of the kept footage. */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { Failed } from '../network/failed.ts';
import type { Volume } from '../site/model.ts';
import { disksThatMayFail } from '../standards/raid.ts';
import type { Element, Works } from './element.ts';

export interface Footage {
  readonly volume: Volume;
  /** lost: for good · out-of-reach: until its host is back · unprotected: the next failed disk would lose it. */
  readonly fate: 'lost' | 'out-of-reach' | 'unprotected' | 'kept';
  /** Bytes that it holds once each recording has reached its retention. */
  readonly bytes: number;
  /** The least seconds that filling a new disk takes; `undefined` where that is not known. */
  readonly rebuild: number | undefined;
}

export function footageAfter({ site, storage }: Works, { volume: own }: Element, failed: Failed): Footage[] {
  const concerned = new Set(own === undefined ? [] : [own]);
  for (const device of failed.devices) for (const volume of volumesAt(site).get(device) ?? []) concerned.add(volume);
  return [...concerned].flatMap((volume): Footage[] => {
    const { bytesKept: bytes, recordings } = storage.on(volume);
    if (volume === own) {
      const fate = fateOf(volume);
      const { capacity, sustainedWrite } = volume;
      const rebuild =
        fate === 'lost' || capacity === undefined || sustainedWrite === undefined || sustainedWrite === 0
          ? undefined
          : capacity / sustainedWrite;
      return [{ volume, fate, bytes, rebuild }];
    }
    return recordings.length > 0 ? [{ volume, fate: 'out-of-reach', bytes, rebuild: undefined }] : [];
  });
}

const volumesAt = perObject(({ volumes, deviceByName }: Works['site']) =>
  grouped(volumes, ({ host }) => (host === undefined ? undefined : deviceByName.get(host))),
);

/** The fate when one disk fails. A stripe over several may keep a share of each file, which counts as lost. */
function fateOf({ redundancy, disks = 1 }: Volume): 'lost' | 'unprotected' | 'kept' {
  const spare = disksThatMayFail(redundancy, redundancy === 'none' ? disks : Math.max(2, disks));
  return spare === 0 ? 'lost' : spare === 1 ? 'unprotected' : 'kept';
}
