import { portName } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { AddressUse } from '../../network/address-uses.ts';
import type { Causes } from '../../network/causes.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Finding, Related, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const vlanMerged: Rule = {
  id: 'vlan-merged',
  severity: 'error',
  summary: 'A switch without VLANs joins two VLANs to one.',
  why: `A switch without VLANs of its own passes everything on as it comes, so what one VLAN sends without a tag goes
straight into the other: broadcasts, floods and all multicast. Cable it to one of the VLANs only, or use a switch that
knows VLANs, with a trunk.`,
  source: 'IEEE 802.1Q and 802.1D (from memory)',
  check({ network: { topology, addressUses, causes } }: RuleContext, report: Report): void {
    for (const { devices, edges, hosts } of new Set(topology.segments.values())) {
      // Converters only lengthen a cable: where its ends differ, vlan-mismatch reports.
      if (edges.length === 2 && hosts.length === 0 && devices.every(({ kind }) => kind === 'media-converter')) continue;
      const untagged = edges.flatMap((edge) => {
        const { untagged: domain } = topology.vlanMembershipOf(edge.port);
        return domain === undefined ? [] : [{ ...edge, domain }];
      });
      const [first] = untagged;
      for (const { link, port, domain } of untagged) {
        if (first === undefined || domain === first.domain) continue;
        const [one, other] = [domain.name, first.domain.name];
        report({
          at: placeOfEnd(link, port),
          message:
            `${list(devices.map(({ name }) => asName(name)))} ` +
            `${devices.length === 1 ? 'has no VLANs and joins' : 'have no VLANs and join'} ${one} ` +
            `(${portName(port)}) to ${other} (${portName(first.port)}): the two become one network. Cable it to one ` +
            'of them only.',
          acceptAt: [...acceptAtPorts(port), ...devices.map(({ name }) => name), ...acceptAtPorts(first.port)],
          ...merged(
            causes,
            addressUses.filter((use) => hosts.some((host) => host.port === use.port)),
            [{ at: placeOfEnd(first.link, first.port), message: `the cable to ${other}` }],
          ),
        });
      }
    }
  },
};

/** A finding for two VLANs merged by a switch; hosts there have addresses of both. */
function merged(
  causes: Causes,
  uses: readonly AddressUse[],
  own: readonly Related[],
): Pick<Finding, 'related' | 'entails'> {
  const { related, entails } = consequencesOf(causes, uses, own);
  return { related, entails: [...entails, ...uses, ...uses.map(({ keyPath }) => keyPath)] };
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 9: {vlan: house}}}
  stable: {kind: switch, ports: {1-5: {}}}
cables:
  - {from: core/1, to: stable/1}
  - {from: core/9, to: stable/2}
#          ^^^^^^ stable has no VLANs and joins house (core/9) to video (core/1)
`,
    good: `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 9: {vlan: house}}}
  stable: {kind: switch, ports: {1-5: {}}}
cables:
  - {from: core/1, to: stable/1}
`,
  },
];
