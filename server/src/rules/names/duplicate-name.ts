import { count, asName } from '../../text/words.ts';
import { visible } from '../../text/visible.ts';
import { type Item, namePlace, placeOf } from '../../site/item.ts';
import { portNames } from '../../site/port-names.ts';
import { readSeverities } from '../../site/read.ts';
import { type NamedSection, NAMED_SECTIONS, THING, thingsOf } from '../../site/declared.ts';
import { fixOf, setKey } from '../../site/edit.ts';
import type { Site } from '../../site/model.ts';
import { type Reference, referencesOf } from '../../site/references.ts';
import { SECTIONS, SECTION_NAMES } from '../../site/shape.ts';
import { nearest } from '../../text/nearest.ts';
import { compactPorts } from '../../site/port-list.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { dataAt, isMapping } from '../../text/syntax.ts';

export const duplicateName: Rule = {
  id: 'duplicate-name',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'Two things of one section have the same name.',
  why: `All files in the folder are one site, in which a name means one thing. Only the first in the order of the
files counts; whatever names it means that one. Rename the second, or take it out.`,
  check({ site }: RuleContext, report: Report): void {
    for (const { item, ports } of site.devices) if (ports.length > 1) portsTwice(item, report);
    severitiesTwice(site, report);
    const undeclared = undeclaredIn(site);
    for (const [item, before] of doubles(site)) {
      const word = (): Finding => {
        const name = visible(item.name, 40);
        const named = NAMED_SECTIONS.find((candidate) => candidate === item.section);
        const meant = named === undefined ? [] : undeclared(named, item.name);
        const wanted = meant[0]?.name;
        return {
          at: namePlace(item),
          message:
            named === undefined
              ? `${asName(name)} of the section ${item.section} is already set, and only the first counts. Remove one.`
              : `There is a ${THING[named]} ${asName(name)} already, and only the first counts. Rename or remove this one.`,
          acceptAt: [item.name],
          entails: meant.map(({ mention }) => mention),
          fixes: () =>
            wanted === undefined
              ? []
              : fixOf(`Rename it to ${wanted}, which is named and not declared`, setKey(item, [], wanted)),
          related: [
            {
              at: namePlace(before),
              message: named === undefined ? 'first set here' : `${asName(name)} is first declared here`,
            },
          ],
        };
      };
      report({ at: namePlace(item), word });
    }
  },
};

/**
 * The uses of the only undeclared name of a section that is no misspelling of another: the copied entry was meant to
 * get that name.
 */
function undeclaredIn(site: Site): (section: NamedSection, copied: string) => readonly Reference[] {
  const known = new Map<NamedSection, { readonly uses: readonly Reference[]; readonly near: readonly string[] }>();
  return (section, copied) => {
    let own = known.get(section);
    if (own === undefined) {
      const declared = thingsOf(site, section);
      const uses = site.items.flatMap(referencesOf).filter((one) => one.section === section && !declared.has(one.name));
      const [only = '', another] = new Set(uses.map(({ name }) => name));
      const near = nearest(only, declared.keys()).map(({ name }) => name);
      known.set(section, (own = { uses: another === undefined ? uses : [], near }));
    }
    return own.near.some((name) => name !== copied) ? [] : own.uses;
  };
}

/** Each item whose name an earlier one has, and that one. */
function* doubles(site: Site): Iterable<[Item, Item]> {
  for (const section of SECTION_NAMES) {
    const items = site.sections[section];
    // Where two items have one name, only the first is part of the site.
    const named = NAMED_SECTIONS.find((candidate) => candidate === section);
    if (SECTIONS[section] === 'list' || (named !== undefined && items.length === thingsOf(site, named).size)) continue;
    const first = new Map<string, Item>();
    for (const item of items) {
      const before = first.get(item.name);
      if (before === undefined) first.set(item.name, item);
      else if (!isAddedUp(item)) yield [item, before];
    }
  }
}

/** Whether the item may stand in several places, which are merged. */
function isAddedUp({ section, name }: Item): boolean {
  return section === 'lint' || (section === 'policies' && name === 'retention');
}

/** Rules that two places set to different severities. */
function severitiesTwice({ sections }: Site, report: Report): void {
  const first = new Map<string, { readonly item: Item; readonly severity: string }>();
  for (const item of sections.lint) {
    if (item.name !== 'rules') continue;
    for (const [rule, severity] of readSeverities(item)) {
      const before = first.get(rule);
      if (before === undefined) first.set(rule, { item, severity });
      else if (before.severity !== severity && before.item !== item) {
        report({
          at: placeOf(item, [rule]),
          message:
            `${visible(rule, 40)} is set to ${visible(before.severity, 40)} already, and only the first counts. Take ` +
            'one of them out.',
          acceptAt: [rule],
          related: [{ at: placeOf(before.item, [rule]), message: 'first set here' }],
        });
      }
    }
  }
}

function portsTwice(item: Item, report: Report): void {
  const ports = dataAt(item.data, ['ports']);
  if (!isMapping(ports)) return;
  const keys = Object.keys(ports);
  if (keys.length < 2) return;
  const declared = new Map<string, string>();
  // An object lists keys of digits first, regardless of where they are written.
  for (const key of keys.sort(
    (a, b) => placeOf(item, ['ports', a], 'key').start - placeOf(item, ['ports', b], 'key').start,
  )) {
    const again = portNames(key).filter((name) => declared.has(name));
    const before = declared.get(again[0] ?? '');
    for (const name of portNames(key)) if (!declared.has(name)) declared.set(name, key);
    if (before === undefined) continue;
    report({
      at: placeOf(item, ['ports', key], 'key'),
      message:
        again.length === portNames(key).length
          ? `${key} is already declared in ${before}. Remove it from one of them.`
          : `${count(again.length, 'port')} of ${key} ${again.length === 1 ? 'is' : 'are'} declared in ${before} ` +
            `already: ${compactPorts(again)}.`,
      acceptAt: [...again.map((name) => `${item.name}/${name}`), item.name],
      related: [{ at: placeOf(item, ['ports', before], 'key'), message: 'first declared here' }],
    });
  }
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
  stable-cam: {kind: camera, address: 192.168.20.32}
  paddock-cam: {kind: camera, address: 192.168.20.33}
# ^^^^^^^^^^^ There is a device paddock-cam already
`,
    good: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
  stable-cam: {kind: camera, address: 192.168.20.32}
  drive-cam: {kind: camera, address: 192.168.20.33}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}, 8-10: {speed: 10 Gb/s}}}
#                                                    ^^^^ 1 port of 8-10 is declared in 1-8 already: 8.
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}, 9-10: {speed: 10 Gb/s}}}
`,
  },
];
