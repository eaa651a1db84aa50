/** Accepts a finding by an entry of `lint: accept` in its file; the reason is still to be typed. */

import { perObject } from '../../memo.ts';
import type { Checked } from '../../lint/check.ts';
import { REASON } from '../../lint/reason.ts';
import type { Diagnostic } from '../../lint/rule.ts';
import { type Edit, addElement, scalarText } from '../../site/edit.ts';
import { type SiteText, placeInFile } from '../../site/folder.ts';
import type { Item } from '../../site/item.ts';
import { isEmpty } from '../../text/parse.ts';
import { asName } from '../../text/words.ts';

export interface OfferedAcceptance {
  readonly title: string;
  readonly edit: Edit;
}

/** `undefined` where the finding has no name to be accepted by. */
export function acceptance(
  { plan }: Checked,
  file: SiteText,
  { rule, acceptAt }: Diagnostic,
): OfferedAcceptance | undefined {
  const [name] = acceptAt;
  if (name === undefined || name === '' || rule.isSlip === true) return undefined;
  const entry = `{rule: ${rule.id}, at: ${scalarText(name, true)}, because: ${REASON}}`;
  const own = lintOf(file);
  const edit =
    ofList(
      own.find((item) => item.name === 'accept'),
      entry,
    ) ??
    ofSection(file, own, entry) ??
    atEnd(file, entry, indentOf(plan.site.items));
  return { title: `Accept ${rule.id} for ${asName(name)} …`, edit };
}

const lintOf = perObject(({ items }: SiteText) => items.filter(({ section }) => section === 'lint'));

/** Adds an element to the list that is there. */
function ofList(item: Item | undefined, entry: string): Edit | undefined {
  if (item?.key === undefined) return undefined;
  const { piece, key, node } = item;
  if (node.kind === 'sequence' && (node.flow || node.items.length > 0)) return addElement(item, [], entry);
  if (!isEmpty(node)) return undefined;
  const colon = piece.text.indexOf(':', key.end);
  const at = colon === -1 ? key.end : colon + 1;
  return {
    at: { piece, start: at, end: at },
    text: piece.role === 'item' ? `\n${' '.repeat(piece.indent + 2)}- ${entry}` : ` [${entry}]`,
  };
}

/** Adds the list at the end of the section that is there. */
function ofSection(file: SiteText, items: readonly Item[], entry: string): Edit | undefined {
  const last = items.filter(({ name }) => name !== 'accept').pop();
  if (last === undefined) {
    const header = file.cut.headers.find(({ section }) => section === 'lint');
    if (header === undefined || items.length > 0) return undefined;
    const newline = file.text.indexOf('\n', header.end);
    const at = newline === -1 ? file.text.length : newline;
    return { at: placeInFile(file, { start: at, end: at }), text: `\n  accept:\n    - ${entry}` };
  }
  if (items.some(({ name }) => name === 'accept')) return undefined;
  const { piece, node, key } = last;
  const end = Math.max(node.end, key?.end ?? 0);
  if (piece.role !== 'item') return { at: { piece, start: end, end }, text: `, accept: [${entry}]` };
  const newline = piece.text.indexOf('\n', end);
  const at = newline === -1 ? piece.text.length : newline;
  const indent = ' '.repeat(piece.indent);
  return { at: { piece, start: at, end: at }, text: `\n${indent}accept:\n${indent}  - ${entry}` };
}

/** Adds the section, indented like the others of the site. */
function atEnd(file: SiteText, entry: string, indent: string): Edit {
  const end = file.text.length;
  const gap = file.text === '' || file.text.endsWith('\n\n') ? '' : file.text.endsWith('\n') ? '\n' : '\n\n';
  return { at: placeInFile(file, { start: end, end }), text: `${gap}lint:\n${indent}accept:\n${indent}  - ${entry}\n` };
}

function indentOf(items: readonly Item[]): string {
  const first = items.find(({ piece }) => piece.role === 'item' && piece.indent > 0);
  return ' '.repeat(first?.piece.indent ?? 2);
}
