import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { aboutPlace } from '../../site/about.ts';
import { networkRefusals } from '../../make/refusals.ts';

export const routeGateway: Rule = {
  id: 'route-gateway',
  severity: 'error',
  summary: 'A route hands its packets to a gateway that is not on the link.',
  why: `A host asks for its gateway by ARP on the link of the route's port, so the gateway has an address in a subnet of
that port. Linux refuses a route to any other with \`Nexthop has invalid gateway\`, and what should have gone there goes
nowhere. Name the router's address on that link, or the port that leads to it.`,
  source: 'RFC 1122 §3.3.1.1, from memory; Linux, ip-route(8)',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rule, at, message } of networkRefusals(plan))
      if (rule === 'route-gateway') report({ at, message, about: aboutPlace(at) });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}}}
  recorder:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}
    routes: [{to: default, port: lan, via: 192.168.20.1}]
#                                          ^^^^^^^^^^^^ 192.168.20.1 is in no subnet of recorder/lan
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}}}
  recorder:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}
    routes: [{to: default, port: lan, via: 192.168.10.1}]
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
`,
  },
];
