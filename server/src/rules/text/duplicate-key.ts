import { type Span, keyText } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { type SiteText, placeInFile, startOf } from '../../site/folder.ts';
import { contentOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const duplicateKey: Rule = {
  id: 'duplicate-key',
  severity: 'error',
  due: 'value',
  summary: 'A key stands twice in one mapping.',
  why: `YAML wants each key once: one reader takes the first value, another the last, a third refuses the file.
Plumbline takes the last. Take one of them out. A section may stand in several files, but in each of them once.`,
  source: 'YAML 1.2.2 §3.2.1.1',
  check({ files }: RuleContext, report: Report): void {
    for (const file of files) {
      sections(file, report);
      for (const piece of file.unusual) {
        const { tree, items } = contentOf(piece);
        const names = new Set(items.map(({ key }) => key?.start));
        for (const { code, detail, start, end, related } of tree.problems) {
          // For an item that stands twice duplicate-name reports, over all files.
          if (code !== 'duplicate-key' || names.has(start)) continue;
          report({
            at: { piece, start, end },
            message:
              `${visible(detail, 40)} stands twice in this mapping, and only the last counts. Take ` +
              'one of them out.',
            about: [],
            ...(related !== undefined && {
              related: [{ at: { piece, start: related.start, end: related.end }, message: 'it stands here first' }],
            }),
          });
        }
      }
    }
  },
};

/** Sections whose keys stand in several places of a file. */
function sections(file: SiteText, report: Report): void {
  const first = new Map<string, Span>();
  for (const { name, at } of keysOf(file)) {
    const before = first.get(name);
    if (before === undefined) {
      first.set(name, at);
      continue;
    }
    report({
      at: placeInFile(file, at),
      message:
        `The section ${visible(name, 40)} stands twice in this file; other readers of YAML keep only the last. Put ` +
        'its entries together.',
      about: [],
      related: [{ at: placeInFile(file, before), message: 'it starts here' }],
    });
  }
}

function keysOf(file: SiteText): { name: string; at: Span }[] {
  const found = file.cut.headers.map(({ section, start, end }) => ({ name: section, at: { start, end } }));
  for (const piece of file.unusual) {
    const { root } = piece.role === 'section' ? contentOf(piece).tree : { root: undefined };
    if (root?.kind !== 'mapping') continue;
    const start = startOf(file, piece);
    for (const { key } of root.entries)
      found.push({ name: keyText(key), at: { start: start + key.start, end: start + key.end } });
  }
  return found.sort((a, b) => a.at.start - b.at.start);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, speed: 100 Mb/s, speed: 1 Gb/s}
#                                              ^^^^^ speed stands twice
`,
    good: `
devices:
  paddock-cam: {kind: camera, speed: 1 Gb/s}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera}
vlans:
  video: {id: 20}
devices:
# want 1-8 The section devices stands twice in this file
  stable-cam: {kind: camera}
`,
  },
];
