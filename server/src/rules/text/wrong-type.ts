import { begins } from '../../text/nearest.ts';
import type { Site } from '../../site/model.ts';
import type { Data, KeyPath } from '../../text/syntax.ts';
import { type Edit, type Fix, scalarText, setValue } from '../../site/edit.ts';
import { type Item, type PieceProblem, type Place, contentOf, placeOf } from '../../site/item.ts';
import { SECTIONS, type Schema, keysOf, schemaAt, sectionSchema } from '../../site/shape.ts';
import { visible } from '../../text/visible.ts';
import { isDeclared } from '../../site/declared.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { mending } from '../../site/mended.ts';
import { firstLine } from '../../site/places.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { flowText, shown, subjectAt, suchAs, wanted, withSpace } from '../../site/shape-words.ts';
import type { ShowAfter, Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const wrongType: Rule = {
  id: 'wrong-type',
  severity: 'error',
  isSlip: true,
  showAfter: 'line',
  summary: 'A value is missing, or is of the wrong type.',
  why: `A list where one value belongs, a text where a number belongs: such a value is ignored. A key with nothing after
its colon has no value yet.`,
  check({ site, files }: RuleContext, report: Report): void {
    for (const { unusual } of files) {
      let before = '';
      for (const piece of unusual) {
        for (const problem of contentOf(piece).problems) {
          if (problem.problem !== 'not-an-entry') continue;
          // A whole section that is written the wrong way gets one finding, at its first entry.
          const what = `${problem.section} ${problem.found}`;
          if (what !== before || problem.found === 'a single value')
            report(notAnEntry(problem, { piece, start: problem.at.start, end: problem.at.end }));
          before = what;
        }
      }
    }
    for (const {
      item,
      problem: { keyPath, found, expected },
    } of shapeProblems(site, 'wrong-type')) {
      const schema = schemaAt(item.section, item.name, keyPath);
      if (isReportedElsewhere(site, item, schema, found)) continue;
      const joined = typeof found === 'string' ? withSpace(found, keysOf(schema ?? {})) : undefined;
      if (joined !== undefined) {
        report({
          at: visiblePlace(placeOf(item, keyPath)),
          message: `A space is missing after the colon: write ${visible(joined, 60)}.`,
          acceptAt: acceptAtItem(item),
          fixes: () => [
            { title: 'Write a space after the colon', safe: true, edits: [setValue(item, keyPath, joined)] },
          ],
        });
        continue;
      }
      const want = wanted(schema, expected);
      report({
        at: visiblePlace(placeOf(item, keyPath)),
        showAfter: dueOf(found, expected),
        message:
          found === null
            ? `${subjectAt(item, keyPath)} has no value yet: ${want}${suchAs(item, keyPath)}.`
            : `${subjectAt(item, keyPath)} is ${asWritten(found, expected)}; write ${want}${suchAs(item, keyPath)}.`,
        acceptAt: acceptAtItem(item),
        fixes: (only) => mending(fixesOf(item, keyPath, found, expected, schema), only),
      });
    }
  },
};

/** Waits for a value that is missing, or may be the start of another: a digit of a text, the first key of a mapping. */
function dueOf(found: Data, expected: readonly string[]): ShowAfter {
  if (found === null) return 'item';
  if (typeof found === 'string' && expected.includes('boolean') && begins(found, ['true', 'false'])) return 'value';
  if (expected.includes('object') || expected.includes('array'))
    return typeof found === 'object' ? 'keystroke' : 'line';
  return typeof found !== 'string' && typeof found !== 'object' ? 'value' : 'keystroke';
}

/** A number without a unit is reported by quantity, one that names nothing by unknown-name. */
function isReportedElsewhere(site: Site, item: Item, schema: Schema | undefined, found: Data): boolean {
  if (typeof found !== 'number' && typeof found !== 'string') return false;
  if (schema?.['x-quantity'] !== undefined) return true;
  const names = schema?.['x-names'];
  return names !== undefined && (names === 'rules' || !isDeclared(site, item, names, String(found)));
}

/** Where a number belongs, a text of digits is shown with its quotes, which are the mistake. */
function asWritten(found: Data, expected: readonly string[]): string {
  const isText = typeof found === 'string' && expected.some((type) => type === 'integer' || type === 'number');
  return isText ? `"${shown(found)}"` : shown(found);
}

function notAnEntry({ section, found }: PieceProblem & { readonly problem: 'not-an-entry' }, whole: Place): Finding {
  const at = firstLine(whole);
  const example = flowText(sectionSchema(section)?.examples?.[0]);
  const name = visible(at.piece.text.slice(at.start, at.end), 40);
  if (SECTIONS[section] === 'list') {
    return {
      at,
      message: `${section} is a list: begin each entry with a hyphen and a space, such as ${example}.`,
      acceptAt: [],
    };
  }
  const advice =
    found === 'a list'
      ? `${section} holds its entries by name, not as a list: write a name and a colon instead of the hyphen, such ` +
        `as ${example}.`
      : whole.piece.role === 'item'
        ? `${asName(name)} needs a colon after it, and what it is, such as ${example}.`
        : `${section} holds its entries by name: write a name, a colon and what it is, such as ${example}.`;
  return { at, message: advice, acceptAt: [] };
}

/** A missing element is marked at its hyphen. */
function visiblePlace(place: Place): Place {
  return place.end > place.start || place.start === 0 ? firstLine(place) : { ...place, start: place.start - 1 };
}

const SPOKEN: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['on', true],
  ['true', true],
  ['no', false],
  ['off', false],
  ['false', false],
]);

function fixesOf(
  item: Item,
  keyPath: KeyPath,
  found: Data,
  expected: readonly string[],
  schema: Schema | undefined,
): Fix[] {
  const write = (text: string, title = `Write ${text}`): Fix[] => {
    const edit: Edit = setValue(item, keyPath, text);
    return [{ title, safe: true, edits: [edit] }];
  };
  if (found === null)
    return expected.includes('object') && (schema?.required ?? []).length === 0 && schema?.properties !== undefined
      ? write('{}')
      : [];
  if (expected.includes('array') && typeof found !== 'object')
    return write(`[${scalarText(found, true)}]`, 'Make it a list');
  if (Array.isArray(found)) {
    const only = found.length === 1 ? found[0] : undefined;
    return only === undefined || only === null || typeof only === 'object'
      ? []
      : write(scalarText(only, true), 'Take the value out of the list');
  }
  if (typeof found === 'object') return [];
  if (expected.includes('boolean') && typeof found === 'string') {
    const spoken = SPOKEN.get(found.toLowerCase());
    return spoken === undefined ? [] : write(String(spoken));
  }
  if (typeof found === 'string' && expected.some((type) => type === 'integer' || type === 'number')) {
    return /^\d+$/.test(found) || (expected.includes('number') && /^\d+\.\d+$/.test(found)) ? write(found) : [];
  }
  if (typeof found !== 'string' && expected.includes('string') && !expected.includes('object'))
    return write(`"${String(found)}"`, 'Put it in quotes');
  return [];
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, receivers: recorder}
#                                           ^^^^^^^^ receivers is recorder; write a list, such as [recorder, kitchen-screen]
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, igmp-snooping: yes}
#                                     ^^^ igmp-snooping is yes; write true or false
`,
    fixed: `
devices:
  core: {kind: switch, igmp-snooping: true}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: }
#                             ^^^^^^^ address has no value yet: an IPv4 address
`,
    good: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
  },
  {
    bad: `
devices:
  paddock-cam:
    kind:camera
#   ^^^^^^^^^^^ A space is missing after the colon
`,
    fixed: `
devices:
  paddock-cam:
    kind: camera
`,
  },
  {
    bad: `
cables:
  core/1: paddock-cam
# ^^^^^^^^^^^^^^^^^^^ cables is a list: begin each entry with a hyphen and a space
`,
    good: `
cables:
  - {from: core/1, to: paddock-cam}
`,
  },
  {
    bad: `
devices:
  paddock-cam
# ^^^^^^^^^^^ paddock-cam needs a colon after it
`,
    good: `
devices:
  paddock-cam: {kind: camera}
`,
  },
];
