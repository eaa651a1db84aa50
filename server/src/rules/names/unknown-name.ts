import { perObject } from '../../memo.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import { type Edit, scalarText } from '../../site/edit.ts';
import { type Item, type Place, isName, placeOf } from '../../site/item.ts';
import type { NameMention } from '../../site/mentions.ts';
import type { Site } from '../../site/model.ts';
import { readEnd } from '../../site/read.ts';
import { type SectionMention, referencesOf, sectionDeclaring } from '../../site/references.ts';
import { NAMED_SECTIONS, type NamedSection, THING, thingsOf } from '../../site/declared.ts';
import { NameSearch, type Near, lettersOf, nearest, onlyNear } from '../../text/nearest.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { receiversLostBy } from '../../network/lost.ts';
import { partOf } from '../../site/places.ts';
import { freePorts } from '../../site/free/switch-port.ts';
import { type KeyPath, dataAt, isMapping, textAt } from '../../text/syntax.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { isWithin, keyPathsOf } from '../../site/shape-problems.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import { declaring } from '../../site/declare.ts';
import { SECTION_NAMES, type SectionName } from '../../site/shape.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unknownName: Rule = {
  id: 'unknown-name',
  severity: 'error',
  isSlip: true,
  summary: 'A name is not declared in the site.',
  why: `A cable then ends nowhere, a stream has no source, a recording no stream. Correct the name, or declare it in its
section, in any file of the folder.`,
  check({ site, files, network }: RuleContext, report: Report): void {
    // The names may be declared in a file that cannot be read, or only in part.
    if (files.some(({ unreadable, unread }) => unreadable !== undefined || unread.length > 0)) return;
    const search = new NameSearch();
    const declared = new Map(NAMED_SECTIONS.map((section) => [section, thingsOf(site, section)]));
    for (const item of site.items)
      for (const { mention, section, name } of referencesOf(item))
        if (
          declared.get(section)?.has(name) !== true &&
          !isMisshapen(item, mention) &&
          !isNamedBadly(site, section, name)
        )
          report({
            at: placeOfName(item, mention),
            word: () => ({
              ...unknown({ site, files }, item, mention, search),
              ...followingFrom({ site, network }, item, mention),
            }),
          });
  },
};

/** Whether the value has the wrong shape, which is reported as such; a number may be a name. */
function isMisshapen({ problems }: Item, { keyPath }: NameMention): boolean {
  return problems.length > 0 && isWithin(noNames(problems), keyPath);
}

const noNames = perObject((problems: Item['problems']) =>
  keyPathsOf(problems.filter((one) => one.problem !== 'wrong-type' || typeof one.found !== 'number')),
);

/** The name in a mention; for a port at an end of a cable, its device. */
function nameIn({ names, text }: SectionMention): string {
  return names === 'port-end' ? (readEnd(text, [])?.device ?? text) : text;
}

function placeOfName(item: Item, mention: SectionMention): Place {
  const { names, keyPath, part } = mention;
  if (part === 'key') return placeOf(item, keyPath, 'key');
  return names === 'port-end' ? partOf(item, keyPath, 0, nameIn(mention).length) : placeOf(item, keyPath);
}

function unknown(
  { site, files }: Pick<RuleContext, 'site' | 'files'>,
  item: Item,
  mention: SectionMention,
  search: NameSearch,
): Finding {
  const { names, text, part } = mention;
  const name = nameIn(mention);
  const at = placeOfName(item, mention);
  const section = sectionDeclaring(names);
  const thing = THING[section];
  const by = names === 'vlans' ? site.vlans.find(({ id }) => id !== undefined && String(id) === name) : undefined;
  const near = by === undefined ? search.near(name, thingsOf(site, section)) : [{ name: by.name, distance: 0 }];
  const isWhole = part === 'value' && names !== 'port-end';
  const change = (to: string): Edit[] => [{ at, text: isWhole ? scalarText(to, true) : to }];
  const rest =
    by === undefined
      ? advice(near, thing, elsewhere(site, name))
      : ` by name; ${asName(name)} is the id of ${asName(by.name)}.`;
  return {
    at,
    showAfter: search.begins(name, thingsOf(site, section))
      ? 'value'
      : near.length === 0 && (isWrittenLater(item.section, section) || thingsOf(site, section).size === 0)
        ? 'pause'
        : 'keystroke',
    awaits: {
      section,
      isSlip: onlyNear(name, near) !== undefined,
      isAbove: !isWrittenLater(item.section, section),
    },
    message: `There is no ${thing} ${visible(name, 40)}${rest}`,
    acceptAt: [name, ...acceptAtItem(item)],
    // A consequence of a copied entry that still has the first one's name, which is reported.
    effects: [mention],
    fixes: () => [
      ...near
        .filter((candidate) => isWhole || isName(candidate.name))
        .filter((candidate) => part !== 'key' || !isKeyBeside(item, mention.keyPath, candidate.name))
        .filter((candidate) => names !== 'port-end' || takesCable(site, item, text, candidate.name))
        .map((candidate) => ({
          title: `Change to ${asName(candidate.name)}`,
          safe: by !== undefined,
          edits: change(candidate.name),
        })),
      ...(by === undefined && isName(name) ? declaring(site, files, { item, section, name }) : []),
    ],
  };
}

/** Whether the name may still be written further below. */
function isWrittenLater(own: SectionName, other: NamedSection): boolean {
  return SECTION_NAMES.indexOf(other) >= SECTION_NAMES.indexOf(own);
}

/** Whether the cable fits the end with another device: at a free port of it, and not the device at its other end. */
function takesCable(site: Site, item: Item, text: string, device: string): boolean {
  const found = site.deviceByName.get(device);
  const free = found === undefined ? [] : freePorts(site, found);
  const { port } = readEnd(text, []) ?? {};
  const isThere =
    port === undefined ? found?.ports.length === 1 && free.length === 1 : free.some(({ name }) => name === port);
  return isThere && !['from', 'to'].some((key) => readEnd(textAt(item.data, [key]), [])?.device === device);
}

function advice(near: readonly Near[], thing: string, elsewhere: string | undefined): string {
  if (elsewhere !== undefined) return `; ${elsewhere}.`;
  if (near.length > 0)
    return `. Did you mean ${list(
      near.map(({ name }) => name),
      'or',
    )}?`;
  return `. Correct the name, or declare the ${thing}.`;
}

function isNear(written: string, name: string | undefined): boolean {
  return name !== undefined && nearest(written, [name]).length > 0;
}

/** Whether the mapping has that key already. */
function isKeyBeside({ data }: Item, keyPath: KeyPath, key: string): boolean {
  const around = dataAt(data, keyPath.slice(0, -1));
  return isMapping(around) && Object.hasOwn(around, key);
}

/** Whether it is declared with an invalid name, such as one with a space, which is reported there. */
function isNamedBadly(site: Site, section: NamedSection, name: string): boolean {
  return badlyNamed(site.sections[section]).has(lettersOf(name));
}

/** The letters of invalid names. */
const badlyNamed = perObject(
  (items: Site['sections'][NamedSection]): ReadonlySet<string> =>
    new Set(items.flatMap(({ name }) => (isName(name) ? [] : [lettersOf(name)]))),
);

/**
 * The consequences of an unknown name: streams stopped by a cable that leads nowhere or a port in an unknown VLAN,
 * traffic that an unknown gateway does not forward, and recordings and re-sent streams of an unknown receiver.
 */
function followingFrom(
  { site, network }: Pick<RuleContext, 'site' | 'network'>,
  item: Item,
  mention: NameMention,
): Partial<Finding> {
  const { causes, topology } = network;
  if (item.section === 'streams' && mention.keyPath[0] === 'receivers')
    return {
      entails: [
        ...site.recordings.filter(
          ({ stream, volume }) =>
            stream === item.name && isNear(mention.text, site.volumeByName.get(volume ?? '')?.host),
        ),
        ...site.streams.filter(({ carries, source }) => carries === item.name && isNear(mention.text, source)),
      ],
    };
  if (item.section === 'vlans' && mention.keyPath[0] === 'gateway') {
    const isOf = (why: Obstacle): boolean => why.obstacle === 'no-gateway' && why.network === item.name;
    return {
      entails: [
        ...receiversLostBy(network, isOf).flatMap(({ unreached }) => [unreached, unreached.why]),
        ...network.traffic.flatMap(({ obstacle }) => (obstacle !== undefined && isOf(obstacle) ? [obstacle] : [])),
      ],
    };
  }
  if (item.section === 'cables') return consequencesOf(causes, [item]);
  const [section, key] = mention.keyPath;
  if (item.section !== 'devices' || mention.names !== 'vlans' || section !== 'ports') return {};
  const ports = site.deviceByName.get(item.name)?.ports.filter(({ keyPath }) => keyPath[1] === key) ?? [];
  const links = ports.flatMap((port) => topology.linkAt(port) ?? []);
  const followed = consequencesOf(causes, links);
  return { ...followed, entails: [...followed.entails, ...links.flatMap(({ a, b }) => [a, b])] };
}

/** The kind of thing in another section that has that name. */
function elsewhere(site: Site, name: string): string | undefined {
  const section = NAMED_SECTIONS.find((candidate) => thingsOf(site, candidate).has(name));
  return section === undefined ? undefined : `${asName(name)} is a ${THING[section]}`;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server}
  paddock-cam: {kind: camera}
streams:
  paddock: {source: padock-cam, receivers: [recorder]}
#                   ^^^^^^^^^^ There is no device padock-cam. Did you mean paddock-cam?
`,
    fixed: `
devices:
  recorder: {kind: server}
  paddock-cam: {kind: camera}
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {vlan: video}}}
  paddock-cam: {kind: camera}
cables:
  - {from: cor/1, to: paddock-cam}
#          ^^^ There is no device cor. Did you mean core?
vlans:
  video: {id: 20}
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {vlan: video}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam}
vlans:
  video: {id: 20}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20}
devices:
  core: {kind: switch, ports: {1-8: {vlan: 20}}}
#                                          ^^ There is no VLAN 20 by name; 20 is the id of video.
`,
    fixed: `
vlans:
  video: {id: 20}
devices:
  core: {kind: switch, ports: {1-8: {vlan: video}}}
`,
  },
  {
    bad: `
devices:
  recorder: {kind: server}
  paddock-cam: {kind: camera}
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
  paddock-live: {source: paddock, receivers: [recorder]}
#                        ^^^^^^^ There is no device paddock; paddock is a stream.
`,
  },
];
