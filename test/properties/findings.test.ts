// What the findings of a house must not depend on: names, order, files, and whether defaults are spelt out.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { mistakes } from '../houses/mistakes.ts';
import { perObject } from '../../server/src/memo.ts';
import { houses, mistaken } from '../houses/read.ts';
import { diagnosticsOf } from '../site.ts';

type Data = unknown;
type Mapping = Record<string, Data>;

interface House {
  readonly name: string;
  readonly text: string;
}

const right: readonly House[] = [...houses].map(([name, text]) => ({ name, text }));
const wrong: readonly House[] = mistakes.map((mistake) => ({
  name: `${mistake.house}: ${mistake.is}`,
  text: mistaken(mistake),
}));

function isMapping(data: Data): data is Mapping {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}

function dataOf({ text }: House): Mapping {
  const data: Data = parse(text);
  assert.ok(isMapping(data));
  return data;
}

/** `severity rule` and what it is about, without places, sorted. */
function findings(...texts: readonly string[]): string[] {
  const files = Object.fromEntries(texts.map((text, index) => [`${index}.site.yaml`, text]));
  return diagnosticsOf(files)
    .map(({ rule, severity, acceptAt }) => `${severity} ${rule.id} ${[...new Set(acceptAt)].sort().join(' ')}`)
    .sort();
}

/** Of a house as it stands. */
const findingsOf = perObject((house: House): readonly string[] => findings(house.text));

/** `severity rule`, sorted. */
function kinds(all: readonly string[]): string[] {
  return all.map((finding) => finding.split(' ').slice(0, 2).join(' ')).sort();
}

const NAMING = ['vlans', 'devices', 'streams', 'volumes', 'recordings'];

/** Keys whose values name what a section declares, and those whose keys do. */
const NAMES = new Set([
  'gateway',
  'querier',
  'vlan',
  'trunk',
  'native',
  'reaches',
  'clock',
  'from',
  'to',
  'through',
  'source',
  'carries',
  'receivers',
  'host',
  'stream',
  'volume',
  'recordings',
]);

/** The house with other names for everything that it declares; misspelt names are changed in the same way. */
function renamed(house: House, to: (name: string) => string): string {
  const name = (text: string): string => {
    const [device = '', ...port] = text.split('/');
    return [to(device), ...port].join('/');
  };
  const within = (data: Data, key: string): Data => {
    if (typeof data === 'string') return NAMES.has(key) && !/^\d|default$/.test(data) ? name(data) : data;
    if (Array.isArray(data)) return data.map((each: Data) => within(each, key));
    if (!isMapping(data)) return data;
    return Object.fromEntries(
      Object.entries(data).map(([own, value]) => [key === 'addresses' ? to(own) : own, within(value, own)]),
    );
  };
  return stringify(
    Object.fromEntries(
      Object.entries(dataOf(house)).map(([section, entries]) => [
        section,
        NAMING.includes(section) && isMapping(entries)
          ? Object.fromEntries(Object.entries(entries).map(([own, entry]) => [to(own), within(entry, '')]))
          : within(entries, ''),
      ]),
    ),
  );
}

function turned(data: Data): Data {
  if (Array.isArray(data)) return data.map(turned).reverse();
  if (!isMapping(data)) return data;
  return Object.fromEntries(
    Object.entries(data)
      .reverse()
      .map(([key, value]) => [key, turned(value)]),
  );
}

/** Kinds of device that have one port where they say none; a part of an aerial system has connectors. */
const END_HOSTS: ReadonlySet<Data> = new Set(['server', 'camera', 'display', 'computer', 'tuner', 'router']);

/** What holds where nothing is said, said; a device of one port with its port written out. */
function spelt(house: House): string {
  const site = dataOf(house);
  const each = (section: string, more: (entry: Mapping) => Mapping): Mapping => {
    const entries = site[section];
    if (!isMapping(entries)) return {};
    const full = Object.entries(entries).map(([name, entry]) => [name, isMapping(entry) ? more(entry) : entry]);
    return { [section]: Object.fromEntries(full) };
  };
  return stringify({
    ...site,
    ...each('devices', (device) => {
      if (device['kind'] === 'switch' && 'ports' in device)
        return {
          'igmp-snooping': false,
          'spanning-tree': false,
          ...device,
          'ports': Object.fromEntries(
            Object.entries(isMapping(device['ports']) ? device['ports'] : {}).map(([name, port]) => [
              name,
              { 'router-port': false, 'forward-reports': false, ...(isMapping(port) ? port : {}) },
            ]),
          ),
        };
      const { kind, speed, address, poe, mac, reserved, ...rest } = device;
      if ('ports' in rest || !END_HOSTS.has(kind)) return device;
      const port = { speed, address, poe, mac, reserved };
      return { kind, ...rest, ports: { eth: JSON.parse(JSON.stringify(port)) as Data } };
    }),
    ...each('streams', (stream) => ('group' in stream ? { ttl: 1, ...stream } : stream)),
    ...each('volumes', (volume) => ({ redundancy: 'none', reserve: '0 %', ...volume })),
    policies: {
      'link-load': { warn: '70 %', limit: '90 %' },
      ...(isMapping(site['policies']) ? site['policies'] : {}),
    },
  });
}

/** Each house in order, and what differs. */
function holds(
  all: readonly House[],
  same: (house: House) => readonly [actual: readonly string[], expected: readonly string[]],
): void {
  for (const house of all) {
    const [actual, expected] = same(house);
    assert.deepEqual(actual, expected, house.name);
  }
}

describe('findings of houses', () => {
  const backwards = (name: string): string =>
    [...name]
      .map((letter) => (/[a-z]/.test(letter) ? String.fromCharCode(219 - letter.charCodeAt(0)) : letter))
      .join('');

  it('are still none when everything gets another name', () =>
    holds(right, (house) => [findings(renamed(house, backwards)), []]));

  it('are the same of the same things when everything gets another name', () => {
    const to = (name: string): string => `q${name}`;
    holds(wrong, (house) => {
      const known = new Set(findingsOf(house).flatMap((one) => one.split(' ').slice(2)));
      const back = findings(renamed(house, to)).map((one) =>
        one
          .split(' ')
          .map((word, index) => (index > 1 && !known.has(word) && word.startsWith('q') ? word.slice(1) : word))
          .map((word, index, all) => (index > 1 && all.indexOf(word) < index ? '' : word))
          .filter((word) => word !== '')
          .join(' '),
      );
      return [back.map(inOrder), findingsOf(house).map(inOrder)];
    });
  });

  it('are still none when entries, keys and lists are in another order', () =>
    holds(right, (house) => [findings(stringify(turned(dataOf(house)))), []]));

  it('are of the same rules when entries, keys and lists are in another order', () =>
    holds(wrong, (house) => [kinds(findings(stringify(turned(dataOf(house))))), kinds(findingsOf(house))]));

  it('are the same when a house is split over files', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...right, ...wrong),
        fc.array(fc.nat({ max: 2 }), { minLength: 12, maxLength: 12 }),
        (house, into) => {
          const sections = Object.entries(dataOf(house));
          const files = [0, 1, 2].map((file) =>
            stringify(Object.fromEntries(sections.filter((_, index) => into[index] === file))),
          );
          assert.deepEqual(findings(...files.filter((text) => text !== '{}\n')), findingsOf(house), house.name);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('are the same when defaults are spelt out', () =>
    holds([...right, ...wrong], (house) => [findings(spelt(house)), findingsOf(house)]));
});

function inOrder(finding: string): string {
  const [severity = '', rule = '', ...about] = finding.split(' ');
  return [severity, rule, ...about.sort()].join(' ');
}
