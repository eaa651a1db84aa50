/** Where a stream names a receiver. */

import type { KeyPath } from '../text/syntax.ts';
import type { Stream } from './model.ts';

export function receiverKeyPath({ item }: Stream, receiver: string): KeyPath {
  const named = item.mentions.find(({ keyPath, text }) => keyPath[0] === 'receivers' && text === receiver);
  return named?.keyPath ?? ['receivers'];
}
