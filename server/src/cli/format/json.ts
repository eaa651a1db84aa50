import { withoutUnseen } from '../../text/visible.ts';
import type { PlacedFindings } from '../placed.ts';

export function jsonFormat({ found }: PlacedFindings): string {
  // An undefined value has no key in JSON.
  const diagnostics = found.map((diagnostic) => ({ ...diagnostic, source: undefined }));
  return `${visibleJson({ diagnostics })}\n`;
}

/** JSON with invisible characters as escapes, which mean the same (RFC 8259, 7). */
export function visibleJson(value: unknown): string {
  return withoutUnseen(JSON.stringify(value, null, 2), (mark) =>
    mark === '\n' ? mark : `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
