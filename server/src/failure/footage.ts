/** What becomes of the footage that is kept. */

import type { Failed } from '../network/failed.ts';
import type { Volume } from '../site/model.ts';
import { disksThatMayFail } from '../standards/raid.ts';
import type { Element, Works } from './element.ts';

export interface Footage {
  readonly volume: Volume;
  /** Gone for good; not to be looked at until its host is back; or there, and with the next disk gone. */
  readonly fate: 'lost' | 'out-of-reach' | 'unprotected' | 'kept';
  /** Bytes that it holds once each recording is as old as it is kept. */
  readonly bytes: number;
  /** Seconds that a new disk takes at the least until it is filled; `undefined` where that is not known. */
  readonly rebuild: number | undefined;
}

export function footageAfter({ site, storage }: Works, { volume: own }: Element, failed: Failed): Footage[] {
  return site.volumes.flatMap((volume): Footage[] => {
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
    const host = volume.host === undefined ? undefined : site.deviceByName.get(volume.host);
    const isDark = host !== undefined && failed.devices.has(host);
    return isDark && recordings.length > 0 ? [{ volume, fate: 'out-of-reach', bytes, rebuild: undefined }] : [];
  });
}

/** When one of its disks fails. A stripe over several may keep a share of each file; nothing is counted on. */
function fateOf({ redundancy, disks = 1 }: Volume): 'lost' | 'unprotected' | 'kept' {
  const spare = disksThatMayFail(redundancy, redundancy === 'none' ? disks : Math.max(2, disks));
  return spare === 0 ? 'lost' : spare === 1 ? 'unprotected' : 'kept';
}
