import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, portName } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import { freePorts } from '../../site/free/switch-port.ts';
import { compactPorts } from '../../site/port-list.ts';
import { isSound } from '../../site/half-read.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const portNotNamed: Rule = {
  id: 'port-not-named',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A cable names a device with several ports, but not the port.',
  why: `Which port it is decides the VLAN, the speed and the power, so nothing is counted over the cable until that is
said. Write \`device/port\`. The fix takes the first port that no cable has.`,
  check({ site, network }: RuleContext, report: Report): void {
    for (const { item, from, to, through } of site.cables) {
      for (const end of [from, to, ...through]) {
        const device = end === undefined || end.port !== undefined ? undefined : site.deviceByName.get(end.device);
        if (end === undefined || device === undefined || device.ports.length === 1) continue;
        if (isNamedAlone(device, through.includes(end))) continue;
        if (hasShapeProblem(item, end.keyPath) || !isSound(device.item)) continue;
        const sockets = device.ports.length === 0 ? [...device.connectorByName.keys()] : [];
        const length = device.ports.length + sockets.length;
        const free = device.ports.length === 0 ? undefined : freePorts(site, device)[0];
        const names = compactPorts([...device.ports.map(({ name }) => name), ...sockets]);
        const which =
          free === undefined
            ? sockets.length > 0
              ? list(
                  sockets.map((name) => `${device.name}/${name}`),
                  'or',
                )
              : 'none is free'
            : portName(free);
        report({
          at: placeOf(item, end.keyPath),
          message:
            length === 0
              ? `${asName(device.name)} declares no ports. Declare them, and name one here.`
              : `${asName(device.name)} has ${length} ${sockets.length > 0 ? 'connectors' : 'ports'}, ${names}. Name one: ${which}.`,
          acceptAt: [device.name],
          ...consequencesOf(network.causes, [item]),
          fixes: () =>
            free === undefined
              ? []
              : fixOf(
                  `Use ${portName(free)}, the first free port`,
                  setValue(item, end.keyPath, scalarText(portName(free), true)),
                ),
        });
      }
    }
  },
};

/** A part of an aerial system with one connector, or one that a coax is led through. */
function isNamedAlone({ ports, connectorByName, aerial }: Device, isThrough: boolean): boolean {
  return ports.length === 0 && (connectorByName.size === 1 || (isThrough && aerial !== undefined));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {}}}
  stable-cam: {kind: camera}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: stable-cam}
  - {from: core, to: paddock-cam}
#          ^^^^ core has 8 ports, 1-8. Name one: core/2.
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {}}}
  stable-cam: {kind: camera}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: stable-cam}
  - {from: core/2, to: paddock-cam}
`,
  },
];
