import { oppositePort } from '../../network/link.ts';
import { carriesPower, powerClassOf } from '../../network/poe.ts';
import { type PortType, portTypes } from '../../standards/poe.ts';
import { type Fix, addEntry, fixOf } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import { ofOnePort } from '../../site/port-vlans.ts';
import { toFeedingPort } from '../../site/free/feeding-port.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfPort } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const poeMissing: Rule = {
  id: 'poe-missing',
  severity: 'error',
  summary: 'A device is to be powered over its cable, but the port at the far end feeds no power.',
  why: `The device stays dark. Cable it to a port with \`poe\`, say what its port feeds, or accept it with a reason
where the device has a supply of its own or a listed injector in between. Work on mains wiring is for licensed people.`,
  source: 'IEEE 802.3 clause 33: power comes from power sourcing equipment only',
  check({ site, network: { topology } }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      const takes = device.ports.filter((port) => powerClassOf(port) !== undefined);
      const [first] = takes;
      if (first === undefined || device.ports.length < 2 || device.ownPower !== undefined) continue;
      const cabled = device.ports.find((port) => topology.linkAt(port) !== undefined);
      if (cabled === undefined || takes.some((port) => topology.linkAt(port) !== undefined)) continue;
      report({
        at: placeOf(device.item, [...first.keyPath, 'poe'], 'key'),
        severity: 'warning',
        message:
          `${asName(device.name)} is to be fed at ${portName(first)}, and its cable is at ${portName(cabled)}: it stays ` +
          `dark. Lead the cable to ${portName(first)}, or say under \`power\` what else feeds it.`,
        acceptAt: acceptAtPorts(first, cabled),
        // A consequence of a wrong port, where other things do not match either.
        effects: [cabled],
        related: [{ at: placeOfPort(cabled), message: `${portName(cabled)} takes no power` }],
      });
    }
    for (const link of topology.links) {
      if (!carriesPower(link.cable.type)) continue;
      for (const powered of [link.a, link.b]) {
        const from = oppositePort(link, powered);
        const own = powerClassOf(powered);
        if (own === undefined || from.pse !== undefined) continue;
        report({
          at: placeOf(powered.device.item, [...powered.keyPath, 'poe'], 'key'),
          message:
            `${asName(powered.device.name)} stays dark: ${portName(from)} feeds no power. Cable it to a port with \`poe\`, ` +
            'or accept it where it has a supply of its own.',
          acceptAt: acceptAtPorts(powered, from),
          // A consequence of a device at the wrong port, which is reported.
          effects: [powered],
          // It does not run without mains either.
          entails: [powered],
          related: [{ at: placeOfPort(from), message: `${portName(from)} has no \`poe\`` }],
          fixes: () => [...toFeedingPort(site, link, from, own.class), ...declared(from, own.class)],
        });
      }
    }
  },
};

/** Declares that this port alone feeds the class. */
function declared(port: Port, wantedClass: number): Fix[] {
  const types = Object.keys(portTypes) as PortType[];
  const type = types.find((candidate) => portTypes[candidate].maxClass >= wantedClass);
  if (port.device.kind !== 'switch' || port.keyPath.length === 0 || type === undefined) return [];
  const edit = addEntry(port.device.item, port.keyPath, 'poe', type);
  const own = edit === undefined ? undefined : ofOnePort(port, [edit]);
  return own === undefined ? [] : fixOf(`Say that ${portName(port)} feeds ${type}`, ...own);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}, 5-8: {speed: 1 Gb/s, poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
#                             ^^^ paddock-cam stays dark: core/1 feeds no power
cables:
  - {from: core/1, to: paddock-cam}
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}, 5-8: {speed: 1 Gb/s, poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/5, to: paddock-cam}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, poe-budget: 60 W, ports: {1: {poe: at}}}
  yard: {kind: switch, ports: {up: {poe: {class: 4}}, 1-4: {speed: 1 Gb/s}}}
#                                   ^^^ yard is to be fed at yard/up, and its cable is at yard/1: it stays dark
cables:
  - {from: core/1, to: yard/1, type: cat6, length: 38 m}
`,
    good: `
devices:
  core: {kind: switch, poe-budget: 60 W, ports: {1: {poe: at}}}
  yard: {kind: switch, ports: {up: {poe: {class: 4}}, 1-4: {speed: 1 Gb/s}}}
cables:
  - {from: core/1, to: yard/up, type: cat6, length: 38 m}
`,
  },
];
