import { nearest } from '../../text/nearest.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { firstLine } from '../../site/places.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { subjectAt, suchAs, wanted } from '../../site/shape-words.ts';
import { type KeyPath, isMapping } from '../../text/syntax.ts';
import { addEntry, fixOf, nameText } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import { NAMED_SECTIONS, thingsOf } from '../../site/declared.ts';
import type { Site } from '../../site/model.ts';
import { deviceKinds, kindsWith, schemaAt } from '../../site/shape.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const missingKey: Rule = {
  id: 'missing-key',
  severity: 'error',
  isSlip: true,
  showAfter: 'item',
  summary: 'A required key is missing.',
  why: `The entry is useless without it: a cable with one end joins nothing, a recording without a volume is
written nowhere. The fix fills in the name where the site leaves only one choice.`,
  check({ site }: RuleContext, report: Report): void {
    for (const {
      item,
      problem: { key, keyPath },
    } of shapeProblems(site, 'missing-key')) {
      if (isMisspelt(item, keyPath, key)) continue;
      const below = [...keyPath, key];
      const at = firstLine(placeOf(item, keyPath, keyPath.length === 0 ? 'key' : 'value'));
      report({
        at,
        message:
          `${subjectAt(item, keyPath)} lacks ${key}: ` +
          `${wanted(schemaAt(item.section, item.name, below))}${suchAs(item, below)}.`,
        acceptAt: acceptAtItem(item),
        fixes: () => {
          const value = onlyChoice(site, item, keyPath, key);
          const edit = value === undefined ? undefined : addEntry(item, keyPath, key, nameText(value));
          return fixOf(`Add ${key}: ${value ?? ''}`, edit);
        },
      });
    }
  },
};

/** Whether another key is a misspelling of this one, which unknown-key reports. */
function isMisspelt({ problems }: Item, keyPath: KeyPath, key: string): boolean {
  return problems.some(
    (other) =>
      other.problem === 'unknown-key' &&
      other.keyPath.length === keyPath.length + 1 &&
      keyPath.every((step, i) => step === other.keyPath[i]) &&
      (nearest(other.key, [key]).length > 0 || other.key.startsWith(`${key}:`)),
  );
}

/** The only value that is possible in this site. */
function onlyChoice(site: Site, item: Item, keyPath: KeyPath, key: string): string | undefined {
  if (item.section === 'devices' && keyPath.length === 0 && key === 'kind') return kindBy(item);
  const names = schemaAt(item.section, item.name, [...keyPath, key])?.['x-names'];
  const section = NAMED_SECTIONS.find((candidate) => candidate === names);
  if (section === undefined) return undefined;
  const things = thingsOf(site, section);
  const [only, ...others] = things.keys();
  return others.length === 0 ? only : things.get(item.name)?.name;
}

/** The first kind that has all the keys, where not every kind has them. */
function kindBy(item: Item): string | undefined {
  if (!isMapping(item.data)) return undefined;
  const having = Object.keys(item.data).map((key) => kindsWith(schemaAt(item.section, item.name, [key]) ?? {}));
  const kinds = deviceKinds();
  if (having.every(({ length }) => length > kinds.length / 2)) return undefined;
  return kinds.find((kind) => having.every((own) => own.includes(kind)));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: recorder}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock}
# ^^^^^^^ paddock lacks volume: the name of a volume, such as archive
`,
    fixed: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: recorder}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive}
`,
  },
  {
    bad: `
cables:
  - {from: core/1}
#   ^^^^^^^^^^^^^^ This cable lacks to: a port as device/port
`,
    good: `
cables:
  - {from: core/1, to: paddock-cam}
`,
  },
  {
    bad: `
devices:
  stable-switch:
# ^^^^^^^^^^^^^ stable-switch lacks kind: one of switch, router
    igmp-snooping: true
`,
    fixed: `
devices:
  stable-switch:
    igmp-snooping: true
    kind: switch
`,
  },
];
