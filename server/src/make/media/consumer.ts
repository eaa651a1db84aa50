/** What a server does with a stream that it takes in: it sends it on, or records it. */

import type { Device, Recording, Stream, Volume } from '../../site/model.ts';
import type { Destination } from './destination.ts';
import type { NamePattern } from './name-pattern.ts';

export interface Consumer {
  /** The kind of output that it is asked for by. */
  readonly kind: 'relays' | 'recorders';
  /** Of the stream that is sent, or of the recording. */
  readonly name: string;
  readonly host: Device;
  readonly takes: Stream;
  readonly destinations: readonly Destination[];
  /** Where it is recorded to; `undefined` where it is sent. */
  readonly store: Store | undefined;
}

export interface Store {
  readonly recording: Recording;
  readonly volume: Volume;
  readonly names: NamePattern;
}
