/** Texts in XML (XML 1.0 §2.2, §2.4). */

import { visible } from '../../text/visible.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** A text for people: one line, without characters that XML does not allow. */
export function xmlText(text: string): string {
  return visible(text)
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
}
