/** What a server sends on: a stream that carries another, to its group or to each receiver. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Device, Stream } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import type { Refusal } from '../output.ts';
import { unitCommand } from '../quoting/unit.ts';
import type { Consumer } from './consumer.ts';
import { alone } from './destination.ts';
import { sendOf } from './send.ts';

export interface Relay {
  readonly stream: Stream;
  readonly host: Device;
}

/** The streams that servers send on. */
export function relays({ site }: Plan): readonly Relay[] {
  return site.streams.flatMap((stream) => {
    const host = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
    return stream.carries === undefined || host?.kind !== 'server' ? [] : [{ stream, host }];
  });
}

export function relayed(plan: Plan, { stream, host }: Relay): Consumer | Refusal {
  const { item, name } = stream;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const takes = plan.site.streamByName.get(stream.carries ?? '');
  if (takes === undefined)
    return {
      at: placeOf(item, ['carries']),
      message: `There is no stream for ${name} to carry. Name one of the site.`,
    };
  if (plan.site.carriedInCircle.includes(stream))
    return { at: placeOf(item, ['carries']), message: `${name} carries itself. Name the stream of a camera.` };
  const destinations = sendOf(plan, stream, takes, host);
  if ('message' in destinations) return destinations;
  if (unitCommand(destinations.flatMap(alone)) === undefined) {
    return {
      at: headOf(item),
      message: `${name} cannot be written into a unit. Take the control characters out of what it says.`,
    };
  }
  return { kind: 'relays', name, host, takes, destinations, store: undefined };
}
