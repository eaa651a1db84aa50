/** A stream that a server relays: it carries another one, to a group or to each receiver. */

import type { Plan } from '../../plan.ts';
import { placeOf } from '../../site/item.ts';
import type { Device, Stream } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import { isInCircle } from '../cause.ts';
import type { Refusal } from '../output.ts';
import type { MediaConsumer } from './consumer.ts';
import { unpullable } from './pull.ts';
import { sendDestinations, unsendable } from './send.ts';
import { asName } from '../../text/words.ts';

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

export function relayConsumer(plan: Plan, relay: Relay): MediaConsumer | Refusal {
  const input = inputOf(plan, relay);
  if ('message' in input) return input;
  const { stream, host } = relay;
  const destinations = sendDestinations(plan, { stream, input, host });
  if ('message' in destinations) return destinations;
  return { kind: 'relays', name: stream.name, host, input, destinations, store: undefined };
}

/** Why a stream cannot be relayed; `undefined` where it can. */
export function unrelayable(plan: Plan, relay: Relay): Refusal | undefined {
  const input = inputOf(plan, relay);
  if ('message' in input) return input;
  return unsendable(plan, { ...relay, input }) ?? unpullable(plan, input, relay.host);
}

/** The stream that comes in. */
function inputOf(plan: Plan, { stream, host }: Relay): Stream | Refusal {
  const { item, name } = stream;
  const unnamed = refusedName(item) ?? refusedName(host.item);
  if (unnamed !== undefined) return unnamed;
  const input = plan.site.streamByName.get(stream.carries ?? '');
  if (input === undefined)
    return {
      rule: 'unknown-name',
      at: placeOf(item, ['carries']),
      message: `There is no stream for ${asName(name)} to carry. Name one of the site.`,
    };
  if (isInCircle(plan.site, stream))
    return {
      rule: 'carries-itself',
      at: placeOf(item, ['carries']),
      message: `${asName(name)} carries itself. Name the stream of a camera.`,
    };
  return input;
}
