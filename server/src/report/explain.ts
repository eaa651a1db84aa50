/**
 * Finds the explanation of a figure of the report by its path, such as `links core/16 forward peak`.
 *
 * Long as it is the list of all sections of the report; each explanation has a file in `explain/`.
 */

import { closest } from 'fastest-levenshtein';
import { uplinksOf } from '../network/uplinks.ts';
import { type Link, cablesOf, oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { connectorName, portName } from '../site/model.ts';
import { parseAddress } from '../standards/ipv4.ts';
import { type QuantityKind, USUAL_UNIT, isQuantity, readQuantity } from '../text/quantity.ts';
import { list } from '../text/words.ts';
import { addressExplained } from './explain/address.ts';
import { airExplained } from './explain/air.ts';
import { deviceExplained } from './explain/device.ts';
import { type Explanation, RATES, onlyColumn } from './explain/explanation.ts';
import { macExplained } from './explain/group.ts';
import { capacityExplained, directionExplained, shareExplained } from './explain/link.ts';
import { drawExplained } from './explain/power.ts';
import { quantityExplained } from './explain/quantity.ts';
import {
  WIRE_WORDS,
  type WireKind,
  receiversExplained,
  replyExplained,
  streamRatesExplained,
  wireExplained,
} from './explain/stream.ts';
import { supplyExplained, totalExplained } from './explain/supply.ts';
import { trafficExplained } from './explain/traffic.ts';
import { connectorExplained, levelExplained, multiplexExplained, serviceExplained } from './explain/television.ts';
import { uplinkExplained } from './explain/uplink.ts';
import { rackExplained } from './explain/rack.ts';
import { occasionExplained } from './explain/tuners.ts';
import { vlanExplained } from './explain/vlan.ts';
import { daysExplained, recordingExplained, usableExplained, perDayExplained } from './explain/volume.ts';

/** The paths, for a usage text. */
export const FIGURE_PATHS: readonly string[] = [
  'links DEVICE/PORT [forward|backward] [line|frame|frameWithFcs|payload] [nominal|peak]',
  'links DEVICE/PORT forward|backward streams STREAM [line|frame|frameWithFcs|payload] [nominal|peak]',
  'links DEVICE/PORT capacity',
  'streams STREAM [line|frame|frameWithFcs|payload] [tagged|reply] [nominal|peak]',
  'streams STREAM mac|reaches|unreached',
  'traffic TRAFFIC',
  'uplinks DEVICE',
  'volumes VOLUME [usableBytes|bytesPerDay|daysUntilFull]',
  'volumes VOLUME recordings RECORDING',
  'racks RACK',
  'poe DEVICE [draw|budget]',
  'power [DEVICE]',
  'air DEVICE',
  'rf DEVICE/CONNECTOR [MULTIPLEX]',
  'multiplexes MULTIPLEX',
  'services SERVICE',
  'occasions OCCASION',
  'vlans VLAN',
  'devices DEVICE',
  'addresses ADDRESS',
  'quantity NUMBER UNIT',
];

export type Explained = { readonly explanations: readonly Explanation[] } | { readonly problem: string };

/** The explanations for a path, or what is wrong with it. `path` has its words. */
export function explain(plan: Plan, path: readonly string[]): Explained {
  const [kind = '', ...rest] = path;
  const section = Object.hasOwn(SECTIONS, kind) ? SECTIONS[kind] : undefined;
  try {
    if (section === undefined) throw unknown('kind of figure', kind, Object.keys(SECTIONS));
    return { explanations: section(plan, rest) };
  } catch (error) {
    if (error instanceof NotThere) return { problem: error.message };
    throw error;
  }
}

class NotThere extends Error {}

function unknown(what: string, word: string, known: readonly string[]): NotThere {
  if (known.length === 0) return new NotThere(`The site has no ${what}.`);
  if (word === '')
    return new NotThere(`Say which ${what}: ${list(known.slice(0, 20), 'or')}${known.length > 20 ? ' …' : ''}.`);
  return new NotThere(`There is no ${what} ${word}. The nearest is ${closest(word, [...known])}.`);
}

const SECTIONS: Readonly<Record<string, (plan: Plan, words: readonly string[]) => readonly Explanation[]>> = {
  links: linkFigures,
  streams: streamFigures,
  traffic: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return [trafficExplained(named('traffic', name, plan.network.traffic, ({ traffic }) => traffic.name))];
  },
  uplinks: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    const all = uplinksOf(plan.site.devices, plan.network);
    return uplinkExplained(
      plan,
      named('line to the Internet', name, all, ({ device }) => device.name),
    );
  },
  volumes: volumeFigures,
  recordings: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return [
      recordingExplained(
        plan,
        named('recording', name, plan.storage.recordings, ({ recording }) => recording.name),
      ),
    ];
  },
  racks: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return [rackExplained(named('rack', name, plan.racks, ({ rack }) => rack.name))];
  },
  poe: (plan, [name = '', ...rest]) => {
    oneOf('figure', rest, ['draw', 'budget']);
    return [drawExplained(named('device that feeds others', name, plan.poe, ({ device }) => device.name))];
  },
  power: (plan, [name, ...rest]) => {
    expectEnd(rest);
    if (name === undefined) return [totalExplained(plan)];
    const device = named('device', name, plan.site.devices, (one) => one.name);
    const found = supplyExplained(plan, device);
    if (found.length === 0) throw new NotThere(`The site declares nothing of the power of ${name}.`);
    return found;
  },
  air: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return [airExplained(named('access point that groups come to', name, plan.air, ({ device }) => device.name))];
  },
  rf: (plan, [name = '', multiplex, ...rest]) => {
    expectEnd(rest);
    const connectors = plan.site.devices.flatMap(({ connectorByName }) => [...connectorByName.values()]);
    const connector = named('connector', name, connectors, connectorName);
    if (multiplex === undefined) return [connectorExplained(plan, connector)];
    const points = plan.television.reception.pointsAt(connector);
    return [levelExplained(named(`multiplex at ${name}`, multiplex, points, ({ signal }) => signal.multiplex.name))];
  },
  multiplexes: thingFigures('multiplex', ({ multiplexes }) => multiplexes, multiplexExplained),
  services: thingFigures('service', ({ services }) => services, serviceExplained),
  occasions: thingFigures('occasion', ({ occasions }) => occasions, occasionExplained),
  vlans: thingFigures('VLAN', ({ vlans }) => vlans, vlanExplained),
  devices: (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return deviceExplained(
      plan,
      named('device', name, plan.site.devices, (device) => device.name),
    );
  },
  addresses: addressFigures,
  groups: addressFigures,
  quantity: (_plan, words) => {
    const text = words.join(' ');
    const kinds = Object.keys(USUAL_UNIT) as QuantityKind[];
    for (const kind of kinds) {
      const read = readQuantity(text, kind);
      if (isQuantity(read)) return [quantityExplained(text, read)];
    }
    throw new NotThere(
      `${text === '' ? 'Nothing' : text} is no quantity: write a number, a space and a unit, such as 6 Mb/s.`,
    );
  },
};

/** The figures of named things that have one explanation each. */
function thingFigures<T extends { readonly name: string }>(
  what: string,
  allOf: (site: Plan['site']) => readonly T[],
  explained: (plan: Plan, one: T) => Explanation,
): (plan: Plan, words: readonly string[]) => readonly Explanation[] {
  return (plan, [name = '', ...rest]) => {
    expectEnd(rest);
    return [
      explained(
        plan,
        named(what, name, allOf(plan.site), (one) => one.name),
      ),
    ];
  };
}

function addressFigures(plan: Plan, [text = '', ...rest]: readonly string[]): readonly Explanation[] {
  expectEnd(rest);
  const address = parseAddress(text);
  if (address === undefined) throw new NotThere(`${text === '' ? 'Nothing' : text} is no IPv4 address.`);
  return [addressExplained(plan, address)];
}

const WIRES = Object.keys(WIRE_WORDS) as WireKind[];

function linkFigures(plan: Plan, [end = '', ...rest]: readonly string[]): readonly Explanation[] {
  const link = linkAt(plan, end);
  const [word, ...more] = rest;
  if (word === undefined) return [link.a, link.b].map((out) => directionExplained(plan, link, out));
  if (word === 'capacity') {
    expectEnd(more);
    return [capacityExplained(link)];
  }
  if (word !== 'forward' && word !== 'backward')
    throw unknown('figure of a link', word, ['forward', 'backward', 'capacity']);
  const out = word === 'forward' ? link.a : link.b;
  if (more[0] !== 'streams') {
    const { kind = 'line', column } = rateWords(more);
    return [inColumn(directionExplained(plan, link, out, kind), column)];
  }
  const [, name = '', ...last] = more;
  const { kind = 'line', column } = rateWords(last);
  const share = shareExplained(plan, link, out, name, kind);
  if (share === undefined) {
    const streams = plan.network.copies(link, out).map(({ stream }) => stream.name);
    throw unknown(`stream from ${portName(out)} to ${portName(oppositePort(link, out))}`, name, streams);
  }
  return [inColumn(share, column)];
}

/** The link of a port at either end, or of a device with a single cable. */
function linkAt(plan: Plan, end: string): Link {
  const { links } = plan.network.topology;
  const found = links.find((link) => cablesOf(link).some(({ a, b }) => portName(a) === end || portName(b) === end));
  if (found !== undefined) return found;
  const [only, ...others] = links.filter(({ a, b }) => a.device.name === end || b.device.name === end);
  if (only !== undefined && others.length === 0) return only;
  const [first] = links;
  if (first === undefined) throw new NotThere('The site has no links.');
  if (end === '') throw new NotThere(`Say which link, by a port at either end, such as ${portName(first.a)}.`);
  throw unknown(
    'link at',
    end,
    links.flatMap(({ a, b }) => [portName(a), portName(b)]),
  );
}

function streamFigures(plan: Plan, [name = '', ...rest]: readonly string[]): readonly Explanation[] {
  const stream = named('stream', name, plan.site.streams, (each) => each.name);
  const [word, ...more] = rest;
  if (word === undefined) return [streamRatesExplained(plan, stream), receiversExplained(plan, stream)];
  if (word === 'reaches' || word === 'unreached') {
    expectEnd(more);
    return [receiversExplained(plan, stream)];
  }
  if (word === 'mac' || word === 'group') {
    expectEnd(more);
    if (stream.group === undefined) throw new NotThere(`${name} has no group: it is unicast.`);
    return word === 'mac' ? [macExplained(stream, stream.group)] : [addressExplained(plan, stream.group)];
  }
  const tagged = rest.includes('tagged');
  const reply = rest.includes('reply');
  const { kind, column } = rateWords(
    rest.filter((each) => each !== 'tagged' && each !== 'reply'),
    ['mac', 'group', 'reaches', 'unreached', 'tagged', 'reply'],
  );
  if (reply)
    return [
      inColumn(replyExplained(plan, stream, kind === undefined || kind === 'payload' ? 'line' : kind, tagged), column),
    ];
  return [inColumn(wireExplained(plan, stream, kind ?? 'line', tagged), column)];
}

function volumeFigures(plan: Plan, [name = '', ...rest]: readonly string[]): readonly Explanation[] {
  const figures = named('volume', name, plan.storage.volumes, ({ volume }) => volume.name);
  const [word, ...more] = rest;
  if (word === 'recordings') {
    const [recording = '', ...last] = more;
    oneOf('figure', last, ['bytesPerDay', 'bytesKept']);
    return [
      recordingExplained(
        plan,
        named('recording', recording, figures.recordings, ({ recording: each }) => each.name),
      ),
    ];
  }
  expectEnd(more);
  switch (word) {
    case undefined:
    case 'daysUntilFull':
      return [daysExplained(plan, figures)];
    case 'usableBytes':
      return [usableExplained(figures)];
    case 'bytesPerDay':
      return [perDayExplained(figures)];
    default:
      throw unknown('figure of a volume', word, ['usableBytes', 'bytesPerDay', 'daysUntilFull', 'recordings']);
  }
}

function named<T>(what: string, name: string, all: readonly T[], nameOf: (each: T) => string): T {
  const found = all.find((each) => nameOf(each) === name);
  if (found === undefined) throw unknown(what, name, all.map(nameOf));
  return found;
}

/** `line peak`: both, one or none, in any order. */
function rateWords(
  words: readonly string[],
  others: readonly string[] = [],
): { kind: WireKind | undefined; column: string | undefined } {
  let kind: WireKind | undefined;
  let column: string | undefined;
  for (const word of words) {
    const wire = WIRES.find((each) => each === word);
    if (wire !== undefined && kind === undefined) kind = wire;
    else if (RATES.includes(word) && column === undefined) column = word;
    else throw unknown('rate', word, [...WIRES, ...RATES, ...others]);
  }
  return { kind, column };
}

function inColumn(explanation: Explanation, column: string | undefined): Explanation {
  return column === undefined ? explanation : onlyColumn(explanation, column);
}

function oneOf(what: string, words: readonly string[], known: readonly string[]): void {
  const [word, ...more] = words;
  if (word !== undefined && !known.includes(word)) throw unknown(what, word, known);
  expectEnd(more);
}

function expectEnd(words: readonly string[]): void {
  if (words.length > 0) throw new NotThere(`Nothing follows there; ${words.join(' ')} is too much.`);
}
