import { type Span, keyText } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { type SiteText, placeInFile, pieceStart } from '../../site/folder.ts';
import { contentOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const duplicateKey: Rule = {
  id: 'duplicate-key',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A key appears twice in one mapping.',
  why: `YAML allows each key once: one reader takes the first value, another the last, a third rejects the file.
Plumbline takes the last. Remove one of them. A section may appear in several files, but only once in each.`,
  source: 'YAML 1.2.2 §3.2.1.1',
  check({ files }: RuleContext, report: Report): void {
    for (const file of files) {
      sections(file, report);
      for (const piece of file.unusual) {
        const { tree, items } = contentOf(piece);
        const names = new Set(items.map(({ key }) => key?.start));
        for (const { code, detail, start, end, related } of tree.problems) {
          // For an item that appears twice duplicate-name reports, over all files.
          if (code !== 'duplicate-key' || names.has(start)) continue;
          report({
            at: { piece, start, end },
            message: `${visible(detail, 40)} appears twice in this mapping, and only the last counts. Remove one.`,
            acceptAt: [],
            ...(related !== undefined && {
              related: [{ at: { piece, start: related.start, end: related.end }, message: 'first here' }],
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
        `The section ${visible(name, 40)} appears twice in this file; other YAML readers keep only the last. ` +
        'Merge the two.',
      acceptAt: [],
      related: [{ at: placeInFile(file, before), message: 'first here' }],
    });
  }
}

function keysOf(file: SiteText): { name: string; at: Span }[] {
  const found = file.cut.headers.map(({ section, start, end }) => ({ name: section, at: { start, end } }));
  for (const piece of file.unusual) {
    const { root } = piece.role === 'section' ? contentOf(piece).tree : { root: undefined };
    if (root?.kind !== 'mapping') continue;
    const start = pieceStart(file, piece);
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
#                                              ^^^^^ speed appears twice
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
# want 1-8 The section devices appears twice in this file
  stable-cam: {kind: camera}
`,
  },
];
