/** Texts between the tags of XML (XML 1.0 §2.2, §2.4). */

import { visible } from '../../text/visible.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** For people to read: one line, and no character that XML has no place for. */
export function xmlText(text: string): string {
  return visible(text)
    .replace(/[\ufffe\uffff]/g, '\ufffd')
    .replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
}
