/** A thing of the site by its name: its summary, wherever it is mentioned. */

import { isMulticast } from '../../standards/ipv4.ts';
import type { Plan } from '../../plan.ts';
import { deviceExplained } from '../../report/explain/device.ts';
import { type Explanation, explanationsMarkdown } from '../../report/explain/explanation.ts';
import { groupExplained } from '../../report/explain/group.ts';
import { rackExplained } from '../../report/explain/rack.ts';
import { receiversExplained, streamRatesExplained } from '../../report/explain/stream.ts';
import { multiplexExplained, serviceExplained } from '../../report/explain/television.ts';
import { trafficExplained } from '../../report/explain/traffic.ts';
import { occasionExplained } from '../../report/explain/tuners.ts';
import { vlanExplained } from '../../report/explain/vlan.ts';
import { daysExplained, recordingExplained } from '../../report/explain/volume.ts';
import type { NamedSection } from '../../site/declared.ts';
import type { Item } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { growth, growthOfStream } from './growth.ts';
import { lossOfDevice, lossOfVolume } from './loss.ts';
import { escaped } from '../../text/markdown.ts';
import { textAt } from '../../text/syntax.ts';

/** Markdown paragraphs; empty where nothing has that name. */
export function thing(plan: Plan, section: NamedSection, name: string): string[] {
  const { site, storage } = plan;
  switch (section) {
    case 'vlans': {
      const vlan = site.vlanByName.get(name);
      return vlan === undefined ? [] : explained(vlan.item, [vlanExplained(plan, vlan)]);
    }
    case 'devices': {
      const device = site.deviceByName.get(name);
      return device === undefined
        ? []
        : [
            ...explained(device.item, deviceExplained(plan, device)),
            ...growth(plan, device),
            ...lossOfDevice(plan, device),
          ];
    }
    case 'racks': {
      const figures = plan.racks.find(({ rack }) => rack.name === name);
      return figures === undefined ? [] : explained(figures.rack.item, [rackExplained(figures)]);
    }
    case 'multiplexes': {
      const multiplex = site.multiplexByName.get(name);
      return multiplex === undefined ? [] : explained(multiplex.item, [multiplexExplained(plan, multiplex)]);
    }
    case 'services': {
      const service = site.serviceByName.get(name);
      return service === undefined ? [] : explained(service.item, [serviceExplained(plan, service)]);
    }
    case 'occasions': {
      const occasion = site.occasionByName.get(name);
      return occasion === undefined ? [] : explained(occasion.item, [occasionExplained(plan, occasion)]);
    }
    case 'streams': {
      const stream = site.streamByName.get(name);
      return stream === undefined
        ? []
        : [...explained(stream.item, streamExplained(plan, stream)), ...growthOfStream(plan, stream)];
    }
    case 'traffic': {
      const own = plan.network.traffic.find(({ traffic }) => traffic.name === name);
      return own === undefined ? [] : explained(own.traffic.item, [trafficExplained(own)]);
    }
    case 'volumes': {
      const volume = site.volumeByName.get(name);
      const figures = volume === undefined ? undefined : storage.on(volume);
      return volume === undefined || figures === undefined
        ? []
        : [...explained(volume.item, [daysExplained(plan, figures)]), ...lossOfVolume(plan, volume)];
    }
    case 'recordings': {
      const recording = site.recordingByName.get(name);
      const figures = recording === undefined ? undefined : storage.of(recording);
      return recording === undefined || figures === undefined
        ? []
        : explained(recording.item, [recordingExplained(plan, figures)]);
    }
  }
}

function streamExplained(plan: Plan, stream: Stream): Explanation[] {
  const group = stream.group === undefined || !isMulticast(stream.group) ? [] : [groupExplained(plan, stream.group)];
  return [streamRatesExplained(plan, stream), receiversExplained(plan, stream), ...group];
}

function explained(item: Item, explanations: readonly Explanation[]): string[] {
  return explanationsMarkdown(explanations, descriptionOf(item));
}

/** The item's `description`. */
function descriptionOf({ data }: Item): string[] {
  return ['description', 'location'].flatMap((key) => {
    const text = textAt(data, [key]);
    return text === undefined ? [] : [escaped(text)];
  });
}
