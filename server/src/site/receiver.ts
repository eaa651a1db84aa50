/** Where a stream names a receiver. */

import type { Route } from '../text/syntax.ts';
import type { Stream } from './model.ts';

export function receiverRoute({ item }: Stream, receiver: string): Route {
  const named = item.mentions.find(({ route, text }) => route[0] === 'receivers' && text === receiver);
  return named?.route ?? ['receivers'];
}
