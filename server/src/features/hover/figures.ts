/** Figures at a key: the load of a port at its name, the days of a volume at its capacity. */

import type { Plan } from '../../plan.ts';
import type { Explanation } from '../../report/explain/explanation.ts';
import { drawExplained } from '../../report/explain/power.ts';
import { receiversExplained, streamRatesExplained } from '../../report/explain/stream.ts';
import { daysExplained, recordingExplained } from '../../report/explain/volume.ts';
import type { Item } from '../../site/item.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { portKey } from './port.ts';

export function figuresAt(plan: Plan, item: Item, keyPath: KeyPath, part: 'key' | 'value'): Explanation[] {
  const { site, storage } = plan;
  const [key, second] = keyPath;
  const alone = keyPath.length === 1;
  switch (item.section) {
    case 'devices': {
      const device = site.deviceByName.get(item.name);
      if (device === undefined) return [];
      if (key === 'ports' && typeof second === 'string' && keyPath.length === 2 && part === 'key')
        return portKey(plan, device, second);
      const power = plan.poe.find((source) => source.device === device);
      return key === 'poe-budget' && alone && power !== undefined ? [drawExplained(power)] : [];
    }
    case 'streams': {
      const stream = site.streamByName.get(item.name);
      if (stream === undefined || part !== 'key' || !alone) return [];
      if (key === 'receivers') return [receiversExplained(plan, stream)];
      return key === 'video' || key === 'audio' || key === 'transport' ? [streamRatesExplained(plan, stream)] : [];
    }
    case 'volumes': {
      const volume = site.volumeByName.get(item.name);
      const figures = volume === undefined ? undefined : storage.on(volume);
      return figures !== undefined &&
        alone &&
        (key === 'capacity' || key === 'reserve' || key === 'redundancy' || key === 'disks') &&
        part === 'key'
        ? [daysExplained(plan, figures)]
        : [];
    }
    case 'recordings': {
      const recording = site.recordingByName.get(item.name);
      const figures = recording === undefined ? undefined : storage.of(recording);
      return figures !== undefined && alone && (key === 'keep' || key === 'segment') && part === 'key'
        ? [recordingExplained(plan, figures)]
        : [];
    }
    default:
      return [];
  }
}
