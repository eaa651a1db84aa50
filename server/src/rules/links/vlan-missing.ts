import type { Link } from '../../network/link.ts';
import { hasVlans } from '../../network/vlan-membership.ts';
import { type Port, portName } from '../../site/model.ts';
import { asName, list } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import { setVlans } from '../../site/port-vlans.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Fix, fixOf } from '../../site/edit.ts';

export const vlanMissing: Rule = {
  id: 'vlan-missing',
  severity: 'error',
  summary: 'A VLAN is needed at both sides of a cable, and neither end lets it over.',
  why: `Between switches a VLAN passes only where both ports carry it. Where neither does, the two agree, and the VLAN is
in two parts all the same: streams stop there. Add it to the trunks at both ends.`,
  source: 'IEEE 802.1Q: ingress rules (from memory)',
  check({ network }: RuleContext, report: Report): void {
    for (const [link, domains] of network.causes.lacking()) {
      const { a, b } = link;
      // A port without any VLAN has a rule of its own.
      if (!hasVlans(a) || !hasVlans(b)) continue;
      const names = [...domains].flatMap(({ vlan }) => vlan?.name ?? []);
      const cutOff = network.causes.cutOffBy(link);
      if (names.length === 0 || cutOff.length === 0) continue;
      report({
        at: placeOfEnd(link, a),
        message:
          `Neither ${portName(a)} nor ${portName(b)} carries ${list(names)}, which ${names.length === 1 ? 'is' : 'are'} ` +
          `at both sides: ${asName(cutOff[0]?.unreached.receiver ?? '')} gets nothing of ${asName(cutOff[0]?.stream.name ?? '')}. ` +
          `Add ${names.length === 1 ? 'it' : 'them'} to the trunk at both ends.`,
        acceptAt: [...acceptAtPorts(a, b), ...names],
        ...consequencesOf(
          network.causes,
          [link],
          [
            { at: placeOfPort(a, 'trunk'), message: `what ${portName(a)} carries` },
            { at: placeOfPort(b, 'trunk'), message: `what ${portName(b)} carries` },
          ],
        ),
        fixes: () => added(link, names),
      });
    }
  },
};

function added({ a, b }: Link, names: readonly string[]): Fix[] {
  const carrying = (port: Port): ReturnType<typeof setVlans> => {
    const { vlan, native = vlan, trunk = [] } = port;
    return setVlans(port, { trunk: [...new Set([...trunk, ...names])], native });
  };
  const [one, other] = [carrying(a), carrying(b)];
  return one === undefined || other === undefined
    ? []
    : fixOf(`Let ${portName(a)} and ${portName(b)} carry ${list(names)}`, ...one, ...other);
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans: {house: {id: 10}, video: {id: 20, querier: core}}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 16: {trunk: [house]}}}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 8: {trunk: [house]}}}
  recorder: {kind: server}
  stall-cam: {kind: camera}
cables:
  - {from: core/16, to: barn/8}
#          ^^^^^^^ Neither core/16 nor barn/8 carries video, which is at both sides: recorder gets nothing of stall
  - {from: core/1, to: recorder}
  - {from: barn/1, to: stall-cam}
streams:
  stall: {source: stall-cam, transport: rtp, group: 239.192.20.41, port: 5004, receivers: [recorder]}
`,
    fixed: `
vlans: {house: {id: 10}, video: {id: 20, querier: core}}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 16: {trunk: [house, video]}}}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 8: {trunk: [house, video]}}}
  recorder: {kind: server}
  stall-cam: {kind: camera}
cables:
  - {from: core/16, to: barn/8}
  - {from: core/1, to: recorder}
  - {from: barn/1, to: stall-cam}
streams:
  stall: {source: stall-cam, transport: rtp, group: 239.192.20.41, port: 5004, receivers: [recorder]}
`,
  },
];
