/** A stream that a server relays: it carries another one, to a group or to each receiver. */

import type { Plan } from '../../plan.ts';
import { placeOf } from '../../site/item.ts';
import type { Device, Stream } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import { isInCircle } from '../cause.ts';
import type { Refusal } from '../output.ts';
import type { Consumer } from './consumer.ts';
import { sendDestinations } from './send.ts';

export interface Relay {
  readonly stream: Stream;
  readonly host: Device;
}

/** The streams that servers relay. */
export function relaysOf({ site }: Plan): readonly Relay[] {
  return site.streams.flatMap((stream) => {
    const host = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
    return stream.carries === undefined || host?.kind !== 'server' ? [] : [{ stream, host }];
  });
}

export function relayConsumer(plan: Plan, { stream, host }: Relay): Consumer | Refusal {
  const { item, name } = stream;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const input = plan.site.streamByName.get(stream.carries ?? '');
  if (input === undefined)
    return {
      rule: 'unknown-name',
      at: placeOf(item, ['carries']),
      message: `There is no stream for ${name} to carry. Name one of the site.`,
    };
  if (isInCircle(plan.site, stream))
    return {
      rule: 'carries-itself',
      at: placeOf(item, ['carries']),
      message: `${name} carries itself. Name the stream of a camera.`,
    };
  const destinations = sendDestinations(plan, { stream, input, host });
  if ('message' in destinations) return destinations;
  return { kind: 'relays', name, host, input, destinations, store: undefined };
}
