/** Moves a section to the file of its name, which is made if need be. */

import type { Checked } from '../../../lint/check.ts';
import type { SiteText } from '../../../site/folder.ts';
import type { Item } from '../../../site/item.ts';
import { SECTIONS } from '../../../site/shape.ts';
import { lineEdits } from '../line-edits.ts';
import { hasAnchor, lineBreakOf } from '../../../site/edit.ts';
import { type RefactoringCursor, type Offered, type Refactoring } from './refactoring.ts';
import { type Section, modelineOf, sectionAtKey, sectionsOf } from './sections.ts';

export const moveSection: Refactoring = ({ checked, file, offset }: RefactoringCursor): Offered[] => {
  const found = sectionAtKey(file, offset);
  if (found === undefined || found.sections.length < 2) return [];
  const { sections, at: section } = found;
  const move = moveOf(checked, file, section);
  if (move === undefined) return [];
  return [
    {
      title: `Move ${section.name} to ${move.name}`,
      kind: 'move',
      makesFiles: move.target === undefined,
      change: () => ({
        edits: [
          ...lineEdits(file, without(file, sections, [section])),
          ...(move.target === undefined ? [] : lineEdits(move.target, move.text)),
        ],
        made: new Map(move.target === undefined ? [[move.uri, move.text]] : []),
      }),
    },
  ];
};

/** The file that a section moves to, and its text afterwards. */
export interface Move {
  readonly name: string;
  readonly uri: string;
  readonly target: SiteText | undefined;
  readonly text: string;
}

/** `undefined` where the section is empty, is there already, or cannot be joined with what is there. */
export function moveOf(checked: Checked, file: SiteText, section: Section): Move | undefined {
  const { known, items } = section;
  const name = `${section.name}.site.yaml`;
  const uri = `${file.uri.slice(0, file.uri.lastIndexOf('/') + 1)}${name}`;
  if (known === undefined || items.length === 0 || uri === file.uri) return undefined;
  // The order of the files decides which of two counts.
  const elsewhere = checked.plan.site.sections[known].filter(({ piece }) => piece.file.uri !== file.uri);
  if (known !== 'lint' && SECTIONS[known] !== 'list' && shareNames(items, elsewhere)) return undefined;
  const target = checked.files.find((other) => other.uri === uri);
  if (target?.unreadable !== undefined) return undefined;
  const text = target === undefined ? newFile(file, section) : joined(target, file, section);
  return text === undefined ? undefined : { name, uri, target, text };
}

function shareNames(items: readonly Item[], others: readonly Item[]): boolean {
  const names = new Set(others.map(({ name }) => name));
  return items.some(({ name }) => names.has(name));
}

/** The text of a file without some sections, with no more blank lines in a row than before. */
export function without({ text }: SiteText, sections: readonly Section[], moved: readonly Section[]): string {
  let left = text.slice(0, sections[0]?.start);
  for (const section of sections) {
    const gap = text.slice(section.textEnd, section.end);
    if (!moved.includes(section)) left += text.slice(section.start, section.end);
    else if (left !== '' && blankLines(left) < gap.length) left = left.trimEnd() + lineBreakOf(text) + gap;
  }
  const [last] = sections.slice(-1);
  return last !== undefined && moved.includes(last) ? left.trimEnd() + lineBreakOf(text) : left;
}

/** The length of the blank lines at the end of a text. */
function blankLines(text: string): number {
  const content = text.trimEnd();
  return text.length - content.length - (/^\r?\n/.exec(text.slice(content.length))?.[0].length ?? 0);
}

function newFile(file: SiteText, section: Section): string {
  const modeline = modelineOf(file);
  const lineBreak = lineBreakOf(file.text);
  const own = ended(textOf(file, section), lineBreak);
  return modeline === undefined ? own : modeline + lineBreak + lineBreak + own;
}

function textOf({ text }: SiteText, { start, textEnd }: Section): string {
  return text.slice(start, textEnd).replace(/^\ufeff/, '');
}

function ended(text: string, lineBreak: string): string {
  return text.endsWith('\n') ? text : text + lineBreak;
}

/** The text of the file with the section added: after what it has of that section, or at its end. */
function joined(target: SiteText, file: SiteText, section: Section): string | undefined {
  const there = sectionsOf(target);
  const moved = textOf(file, section);
  // A second anchor of one name would change what later aliases refer to.
  if (there === undefined || hasAnchor(moved)) return undefined;
  const lineBreak = target.text === '' ? lineBreakOf(file.text) : lineBreakOf(target.text);
  const inOwnBreaks = (text: string): string => text.replace(/\r?\n/g, lineBreak);
  const same = there.find(({ name }) => name === section.name);
  if (same === undefined) {
    const before = target.text.trimEnd();
    return (before === '' ? '' : before + lineBreak + lineBreak) + inOwnBreaks(ended(moved, lineBreak));
  }
  const clash = section.items.some(({ key }) => key !== undefined) && shareNames(section.items, same.items);
  if (!same.isBlock || !section.isBlock || clash) return undefined;
  const indent = same.items.length === 0 ? section.indent : same.indent;
  const before = ended(target.text.slice(0, same.textEnd), lineBreak);
  return before + inOwnBreaks(ended(below(file, section, indent), lineBreak)) + target.text.slice(same.textEnd);
}

/** The lines below the key of a section, and the comments at the key, with items indented by `indent`. */
function below({ text }: SiteText, section: Section, indent: number): string {
  const newline = text.indexOf('\n', section.keyLine) + 1;
  const space = ' '.repeat(indent);
  const head = text.slice(section.start, section.keyLine).replace(/^\ufeff/, '');
  const beside = /#.*/.exec(text.slice(section.key.end, newline).trimEnd())?.[0];
  const comments = [...head.split(/\r?\n/), ...(beside === undefined ? [] : [beside])].filter(
    (line) => line.trim() !== '',
  );
  const lines = text.slice(newline, section.textEnd).split(/(?<=\n)/);
  const shift = indent - section.indent;
  const shifted = lines.map((line) => {
    if (line.trim() === '') return line;
    if (shift >= 0) return ' '.repeat(shift) + line;
    return line.slice(Math.min(-shift, line.length - line.trimStart().length));
  });
  return [...comments.map((line) => `${space}${line}\n`), ...shifted].join('');
}
