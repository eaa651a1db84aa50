import { oppositePort } from '../../network/link.ts';
import { hasVlans } from '../../network/vlan-membership.ts';
import { isTransparent } from '../../network/transparent-segments.ts';
import { contains } from '../../standards/ipv4.ts';
import { type Port, type Site, portName } from '../../site/model.ts';
import { type PortVlans, setVlans, vlansOf } from '../../site/port-vlans.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Fix, fixOf } from '../../site/edit.ts';
import { asName } from '../../text/words.ts';

export const portWithoutVlan: Rule = {
  id: 'port-without-vlan',
  severity: 'warning',
  summary: 'A cabled port has no VLAN, on a switch whose other ports have one.',
  why: `Once a switch has VLANs, a port in none of them passes nothing. Give the port \`vlan\` for a host, or \`trunk\`
towards another switch. (A switch without VLANs on any port passes everything on as it comes.)`,
  source: 'IEEE 802.1Q: every frame belongs to a VLAN (from memory)',
  check({ site, network }: RuleContext, report: Report): void {
    const gateways = new Set(site.vlans.map(({ gateway }) => gateway));
    for (const link of network.topology.links) {
      for (const port of [link.a, link.b]) {
        if (!port.forwards || isTransparent(port) || hasVlans(port)) continue;
        const other = oppositePort(link, port);
        report({
          at: placeOfEnd(link, port),
          message:
            `${portName(port)} is in no VLAN, though other ports of ${asName(port.device.name)} are: nothing passes between ` +
            `it and ${asName(other.device.name)}. Give the port \`vlan\` or \`trunk\`.`,
          acceptAt: acceptAtPorts(port, other),
          ...consequencesOf(network.causes, [link]),
          // A consequence of a gateway switch that does not route, which is reported.
          effects: gateways.has(port.device.name) && !port.device.routing ? [port.device] : [],
          fixes: () => fixesOf(site, port, other),
        });
      }
    }
  },
};

/** The VLANs of the port at the other end, or the VLAN of its address. */
function fixesOf(site: Site, port: Port, other: Port): Fix[] {
  const vlan = site.vlans.find(
    ({ subnet }) => subnet !== undefined && other.addresses.some(({ address }) => contains(subnet, address)),
  );
  const wanted: PortVlans | undefined = hasVlans(other)
    ? vlansOf(other)
    : vlan === undefined
      ? undefined
      : { vlan: vlan.name };
  const edits = wanted === undefined ? undefined : setVlans(port, wanted);
  if (wanted === undefined || edits === undefined) return [];
  const what =
    wanted.trunk === undefined ? `into ${wanted.vlan ?? wanted.native ?? ''}` : `in a trunk like ${portName(other)}`;
  return fixOf(`Put ${portName(port)} ${what}`, ...edits);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/2, to: paddock-cam}
#          ^^^^^^ core/2 is in no VLAN, though other ports of core are
`,
    fixed: `
vlans: {video: {id: 20, subnet: 192.168.20.0/24}}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/2, to: paddock-cam}
`,
  },
];
