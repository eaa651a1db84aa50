import { visible } from '../../text/visible.ts';
import { list } from '../../text/words.ts';
import { setKey } from '../../site/edit.ts';
import { type SiteText, placeInFile } from '../../site/folder.ts';
import { type Place, contentOf, placeOf } from '../../site/item.ts';
import { SECTION_NAMES, sectionOf } from '../../site/shape.ts';
import { nearest, onlyNear } from '../shape/nearest.ts';
import { aboutItem, misfits } from '../shape/sound.ts';
import { homesOf, schemaAround, withSpace } from '../shape/words.ts';
import type { Finding, Fix, Rule, Subject } from '../rule.ts';

export const unknownKey: Rule = {
  id: 'unknown-key',
  severity: 'error',
  summary: 'A key or a section is not one of the site language.',
  why: `What stands under it is not looked at, so a slip of the pen here is a value that counts for nothing. The
reference of the site language lists the keys of each mapping.`,
  examples: [
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
#                                ^^^^^^^ There is no key bitrate here; it belongs under video or audio.
`,
      good: `
streams:
  paddock: {source: paddock-cam, video: {bitrate: 6 Mb/s}}
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
  ],
  *check({ site, files }: Subject): Iterable<Finding> {
    for (const file of files) yield* sections(file);
    for (const { item, problem: { key, route, allowed } } of misfits(site, 'unknown-key')) {
      const at = placeOf(item, route, 'key');
      const beyondSchema = isBareKey(at);
      const joined = withSpace(key, allowed);
      if (joined !== undefined) {
        const edits = [setKey(item, route, joined)];
        yield {
          at,
          message: `A space is missing after the colon: write ${visible(joined, 60)}.`,
          about: aboutItem(item),
          beyondSchema,
          fixes: () => [{ title: 'Write a space after the colon', safe: true, edits }],
        };
        continue;
      }
      const around = schemaAround(item, route);
      yield {
        at,
        message: `There is no key ${visible(key, 40)} here${advice(key, allowed, around === undefined ? [] : homesOf(around, key))}`,
        about: aboutItem(item),
        beyondSchema,
        fixes: () => {
          const siblings = placedBeside(item.data, route);
          return renamings(key, allowed.filter((name) => !siblings.has(name)), at);
        },
      };
    }
  },
};

/** A key in braces without a colon behind it: to those who read YAML for a schema it is no entry. */
function isBareKey({ piece, end }: Place): boolean {
  return !/^\s*:/.test(piece.text.slice(end, end + 100));
}

function* sections(file: SiteText): Iterable<Finding> {
  const unknown: { name: string; at: Place }[] = [];
  for (const { section, start, end } of file.cut.headers) {
    if (sectionOf(section) === undefined) unknown.push({ name: section, at: placeInFile(file, { start, end }) });
  }
  for (const piece of file.unusual) {
    if (piece.role === 'item') continue;
    for (const problem of contentOf(piece).problems) {
      if (problem.problem === 'unknown-section') unknown.push({ name: problem.name, at: { piece, start: problem.at.start, end: problem.at.end } });
    }
  }
  for (const { name, at } of unknown) {
    yield {
      at,
      message: `There is no section ${visible(name, 40)}${advice(name, SECTION_NAMES, [])}`,
      about: [],
      fixes: () => renamings(name, SECTION_NAMES, at),
    };
  }
}

/** The rest of the sentence: what may stand here instead. */
function advice(key: string, allowed: readonly string[], homes: readonly string[]): string {
  const near = nearest(key, allowed).map(({ name }) => name);
  if (near.length > 0) return `. Did you mean ${list(near, 'or')}?`;
  if (homes.length > 0) return `; it belongs under ${list(homes, 'or')}.`;
  return allowed.length === 0 ? '.' : `. Allowed are ${list(allowed)}.`;
}

function renamings(key: string, allowed: readonly string[], at: Place): Fix[] {
  const near = nearest(key, allowed);
  const only = onlyNear(near);
  return near.map(({ name }) => ({ title: `Change to ${name}`, safe: name === only, edits: [{ at, text: name }] }));
}

/** The keys that the mapping has already. */
function placedBeside(data: unknown, route: readonly (string | number)[]): Set<string> {
  let current: unknown = data;
  for (const step of route.slice(0, -1)) {
    current = typeof current === 'object' && current !== null ? (current as Readonly<Record<string | number, unknown>>)[step] : undefined;
  }
  return new Set(route.length > 0 && typeof current === 'object' && current !== null ? Object.keys(current) : []);
}
