/** Keys that the language does not have. Long by its cases, one for each slip that can be put right, and its examples. */

import { perObject } from '../../memo.ts';
import type { Piece } from '../../text/cut.ts';
import { visible } from '../../text/visible.ts';
import { mending } from '../../site/mended.ts';
import { list, asName } from '../../text/words.ts';
import { isEmpty } from '../../text/parse.ts';
import { type Data, type Entry, type Mapping, type KeyPath, dataAt, isMapping, keyText } from '../../text/syntax.ts';
import { NAMED_SECTIONS, THING } from '../../site/declared.ts';
import { type Outdented, outdented } from '../../site/outdented.ts';
import { type Fix, fixOf, nodeAt, setKey } from '../../site/edit.ts';
import { type SiteText, placeInFile, pieceStart } from '../../site/folder.ts';
import { type Item, type Place, contentOf, placeOf } from '../../site/item.ts';
import { SECTION_NAMES, schemaAt, sectionOf } from '../../site/shape.ts';
import { begins, nearest, onlyNear } from '../../text/nearest.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { homesOf, schemaAround, withSpace } from '../../site/shape-words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unknownKey: Rule = {
  id: 'unknown-key',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'There is no such key or section.',
  why: `Nothing under it is read, so a misspelt key loses its value. The reference of the site language lists the keys of
each mapping.`,
  check({ site, files }: RuleContext, report: Report): void {
    for (const file of files) sections(file, report);
    for (const {
      item,
      problem: { key, keyPath, allowed },
    } of shapeProblems(site, 'unknown-key')) {
      const at = placeOf(item, keyPath, 'key');
      const beyondSchema = isBareKey(at);
      const isAlone = isEmpty(nodeAt(item, keyPath) ?? item.node);
      const joined = isAlone ? withSpace(key, allowed) : undefined;
      if (joined !== undefined) {
        const edits = [setKey(item, keyPath, joined)];
        report({
          at,
          message: `A space is missing after the colon: write ${visible(joined, 60)}.`,
          acceptAt: acceptAtItem(item),
          beyondSchema,
          fixes: () => [{ title: 'Write a space after the colon', safe: true, edits }],
        });
        continue;
      }
      const cut = cutByComma(item, keyPath);
      if (cut !== undefined) {
        if (cut.isFirst) {
          report({
            at,
            message: `The comma ends the ${cut.key}, so ${visible(key, 40)} is read as a key. Put ${cut.text} in quotes.`,
            acceptAt: acceptAtItem(item),
            beyondSchema,
            fixes: () => [{ title: `Write ${cut.text}`, safe: true, edits: [{ at: cut.at, text: cut.text }] }],
          });
        }
        continue;
      }
      const word = (): Finding => {
        const homes = (): readonly string[] => {
          const around = schemaAround(item, keyPath);
          return around === undefined ? [] : homesOf(around, key);
        };
        return {
          at,
          showAfter: begins(key, allowed) ? 'value' : 'keystroke',
          message: `There is no key ${visible(key, 40)} here${advice(key, allowed, homes)}`,
          acceptAt: acceptAtItem(item),
          beyondSchema,
          fixes: (wanted) => {
            const siblings = siblingsAt(item.data, keyPath);
            const free = allowed.filter((name) => !siblings.has(name));
            return mending(renamings(key, free, at), wanted);
          },
        };
      };
      report({ at, word });
    }
  },
};

/** A key in braces without a colon behind it, which a schema does not see. */
function isBareKey({ piece, end }: Place): boolean {
  return !/^\s*:/.test(piece.text.slice(end, end + 100));
}

function sections(file: SiteText, report: Report): void {
  const unknown: { name: string; at: Place }[] = [];
  const there = new Set<string>();
  for (const { section, start, end } of file.cut.headers) {
    there.add(section);
    if (sectionOf(section) === undefined) unknown.push({ name: section, at: placeInFile(file, { start, end }) });
  }
  for (const piece of file.unusual) {
    if (piece.role === 'item') continue;
    for (const problem of contentOf(piece).problems) {
      if (problem.problem === 'unknown-section')
        unknown.push({ name: problem.name, at: { piece, start: problem.at.start, end: problem.at.end } });
    }
  }
  const unusual = new Set(file.unusual);
  for (const { name, at } of unknown) {
    const word = (): Finding => {
      const start = at.start + (unusual.has(at.piece) ? pieceStart(file, at.piece) : 0);
      const near = nearest(name, SECTION_NAMES);
      const found = near.length > 0 ? undefined : outdented(file, name, start);
      if (found !== undefined) return notASection(file, name, at, found);
      return {
        at,
        message: `There is no section ${visible(name, 40)}${advice(name, SECTION_NAMES, () => [])}`,
        acceptAt: [],
        // Not where the file already has the section, which would then be there twice.
        fixes: () =>
          renamings(
            name,
            SECTION_NAMES.filter((section) => !there.has(section)),
            at,
          ),
      };
    };
    report({ at, word });
  }
}

interface CutText {
  readonly key: string;
  /** The whole text, in quotes. */
  readonly text: string;
  readonly at: Place;
  /** Whether the key is the text behind the first comma. */
  readonly isFirst: boolean;
}

/** The text in braces that a comma ends too early: behind it stand keys without a colon. */
function cutByComma(item: Item, keyPath: KeyPath): CutText | undefined {
  const node = nodeAt(item, keyPath.slice(0, -1));
  if (node?.kind !== 'mapping' || !node.flow) return undefined;
  const run = runsOf(item)(node).get(String(keyPath[keyPath.length - 1]));
  if (run === undefined || run.begun.value.kind !== 'scalar' || run.begun.value.style !== 'plain') return undefined;
  const key = keyText(run.begun.key);
  const schema = schemaAt(item.section, item.name, [...keyPath.slice(0, -1), key]);
  if (schema?.type !== 'string' || CONSTRAINED.some((word) => schema[word] !== undefined)) return undefined;
  const at = { piece: item.piece, start: run.begun.value.start, end: run.bare[run.bare.length - 1]?.key.end ?? 0 };
  if (at.end - at.start > LONGEST) return undefined;
  const text = item.piece.text.slice(at.start, at.end);
  if (/[\r\n"\\]/.test(text)) return undefined;
  return {
    key,
    text: `"${text}"`,
    at,
    isFirst: keyText(run.bare[0]?.key ?? run.begun.key) === keyPath[keyPath.length - 1],
  };
}

/** Characters; longer texts are not considered. */
const LONGEST = 200;

/** An entry, and the keys without a colon that follow it. */
interface Run {
  readonly begun: Entry;
  readonly bare: Entry[];
}

/** The runs of a mapping by their keys without a colon; a mapping may have thousands of them. */
const runsOf = perObject(({ piece }: Item) => perObject((mapping: Mapping) => runsIn(mapping, piece)));

function runsIn({ entries }: Mapping, piece: Piece): ReadonlyMap<string, Run> {
  const found = new Map<string, Run>();
  let run: Run | undefined;
  for (const entry of entries) {
    const { key, value, merged } = entry;
    if (!merged && isEmpty(value) && key.style === 'plain' && isBareKey({ ...key, piece })) {
      run?.bare.push(entry);
      if (run !== undefined) found.set(keyText(key), run);
    } else {
      run = { begun: entry, bare: [] };
    }
  }
  return found;
}

/** The finding for an item in the column of the sections. */
function notASection(file: SiteText, name: string, at: Place, { section, lines }: Outdented): Finding {
  const named = NAMED_SECTIONS.find((candidate) => candidate === section);
  const thing = named === undefined ? 'an item' : withArticle(THING[named]);
  return {
    at,
    message:
      `${visible(name, 40)} looks like ${thing}, and stands where sections begin. Indent it below ${section}, with ` +
      'what belongs to it.',
    acceptAt: [],
    fixes: () => {
      if (lines === undefined) return [];
      const own = file.text.slice(lines.start, lines.end);
      const text = own.replace(/^(?=[^\r\n])/gm, ' '.repeat(lines.indent));
      return fixOf(`Indent ${visible(name, 40)} below ${section}`, { at: placeInFile(file, lines), text });
    },
  };
}

function withArticle(thing: string): string {
  return `${/^[aeiou]/.test(thing) ? 'an' : 'a'} ${thing}`;
}

/** Keywords of a schema that limit a text. */
const CONSTRAINED = ['enum', 'pattern', 'x-form', 'x-names', 'x-quantity'] as const;

/**
 * The rest of the sentence: the keys that are allowed here.
 *
 * @param homesOfKey the keys below which it belongs, looked for only where no key here is like it
 */
function advice(key: string, allowed: readonly string[], homesOfKey: () => readonly string[]): string {
  const near = nearest(key, allowed).map(({ name }) => name);
  if (near.length > 0) return `. Did you mean ${list(near, 'or')}?`;
  const homes = homesOfKey();
  if (homes.length > 0) return `; it goes under ${list(homes, 'or')}.`;
  return allowed.length === 0 ? '.' : `. Keys here: ${list(allowed)}.`;
}

function renamings(key: string, allowed: readonly string[], at: Place): Fix[] {
  const near = nearest(key, allowed);
  const only = onlyNear(key, near);
  return near.map(({ name }) => ({
    title: `Change to ${asName(name)}`,
    safe: name === only,
    edits: [{ at, text: name }],
  }));
}

/** The keys that the mapping has already. */
function siblingsAt(data: Data, keyPath: KeyPath): Set<string> {
  const mapping = dataAt(data, keyPath.slice(0, -1));
  return new Set(keyPath.length > 0 && isMapping(mapping) ? Object.keys(mapping) : []);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch}
gate-cam: {kind: camera, address: 192.168.20.31}
# want 1-9 gate-cam looks like a device
streams:
  gate: {source: gate-cam, transport: rtsp}
`,
    fixed: `
devices:
  core: {kind: switch}
  gate-cam: {kind: camera, address: 192.168.20.31}
streams:
  gate: {source: gate-cam, transport: rtsp}
`,
  },
  {
    bad: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31}
paddock-cam:
# want 1-12 paddock-cam looks like a device, and stands where sections begin. Indent it below devices
  kind: camera
  address: 192.168.20.32
  yard-cam: {kind: camera, address: 192.168.20.33}
`,
    fixed: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31}
  paddock-cam:
    kind: camera
    address: 192.168.20.32
  yard-cam: {kind: camera, address: 192.168.20.33}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, adress: 192.168.20.31}
#                             ^^^^^^ There is no key adress here. Did you mean address?
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
  },
  {
    bad: `
devces:
# want 1-7 There is no section devces. Did you mean devices?
  paddock-cam: {kind: camera}
`,
    fixed: `
devices:
  paddock-cam: {kind: camera}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, bitrate: 6 Mb/s}
#                                ^^^^^^^ There is no key bitrate here; it goes under video or audio.
`,
    good: `
streams:
  paddock: {source: paddock-cam, video: {bitrate: 6 Mb/s}}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, location: stable, south gable, address: 192.168.20.31}
#                                               ^^^^^^^^^^^ The comma ends the location, so south gable is read as a key
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, location: "stable, south gable", address: 192.168.20.31}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, speed:100 Mb/s}
#                             ^^^^^^^^^^^^^^ A space is missing after the colon
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, speed: 100 Mb/s}
`,
  },
];
