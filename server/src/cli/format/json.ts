import { withoutUnseen } from '../../text/visible.ts';
import type { PlacedFindings } from '../placed.ts';

export function jsonFormat({ found }: PlacedFindings): string {
  // JSON has no key for what is undefined.
  const diagnostics = found.map((diagnostic) => ({ ...diagnostic, source: undefined }));
  return `${visibleJson({ diagnostics })}\n`;
}

/** JSON in which whatever is invisible is written as an escape, which means the same (RFC 8259, 7). */
export function visibleJson(value: unknown): string {
  return withoutUnseen(JSON.stringify(value, null, 2), (mark) =>
    mark === '\n' ? mark : `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
