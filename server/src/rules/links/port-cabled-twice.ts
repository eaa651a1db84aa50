import { type Fix, fixOf, remove, removeItem, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import {
  type Cable,
  type CableEnd,
  type Connector,
  type Device,
  type Port,
  type Site,
  connectorAt,
  endName,
  portAt,
} from '../../site/model.ts';
import { nextFreeSwitchPort } from '../../site/free/switch-port.ts';
import type { Network } from '../../network/network.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

/** A port or connector, for a network cable or a coax. */
type Socket = Port | Connector;

interface Plug {
  readonly cable: Cable;
  readonly end: CableEnd;
}

export const portCabledTwice: Rule = {
  id: 'port-cabled-twice',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two cables share a port, or a position of a patch panel.',
  why: `A port takes one plug, and a position of a patch panel one cable. Until this is put right only the first cable is
counted. Write each cable once; give the second a port of its own.`,
  check({ site, network }: RuleContext, report: Report): void {
    const plugs = new Map<Socket, Plug>();
    const positions = new Map<Port, Plug>();
    for (const cable of site.cables) {
      // A coax in a network port is reported by cable-not-for-ends, and does not occupy the port.
      const isFit = portAt(site, cable.from) === undefined || connectorAt(site, cable.to) === undefined;
      const isFitBack = portAt(site, cable.to) === undefined || connectorAt(site, cable.from) === undefined;
      for (const end of isFit && isFitBack ? [cable.from, cable.to] : []) {
        const port = portAt(site, end) ?? connectorAt(site, end);
        if (port === undefined || end === undefined || port.device.kind === 'patch-panel') continue;
        const first = plugs.get(port);
        if (first === undefined) plugs.set(port, { cable, end });
        // A cable with both ends at one port is reported by cable-to-itself.
        else if (first.cable !== cable) {
          const bare = uncabledLike(site, network, port);
          const finding = twice(site, port, [first, { cable, end }], `to ${shownOtherEnd(first)}`, bare);
          const followed = consequencesOf(network.causes, [cable.item], finding.related);
          const missed = bare === undefined ? [] : missedBy(network, bare);
          // The output that the second cable belongs at is open.
          report({ ...finding, ...followed, entails: [...followed.entails, cable, port.device, ...missed] });
        }
        if (!('speed' in port)) terminatedToo(port, { cable, end }, report);
      }
      for (const end of cable.through) {
        const port = portAt(site, end);
        if (port === undefined) continue;
        const first = positions.get(port);
        if (first === undefined) positions.set(port, { cable, end });
        else report(twice(site, port, [first, { cable, end }], first.cable.name));
      }
    }
  },
};

/** Reports a connector with both a cable and a terminator. */
function terminatedToo({ device, name }: Connector, { cable, end }: Plug, report: Report): void {
  const index = device.aerial?.terminated.indexOf(name) ?? -1;
  if (index < 0) return;
  const at = `${device.name}/${name}`;
  report({
    at: placeOf(cable.item, end.keyPath),
    message: `${at} takes one plug, and has a terminator already. Remove the terminator or this coax.`,
    acceptAt: [at, device.name],
    related: [{ at: placeOf(device.item, ['terminated', index]), message: 'its terminator' }],
    fixes: () =>
      fixOf(
        `Say that ${at} has no terminator`,
        remove(device.item, device.aerial?.terminated.length === 1 ? ['terminated'] : ['terminated', index]),
      ),
  });
}

function otherEnd({ cable, end }: Plug): CableEnd | undefined {
  return end === cable.from ? cable.to : cable.from;
}

function shownOtherEnd(plug: Plug): string {
  const other = otherEnd(plug);
  return other === undefined ? 'nothing yet' : endName(other);
}

/** The only device of the kind with one port and no cable, which one of the two cables may be meant for. */
function uncabledLike(site: Site, { topology }: Network, socket: Socket): Device | undefined {
  const { device } = socket;
  if (!('speed' in socket) || device.ports.length !== 1 || device.bridging) return undefined;
  const [only, another] = site.devices.filter(
    ({ kind, ports: [port, second] }) =>
      kind === device.kind && port !== undefined && second === undefined && topology.linkAt(port) === undefined,
  );
  return another === undefined ? only : undefined;
}

/** Deliveries from and to the device that fail as it has no cable. */
function missedBy({ deliveries }: Network, device: Device): object[] {
  return deliveries.flatMap(({ source, unreached }) =>
    unreached.flatMap(({ receiver, why }) => (source === device || receiver === device.name ? [why] : [])),
  );
}

function twice(site: Site, port: Socket, [first, second]: readonly [Plug, Plug], what: string, bare?: Device): Finding {
  return {
    at: placeOf(second.cable.item, second.end.keyPath),
    message:
      bare === undefined
        ? `${nameOf(port)} already has a cable, ${what}. Give this one its own port, or remove it.`
        : `${nameOf(port)} already has a cable, ${what}, and ${asName(bare.name)} has none. Let one of them lead to ${asName(bare.name)}.`,
    acceptAt: [nameOf(port), port.device.name],
    related: [{ at: placeOf(first.cable.item, first.end.keyPath), message: `the first cable at ${nameOf(port)}` }],
    fixes: () => {
      const fixes: Fix[] = [];
      if (bare !== undefined) fixes.push(ledTo(second, bare), ledTo(first, bare));
      const free = 'speed' in port ? nextFreeSwitchPort(site, port) : nextFreeOutput(site, port);
      if (free !== undefined && !isSameCable(first.cable, second.cable)) {
        const edits = [setValue(second.cable.item, second.end.keyPath, scalarText(nameOf(free), true))];
        fixes.push({ title: `Use ${nameOf(free)}, the next free one like it`, safe: false, edits });
      }
      // Where the first cable leads nowhere, the port may need the second.
      const mayBeNeeded = second.cable === first.cable || portAt(site, otherEnd(first)) === undefined;
      const edit = mayBeNeeded ? undefined : removeItem(second.cable.item);
      if (edit !== undefined) fixes.push({ title: 'Remove this cable', safe: false, edits: [edit] });
      return fixes;
    },
  };
}

function ledTo(plug: Plug, { name }: Device): Fix {
  const edits = [setValue(plug.cable.item, plug.end.keyPath, scalarText(name, true))];
  return { title: `Lead the cable from ${shownOtherEnd(plug)} to ${asName(name)}`, safe: false, edits };
}

/** The next output of the same device without a coax or a terminator. */
function nextFreeOutput({ cables, deviceByName }: Site, { device, name }: Connector): Connector | undefined {
  const taken = new Set(cables.flatMap(({ from, to }) => [from, to].map((end) => connectorAt({ deviceByName }, end))));
  const sort = name.replace(/\d+$/, '');
  return [...device.connectorByName.values()].find(
    (one) =>
      one.name.replace(/\d+$/, '') === sort && !taken.has(one) && device.aerial?.terminated.includes(one.name) !== true,
  );
}

function nameOf({ device, name }: Socket): string {
  return `${device.name}/${name}`;
}

function isSameCable(a: Cable, b: Cable): boolean {
  const ends = ({ from, to }: Cable): string =>
    [from, to]
      .map((end) => (end === undefined ? '' : endName(end)))
      .sort()
      .join();
  return ends(a) === ends(b);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  stable-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/1, to: stable-cam}
#          ^^^^^^ core/1 already has a cable, to paddock-cam
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  stable-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stable-cam}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  panel-a: {kind: patch-panel, ports: {1-24: {}}}
  paddock-cam: {kind: camera}
  stable-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, through: [panel-a/1]}
  - {from: core/2, to: stable-cam, through: [panel-a/1]}
#                                            ^^^^^^^^^ panel-a/1 already has a cable, core/1 – paddock-cam
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  stable-cam: {kind: camera}
cables:
  - {from: core/1, to: stable-cam}
  - {from: core/2, to: stable-cam}
#                      ^^^^^^^^^^ stable-cam/eth already has a cable, to core/1, and paddock-cam has none. Let one of them lead to paddock-cam
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
  stable-cam: {kind: camera}
cables:
  - {from: core/1, to: stable-cam}
  - {from: core/2, to: paddock-cam}
`,
  },
  {
    bad: `
devices:
  loft-splitter: {kind: splitter, ways: 2, loss: 4 dB, terminated: [out-2]}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: loft-splitter/out-2, to: parlour-outlet/in, type: coax-6, length: 14 m}
#          ^^^^^^^^^^^^^^^^^^^ loft-splitter/out-2 takes one plug, and has a terminator already
`,
    fixed: `
devices:
  loft-splitter: {kind: splitter, ways: 2, loss: 4 dB}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: loft-splitter/out-2, to: parlour-outlet/in, type: coax-6, length: 14 m}
`,
  },
];
