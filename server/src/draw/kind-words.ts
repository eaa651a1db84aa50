/** What a device is, in words. */

import type { Device } from '../site/model.ts';

const ABBREVIATED: ReadonlySet<string> = new Set(['ups', 'lnb']);

/** `access point`, `UPS`; `device` where the site does not say. */
export function drawingKindWords({ kind }: Device): string {
  if (kind === undefined) return 'device';
  return ABBREVIATED.has(kind) ? kind.toUpperCase() : kind.replaceAll('-', ' ');
}
