/** Everything that can be made, in the order in which it is listed. */

import { iproute2 } from './network/iproute2.ts';
import type { Output } from './output.ts';

export const OUTPUTS: readonly Output[] = [
  iproute2,
];
