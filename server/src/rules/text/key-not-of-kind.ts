import { type Data, dataOf, isMapping } from '../../text/syntax.ts';
import { list } from '../../text/words.ts';
import { type Fix, fixOf, remove, setValue } from '../../site/edit.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { kindWords, kindsList } from '../../site/shape-words.ts';
import { kindsWith, schemaAt } from '../../site/shape.ts';
import { type ShapeProblem, validate } from '../../site/validate.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

type NotOfKind = ShapeProblem & { readonly problem: 'not-of-kind' };

export const keyNotOfKind: Rule = {
  id: 'key-not-of-kind',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A device has a key that devices of its kind do not have.',
  why: `A camera does not snoop IGMP, and a patch panel has no address: either the key is ignored, or the kind is
wrong. The reference of the site language says which kinds have which keys.`,
  check({ site }: RuleContext, report: Report): void {
    const byItem = new Map<Item, NotOfKind[]>();
    for (const { item, problem } of shapeProblems(site, 'not-of-kind')) {
      const known = byItem.get(item);
      if (known === undefined) byItem.set(item, [problem]);
      else known.push(problem);
    }
    for (const [item, problems] of byItem) {
      const places = problems
        .map((problem) => ({ ...problem, at: placeOf(item, problem.keyPath, 'key') }))
        .sort((a, b) => a.at.start - b.at.start);
      const [first, ...others] = places;
      if (first === undefined) continue;
      const keys = [...new Set(places.map(({ key }) => key))];
      const kinds = kindsWithAll(item, problems);
      const owners = kinds.length === 0 || kinds.length > MAX_LISTED ? '' : `; ${kindsList(kinds)} has`;
      report({
        at: first.at,
        message:
          `${sentence(kindWords(String(kindOf(item))))} has no ${list(keys, 'or')}${owners}. Remove ` +
          `${keys.length === 1 ? 'it' : 'them'}, or correct the kind.`,
        acceptAt: acceptAtItem(item),
        related: others.map(({ at, key }) => ({ at, message: `${key} too` })),
        fixes: () => [
          ...places.flatMap(({ keyPath, key }) => fixOf(`Remove ${key}`, remove(item, keyPath))),
          ...otherKinds(site, item, kinds),
        ],
      });
    }
  },
};

/** The most kinds that a message lists. */
const MAX_LISTED = 4;

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function kindOf({ data }: Item): Data | undefined {
  return isMapping(data) ? data['kind'] : undefined;
}

/** The kinds that have all of those keys. */
function kindsWithAll(item: Item, problems: readonly NotOfKind[]): readonly string[] {
  const having = problems.map(({ keyPath }) => kindsWith(schemaAt(item.section, item.name, keyPath) ?? {}));
  return (having[0] ?? []).filter((kind) => having.every((kinds) => kinds.includes(kind)));
}

/** Kinds that allow all the keys; none that forwards frames for a device that sends or receives streams. */
function otherKinds(site: Site, item: Item, kinds: readonly string[]): Fix[] {
  const written = dataOf(item.node);
  if (!isMapping(written) || kinds.length > MAX_LISTED || isEndHost(site, item.name)) return [];
  return kinds
    .filter((kind) => validate(item.section, item.name, { ...written, kind }).problems.length === 0)
    .flatMap((kind) => fixOf(`Make it ${kindWords(kind)}`, setValue(item, ['kind'], kind)));
}

function isEndHost({ streams, volumes }: Site, name: string): boolean {
  return (
    streams.some(({ source, receivers }) => source === name || receivers.includes(name)) ||
    volumes.some(({ host }) => host === name)
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  stable: {kind: server, igmp-snooping: true, address: 192.168.20.3}
#                        ^^^^^^^^^^^^^ A server has no igmp-snooping; a switch, a router or an access-point has.
`,
    fixed: `
devices:
  stable: {kind: server, address: 192.168.20.3}
`,
  },
  {
    bad: `
devices:
  paddock-cam:
    kind: camera
    igmp-snooping: true
#   ^^^^^^^^^^^^^ A camera has no igmp-snooping or poe-budget; a switch, a router or an access-point has.
    poe-budget: 30 W
`,
    good: `
devices:
  paddock-cam:
    kind: camera
    poe: {class: 3}
`,
  },
  {
    bad: `
devices:
  panel-a: {kind: patch-panel, ports: {1-24: {speed: 1 Gb/s}}}
#                                             ^^^^^ A patch-panel has no speed. Remove it, or correct the kind.
`,
    fixed: `
devices:
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
`,
  },
];
