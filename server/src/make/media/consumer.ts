/** A use that a server makes of a stream that it receives: it relays it, or records it. */

import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import type { MediaDestination } from './destination.ts';
import type { NamePattern } from './name-pattern.ts';

export interface MediaConsumer {
  /** The kind of output that makes its unit. */
  readonly kind: 'relays' | 'recorders';
  /** Name of the stream that is sent, or of the recording. */
  readonly name: string;
  readonly host: Device;
  /** The stream that comes in. */
  readonly input: Stream;
  readonly destinations: readonly MediaDestination[];
  /** Where it is recorded; `undefined` for a relay. */
  readonly store: Store | undefined;
}

export interface Store {
  readonly recording: Recording;
  readonly volume: Volume;
  readonly names: NamePattern;
}
