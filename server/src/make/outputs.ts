/** Everything that can be made, in the order in which it is listed. */

import type { Output } from './output.ts';

export const OUTPUTS: readonly Output[] = [];
