/** Values that do not have the form of their key. Long by its cases, one for each form, and its examples. */

import { parseAddress } from '../../standards/ipv4.ts';
import { isTimeZone } from '../../standards/time-zone.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import { type Data, type KeyPath, dataAt, isMapping } from '../../text/syntax.ts';
import { type Fix, scalarText, setKey, setValue } from '../../site/edit.ts';
import { type Item, LONGEST_NAME, type Place, isName, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { portCount, portNames } from '../../site/port-names.ts';
import { SECTIONS, type Schema } from '../../site/shape.ts';
import { nearest } from '../../text/nearest.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { mending } from '../../site/mended.ts';
import { firstLine } from '../../site/places.ts';
import { hasShapeProblem, shapeProblems } from '../../site/shape-problems.ts';
import { OF_FORM, shown, subjectAt, suchAs, wanted } from '../../site/shape-words.ts';
import { beginsWhat } from '../../site/half-typed.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const malformedValue: Rule = {
  id: 'malformed-value',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A value or a name is malformed.',
  why: `An address with a number over 255, a subnet without its prefix, a name with a space in it: such a
value is ignored, since nobody can tell what it means. Names consist of letters, digits, \`-\` and \`_\`,
63 at most, as host names do.`,
  source: 'Time zones: the IANA time-zone database',
  check({ site }: RuleContext, report: Report): void {
    for (const {
      item,
      problem: { keyPath, found, schema },
    } of shapeProblems(site, 'malformed')) {
      report({
        at: firstLine(placeOf(item, keyPath)),
        showAfter: beginsWhat(schema, found) ? 'value' : 'keystroke',
        message: sentence(item, keyPath, found, schema),
        acceptAt: acceptAtItem(item),
        fixes: (wanted) => {
          const plain = typeof found === 'string' ? withoutZeros(found) : undefined;
          if (plain !== undefined) return [write(plain, setValue(item, keyPath, plain), false)];
          const possible = meant(site, found, schema);
          return mending(
            possible.map((text) => write(text, setValue(item, keyPath, scalarText(text, true)))),
            wanted,
          );
        },
      });
    }
    for (const {
      item,
      problem: { keyPath, name },
    } of shapeProblems(site, 'bad-name'))
      report(badName(item, placeOf(item, keyPath, 'key'), keyPath, name));
    for (const item of site.faulty) {
      if (SECTIONS[item.section] === 'map' && !isName(item.name))
        report(badName(item, placeOf(item, [], 'key'), [], item.name));
    }
    for (const item of site.sections.devices) numberRanges(item, 'ports', report);
    for (const device of site.devices) {
      if (device.kind === 'tuner') numberRanges(device.item, 'tuners', report);
      if (device.aerial !== undefined && device.aerial.frequencies === undefined) frequencyRange(device.item, report);
      if (device.ports.length === 0 && portCount(device.item) > 0) report(tooManyPorts(device.item));
    }
    for (const item of site.sections.site) if (item.name === 'timezone') unknownZone(item, report);
  },
};

function sentence(item: Item, keyPath: KeyPath, found: Data, schema: Schema | undefined): string {
  const what = subjectAt(item, keyPath);
  if (found === '') return `${what} is empty: ${wanted(schema)}${suchAs(item, keyPath)}.`;
  if (typeof found === 'object')
    return `${what} is empty. Write at least one entry${suchAs(item, keyPath)}, or take it out.`;
  const text = shown(found);
  const plain = typeof found === 'string' ? withoutZeros(found) : undefined;
  if (schema?.['x-form'] !== undefined && plain !== undefined) {
    return (
      `${what} is ${text}: a number with a leading zero, which some read as octal. Write ${plain}, if that is ` +
      'meant.'
    );
  }
  if (schema?.['x-form'] !== undefined && /^[\da-f:]*:[\da-f:]*$/i.test(text) && schema['x-form'] !== 'mac') {
    return `${what} is ${text}, an IPv6 address; the addresses of a site are IPv4${suchAs(item, keyPath)}.`;
  }
  return `${what} is ${text}, which is not ${formOf(schema)}${suchAs(item, keyPath)}.`;
}

function formOf(schema: Schema | undefined): string {
  if (schema?.['x-form'] !== undefined) return OF_FORM[schema['x-form']];
  if (schema?.['x-names'] === 'port-end') return 'a port as device/port';
  if (schema?.['x-names'] !== undefined) return 'a name: letters, digits, - and _';
  return schema?.title === 'Picture size'
    ? 'width, x and height in pixels'
    : schema?.pattern?.startsWith('^/') === true
      ? 'a path that begins with /'
      : `what belongs here: ${(schema?.description ?? '').replace(/[.;:].*$/s, '')}`;
}

/** The address without leading zeros, where they are its only fault. */
function withoutZeros(text: string): string | undefined {
  const plain = text.replace(/\b0+(?=\d)/g, '');
  return plain !== text && parseAddress(plain) !== undefined ? plain : undefined;
}

function write(text: string, edit: ReturnType<typeof setValue>, safe = true): Fix {
  return { title: `Write ${visible(text, 60)}`, safe, edits: [edit] };
}

/** Corrected values, where only one reading is possible. */
function meant(site: Site, found: Data, schema: Schema | undefined): string[] {
  if (typeof found !== 'string') return [];
  const form = schema?.['x-form'];
  const address = /^\s*((?:\d{1,3}\.){3}\d{1,3})\/\d{1,2}$/.exec(found)?.[1];
  if ((form === 'address' || form === 'group') && address !== undefined) return [address];
  const range = /^\s*((?:\d{1,3}\.){3}\d{1,3})\s*(?:-|\u2013|\.\.+|to)\s*((?:\d{1,3}\.){3}\d{1,3})\s*$/.exec(found);
  if (form === 'address-range' && range !== null) return [`${range[1] ?? ''}-${range[2] ?? ''}`];
  const size = /^\s*(\d{1,5})\s*[x×*]\s*(\d{1,5})\s*$/i.exec(found);
  if (schema?.title === 'Picture size' && size !== null) return [`${size[1] ?? ''}x${size[2] ?? ''}`];
  const end = /^([A-Za-z0-9_-]+)[\s:.,]+([A-Za-z0-9_-]+)$/.exec(found);
  if (
    schema?.['x-names'] === 'port-end' &&
    end !== null &&
    site.deviceByName.get(end[1] ?? '')?.portByName.has(end[2] ?? '') === true
  ) {
    return [`${end[1] ?? ''}/${end[2] ?? ''}`];
  }
  return [];
}

/** Keys with an entry for each frequency. */
const BY_FREQUENCY = ['loss', 'tap-loss', 'attenuation'];

function badName(item: Item, at: Place, keyPath: KeyPath, name: string): Finding {
  const better = name
    .trim()
    .replace(/[^A-Za-z0-9_-]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST_NAME);
  const example = better === '' ? '' : `, such as ${better}`;
  if (BY_FREQUENCY.includes(String(keyPath.at(-2))))
    return {
      at: firstLine(at),
      message: `${visible(name, 40)} is not a frequency: a number, a space and MHz or GHz, such as 474 MHz.`,
      acceptAt: acceptAtItem(item),
    };
  return {
    at: firstLine(at),
    message: `${visible(name, 40)} is not a name: ${lacks(name)}${example}.`,
    acceptAt: acceptAtItem(item),
    fixes: () => (better === '' ? [] : [write(better, setKey(item, keyPath, better), false)]),
  };
}

function lacks(name: string): string {
  if (name.length > LONGEST_NAME) return `it is longer than ${LONGEST_NAME} characters`;
  return /^[-_]+$/.test(name) ? 'it has neither a letter nor a digit' : 'letters, digits, - and _';
}

/** Keys of `ports` that are written as a range and declare nothing. */
function numberRanges(item: Item, of: 'ports' | 'tuners', report: Report): void {
  const entries = dataAt(item.data, [of]);
  if (!isMapping(entries)) return;
  for (const key of Object.keys(entries)) {
    if (portNames(key).length > 0) continue;
    const [first = 0, last = 0] = key.split('-').map(Number);
    const keyPath = [of, key];
    const one = of.slice(0, -1);
    report({
      at: placeOf(item, keyPath, 'key'),
      message:
        last < first
          ? `${key} declares no ${one}: the lower number comes first.`
          : `${key} declares more ${of} than a device has.`,
      acceptAt: acceptAtItem(item),
      beyondSchema: true,
      // Cables to its ports cannot be resolved.
      entails: [item],
      fixes: () => (last < first ? [write(`${last}-${first}`, setKey(item, keyPath, `${last}-${first}`))] : []),
    });
  }
}

/** Reports a frequency range that ends before it begins, and so passes nothing. */
function frequencyRange(item: Item, report: Report): void {
  for (const key of ['frequencies', 'passes']) {
    const text = dataAt(item.data, [key]);
    if (typeof text !== 'string' || hasShapeProblem(item, [key])) continue;
    const parts = /^([\d.]+)-([\d.]+) (\w+)$/.exec(text);
    if (parts === null) continue;
    const [, from = '', to = '', unit = ''] = parts;
    const better = `${to}-${from} ${unit}`;
    report({
      at: placeOf(item, [key]),
      message: `${key} is ${shown(text)}, which ends before it begins: the lower frequency comes first.`,
      acceptAt: acceptAtItem(item),
      beyondSchema: true,
      fixes: () => (Number(from) > Number(to) ? [write(better, setValue(item, [key], better))] : []),
    });
  }
}

/** The finding for more ports than are read of all devices together. */
function tooManyPorts(item: Item): Finding {
  return {
    at: placeOf(item, ['ports'], 'key'),
    message:
      `With the ports of ${asName(item.name)} the site has more than can be right, so they are left out. Look for a range ` +
      'that is too long, here or above.',
    acceptAt: acceptAtItem(item),
    beyondSchema: true,
  };
}

function unknownZone(item: Item, report: Report): void {
  const zone = item.data;
  if (typeof zone !== 'string' || hasShapeProblem(item, []) || isTimeZone(zone)) return;
  const near = nearest(zone, Intl.supportedValuesOf('timeZone')).map(({ name }) => name);
  const advice =
    near.length > 0 ? `Did you mean ${list(near, 'or')}?` : 'Write it as continent and city, such as Europe/London.';
  report({
    at: placeOf(item),
    message: `${visible(zone, 40)} is not a time zone of the IANA database. ${advice}`,
    acceptAt: acceptAtItem(item),
    beyondSchema: true,
    fixes: () => near.map((name) => write(name, setValue(item, [], name), near.length === 1)),
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.301}
#                                      ^^^^^^^^^^^^^^ address is 192.168.20.301, which is not an IPv4 address
`,
    good: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31/24}
#                                      ^^^^^^^^^^^^^^^^ address is 192.168.20.31/24
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
  },
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.020.031}
#                                      ^^^^^^^^^^^^^^^ address is 192.168.020.031: a number with a leading zero
`,
    fixed: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
`,
  },
  {
    bad: `
devices:
  paddock cam: {kind: camera}
# ^^^^^^^^^^^ paddock cam is not a name: letters, digits, - and _
`,
    fixed: `
devices:
  paddock-cam: {kind: camera}
`,
  },
  {
    bad: `
recordings:
  paddock-seen-from-the-gate-by-the-lane-with-the-old-oak-tree-and-the-pond: {stream: paddock, volume: archive}
# want 3-76 it is longer than 63 characters
`,
    good: `
recordings:
  paddock-from-the-gate: {stream: paddock, volume: archive}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, size: 2560 × 1440}}
#                                                           ^^^^^^^^^^^ size is 2560 × 1440, which is not width, x and height
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, size: 2560x1440}}
`,
  },
  {
    bad: `
site:
  timezone: Europe/Lodnon
#           ^^^^^^^^^^^^^ Europe/Lodnon is not a time zone of the IANA database. Did you mean Europe/London
`,
    fixed: `
site:
  timezone: Europe/London
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {8-1: {speed: 1 Gb/s}}}
#                              ^^^ 8-1 declares no port
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
`,
  },
];
