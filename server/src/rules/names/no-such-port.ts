import { fixOf, nameText, nodeAt, putValue, setValue } from '../../site/edit.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import { type Item, type Place, namePlace, isName, placeOf } from '../../site/item.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { type CableEnd, type Device, type Site, connectorNamed, endName } from '../../site/model.ts';
import { freePorts } from '../../site/free/switch-port.ts';
import { ownDevice } from '../../site/declared.ts';
import { nearest } from '../../text/nearest.ts';
import { partOf } from '../../site/places.ts';
import { compactPorts } from '../../site/port-list.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { isSound } from '../../site/half-read.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const noSuchPort: Rule = {
  id: 'no-such-port',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A device does not have the port that is named.',
  why: `The cable ends nowhere, and nothing that should cross it is counted. Ports are declared under \`ports\` of the
device, a range such as \`1-8\` for many; a device without \`ports\` has one, named eth.`,
  check({ site, network }: RuleContext, report: Report): void {
    const undeclared = new Map<Device, Named[]>();
    const fewer = new Map<Device, Named[]>();
    for (const { item, from, to, through } of site.cables) {
      for (const end of [from, to, ...through]) {
        const device = end?.port === undefined ? undefined : site.deviceByName.get(end.device);
        if (end?.port === undefined || device === undefined || isSocket(device, end.port)) continue;
        if (hasShapeProblem(item, end.keyPath) || !isSound(device.item) || !knowsConnectors(device)) continue;
        if (device.kind === 'switch' && device.item !== item && nodeAt(device.item, ['ports']) === undefined) {
          const known = undeclared.get(device);
          if (known === undefined) undeclared.set(device, [{ item, end, port: end.port }]);
          else known.push({ item, end, port: end.port });
          continue;
        }
        if (device.aerial !== undefined && (device.kind === 'lnb' || COUNTED.test(end.port))) {
          const known = fewer.get(device);
          if (known === undefined) fewer.set(device, [{ item, end, port: end.port }]);
          else known.push({ item, end, port: end.port });
          continue;
        }
        const port: MissingPort = { item, keyPath: end.keyPath, device, port: end.port, text: endName(end) };
        const word = (): Finding => {
          const finding = missing(site, port);
          const effects = isInReversedRange(device, port.port) ? [device.item] : [];
          return { ...finding, effects, ...consequencesOf(network.causes, [item], finding.related) };
        };
        report({ at: placeOfPort(port), word });
      }
    }
    for (const [device, named] of fewer) {
      const key = DECIDING_COUNT.find((one) => nodeAt(device.item, [one]) !== undefined);
      const all = new Set(named.map(({ port }) => port));
      for (const { item, end, port } of all.size > 1 && key !== undefined ? [] : named)
        report(missing(site, { item, keyPath: end.keyPath, device, port, text: endName(end) }));
      if (all.size > 1 && key !== undefined) report(tooFewOutputs(device, key, named));
    }
    for (const [device, named] of undeclared) report(withoutPorts(site, network, device, named));
    for (const device of site.devices)
      if (device.aerial !== undefined && knowsConnectors(device)) missingConnectors(device, report);
    const naming = [
      ...site.devices.filter(({ routes }) => routes.length > 0),
      ...site.streams.filter(({ egress }) => egress !== undefined),
    ];
    for (const { item } of naming) {
      for (const { names, text, keyPath } of item.names) {
        const device = names === 'own-port' ? ownDevice(site, item) : undefined;
        if (
          device === undefined ||
          device.portByName.has(text) ||
          hasShapeProblem(item, keyPath) ||
          !isSound(device.item)
        )
          continue;
        const port: MissingPort = { item, keyPath, device, port: text, text };
        report({ at: placeOfPort(port), word: () => missing(site, port) });
      }
    }
  },
};

/** An end of a cable that names a port. */
interface Named {
  readonly item: Item;
  readonly end: CableEnd;
  readonly port: string;
}

/** A finding for a switch without declared ports. */
function withoutPorts(site: Site, network: Network, { item, name }: Device, named: readonly Named[]): Finding {
  const all = [...new Set(named.map(({ port }) => port))];
  const ports = compactPorts(all);
  const followed = consequencesOf(
    network.causes,
    named.map((one) => one.item),
    named.map((one) => ({
      at: placeOf(one.item, one.end.keyPath),
      message: `${asName(name)} has no port ${visible(one.port, 40)}`,
    })),
  );
  const naming = new Set(named.map((one) => one.item));
  const cabled = site.cables
    .filter((cable) => naming.has(cable.item))
    .flatMap(({ from, to }) => [from, to].flatMap((end) => site.deviceByName.get(end?.device ?? '') ?? []));
  return {
    at: namePlace(item),
    showAfter: 'item',
    message:
      `${asName(name)} declares no ports, and cables name ${ports}. Declare what it has, such as ` +
      '`ports: {1-8: {speed: 1 Gb/s}}`.',
    acceptAt: [name],
    ...followed,
    entails: [...followed.entails, ...lossesAt(network, cabled).obstacles],
    fixes: () =>
      fixOf(
        `Declare the ports ${ports}`,
        ...putValue(item, 'ports', `{${all.map((port) => `${nameText(port)}: {}`).join(', ')}}`),
      ),
  };
}

/** The names of outputs that are counted, and the keys with their number. */
const COUNTED = /^(out|tap)-\d+$/;
const DECIDING_COUNT = ['ways', 'type'];

/** A finding for a part with too few outputs: their number is wrong, not each of the cables. */
function tooFewOutputs({ item, name, connectorByName }: Device, key: string, named: readonly Named[]): Finding {
  return {
    at: placeOf(item, [key]),
    message:
      `${asName(name)} has ${compactPorts([...connectorByName.keys()])}, and cables name ` +
      `${list([...new Set(named.map(({ port }) => visible(port, 40)))])} of it. Correct the ${key}, or the cables.`,
    acceptAt: [name, ...named.map(({ port }) => `${name}/${port}`)],
    related: named.map((one) => ({
      at: placeOf(one.item, one.end.keyPath),
      message: `${asName(name)} has no ${visible(one.port, 40)}`,
    })),
  };
}

/** Reports outputs that a part names in its own keys and does not have. */
function missingConnectors(device: Device, report: Report): void {
  const { item, name, aerial, connectorByName } = device;
  const named = { 'terminated': aerial?.terminated, 'power-pass': aerial?.powerPass };
  for (const [key, names] of Object.entries(named)) {
    for (const [index, connector] of (typeof names === 'object' ? names : []).entries()) {
      if (connectorByName.has(connector) || hasShapeProblem(item, [key, index])) continue;
      const near = nearest(connector, [...connectorByName.keys()]).map((one) => one.name);
      report({
        at: placeOf(item, [key, index]),
        message: `${asName(name)} has no connector ${visible(connector, 40)}; it has ${compactPorts([...connectorByName.keys()])}.`,
        acceptAt: [`${name}/${connector}`, name],
        // The intended output seems open.
        entails: key === 'terminated' ? [device] : [],
        fixes: () => near.flatMap((one) => fixOf(`Change to ${one}`, setValue(item, [key, index], one))),
      });
    }
  }
}

/** Whether the keys that decide the connectors of a device can be read. */
function knowsConnectors({ item, kind }: Device): boolean {
  return kind !== undefined && DECIDING.every((key) => !hasShapeProblem(item, [key]));
}

const DECIDING = ['kind', 'ways', 'type', 'inputs'];

/** Whether the port is in a range written backwards, which is reported there. */
function isInReversedRange({ item }: Device, port: string): boolean {
  const ports = nodeAt(item, ['ports']);
  if (ports?.kind !== 'mapping' || !/^[0-9]+$/.test(port)) return false;
  return ports.entries.some(({ key }) => {
    const [, last, first] = /^([0-9]{1,6})-([0-9]{1,6})$/.exec(key.source) ?? [];
    return first !== undefined && Number(first) <= Number(port) && Number(port) <= Number(last);
  });
}

/** Whether the device has a port or connector of that name. */
function isSocket(device: Device, name: string): boolean {
  return device.portByName.has(name) || connectorNamed(device, name) !== undefined;
}

/** A port that is named where its device has none of that name. */
interface MissingPort {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly device: Device;
  readonly port: string;
  /** The text at the route: the port alone, or behind its device. */
  readonly text: string;
}

function placeOfPort({ item, keyPath, port, text }: MissingPort): Place {
  return text === port ? placeOf(item, keyPath) : partOf(item, keyPath, text.length - port.length, text.length);
}

function missing(site: Site, missing: MissingPort): Finding {
  const { item, device, port, text } = missing;
  const isOwn = text === port;
  const at = placeOfPort(missing);
  const has = [...device.ports.map(({ name }) => name), ...(isOwn ? [] : device.connectorByName.keys())];
  // One number is as near as any other.
  const near = /^\d+$/.test(port) ? [] : nearest(port, has.filter(isName)).map(({ name }) => name);
  const advice = near.length > 0 ? ` Did you mean ${list(near, 'or')}?` : '';
  return {
    at,
    message:
      `${asName(device.name)} has no port ${visible(port, 40)}; it has ` +
      `${has.length === 0 ? 'none' : compactPorts(has)}.${advice}`,
    acceptAt: [`${device.name}/${port}`, device.name, ...acceptAtItem(item)],
    related: [{ at: placeOf(device.item, [partsKey(device)], 'key'), message: `the ports of ${asName(device.name)}` }],
    fixes: () => {
      const spare = isOwn ? [] : freePorts(site, device).map(({ name }) => name);
      const free = near.length > 0 ? undefined : spare.find(isName);
      const titled = free === undefined ? [] : fixOf(`Use ${free}, the first free port`, { at, text: free });
      return [
        ...near
          .filter((name) => isOwn || spare.includes(name))
          .map((name) => ({ title: `Change to ${asName(name)}`, safe: false, edits: [{ at, text: name }] })),
        ...titled,
      ];
    },
  };
}

function partsKey({ ports, connectorByName }: Device): string {
  return ports.length === 0 && connectorByName.size > 0 ? 'inputs' : 'ports';
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {}, uplink: {}}}
  barn: {kind: switch, ports: {1-8: {}}}
cables:
  - {from: core/uplnk, to: barn/9}
#               ^^^^^ core has no port uplnk; it has 1-8 and uplink. Did you mean uplink?
# want 33-34 barn has no port 9; it has 1-8.
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {}, uplink: {}}}
  barn: {kind: switch, ports: {1-8: {}}}
cables:
  - {from: core/uplink, to: barn/8}
`,
  },
  {
    bad: `
devices:
  recorder: {kind: server, ports: {lan: {}, cams: {}}, routes: [{to: 224.0.0.0/4, port: cam}]}
#                                                                                       ^^^ recorder has no port cam; it has lan and cams. Did you mean cams?
`,
    fixed: `
devices:
  recorder: {kind: server, ports: {lan: {}, cams: {}}, routes: [{to: 224.0.0.0/4, port: cams}]}
`,
  },
  {
    // One figure is wrong, not each of the cables.
    bad: `
devices:
  loft-splitter: {kind: splitter, ways: 2, loss: 4 dB}
#                                       ^ loft-splitter has ‘in’, out-1 and out-2, and cables name out-3 and out-4 of it
  parlour-outlet: {kind: outlet, loss: 1 dB}
  kitchen-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: loft-splitter/out-3, to: parlour-outlet/in, type: coax-6, length: 14 m}
  - {from: loft-splitter/out-4, to: kitchen-outlet/in, type: coax-6, length: 17 m}
`,
    good: `
devices:
  loft-splitter: {kind: splitter, ways: 4, loss: 7 dB, terminated: [out-1, out-2]}
  parlour-outlet: {kind: outlet, loss: 1 dB}
  kitchen-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: loft-splitter/out-3, to: parlour-outlet/in, type: coax-6, length: 14 m}
  - {from: loft-splitter/out-4, to: kitchen-outlet/in, type: coax-6, length: 17 m}
`,
  },
];
