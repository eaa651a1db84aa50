/** Matches counted interfaces with ports of the site. */

import type { Device, Port, Site } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import { Unreadable, Untold } from '../unreadable.ts';
import type { Sample } from './sample.ts';

export interface Counted {
  readonly device: Device;
  /** The system's name of the interface. */
  readonly name: string;
  /** `undefined` where the site has none of that name. */
  readonly port: Port | undefined;
  /** In the order of time, no two at the same time. */
  readonly samples: readonly Sample[];
}

export interface Matched {
  readonly counted: readonly Counted[];
  /** Interfaces that were left out, and why. */
  readonly notes: readonly string[];
}

/**
 * @param named the device whose counters they are, where the samples do not say
 * @throws Unreadable where nothing shows whose they are
 */
export function matched(site: Site, samples: readonly Sample[], named: string | undefined): Matched {
  const notes: string[] = [];
  const counted: Counted[] = [];
  for (const [device, byName] of grouped(site, samples, named)) {
    const portOf = (name: string): Port | undefined =>
      device.ports.find((port) => (port.interface ?? port.name) === name);
    for (const [name, own] of byName) {
      const [first] = own;
      if (first === undefined) continue;
      const port = first.names.map(portOf).find((found) => found !== undefined);
      if (port === undefined) {
        const parent = first.over ?? /^(.+)\.\d+$/.exec(name)?.[1];
        const over = parent === undefined ? undefined : portOf(parent);
        // The traffic of a VLAN interface is in the counters of its port.
        if (over !== undefined)
          notes.push(
            `${visible(name, 40)} of ${asName(device.name)} is a VLAN of ${asName(over.name)}, and counted there.`,
          );
        if (over !== undefined || own.some(({ virtual }) => virtual === true)) continue;
      }
      const inOrder = inOrderOf(own);
      if (inOrder.contradictions > 0)
        notes.push(
          `${device.name}/${visible(name, 40)} has ${inOrder.contradictions} samples of a time that has another already; ` +
            'the later in the file counts.',
        );
      counted.push({ device, name, port, samples: inOrder.samples });
    }
  }
  return { counted, notes };
}

function grouped(
  site: Site,
  samples: readonly Sample[],
  named: string | undefined,
): Map<Device, Map<string, Sample[]>> {
  const groups = new Map<Device, Map<string, Sample[]>>();
  const known = new Map<string, Device>();
  for (const sample of samples) {
    const name = sample.device ?? named;
    if (name === undefined)
      throw new Untold(
        'Nothing says whose counters these are: name the device by --device, or in the file.',
        site.devices.map((each) => each.name),
      );
    let device = known.get(name);
    if (device === undefined) {
      device = site.deviceByName.get(name);
      if (device === undefined)
        throw new Unreadable(`The site has no device ${visible(name, 40)}; it has ${someOf(site)}.`);
      known.set(name, device);
    }
    let interfaces = groups.get(device);
    if (interfaces === undefined) groups.set(device, (interfaces = new Map()));
    const [first = ''] = sample.names;
    const own = interfaces.get(first);
    if (own === undefined) interfaces.set(first, [sample]);
    else own.push(sample);
  }
  return groups;
}

function someOf({ devices }: Site): string {
  const names = devices.slice(0, 8).map(({ name }) => name);
  return names.length === 0 ? 'none' : `${list(names)}${devices.length > names.length ? ' …' : ''}`;
}

/** Samples may come in any order and more than once. */
function inOrderOf(samples: readonly Sample[]): {
  readonly samples: readonly Sample[];
  readonly contradictions: number;
} {
  const sorted = [...samples].sort((a, b) => a.time - b.time);
  let contradictions = 0;
  const kept = sorted.filter((sample, index) => {
    const next = sorted[index + 1];
    if (next?.time !== sample.time) return true;
    if (next.received?.value !== sample.received?.value || next.sent?.value !== sample.sent?.value) contradictions++;
    return false;
  });
  return { samples: kept, contradictions };
}
