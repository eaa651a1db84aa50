import { isMulticast } from '../../standards/ipv4.ts';
import { groupMembershipInterval } from '../../standards/igmp.ts';
import { isLinkLocalGroup } from '../../standards/multicast.ts';
import type { Bridge, BridgeTree } from '../../network/bridge-tree.ts';
import type { BroadcastDomain } from '../../network/vlan-membership.ts';
import type { Unreached } from '../../network/delivery.ts';
import type { Network } from '../../network/network.ts';
import { addressedToAsk } from '../../site/free/querier-address.ts';
import { bestQuerier } from '../../network/querier.ts';
import { addEntry, fixOf, nameText } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Device, Stream, Vlan } from '../../site/model.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { few, asName } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const noQuerier: Rule = {
  id: 'no-querier',
  severity: 'error',
  summary: 'Switches snoop in a VLAN that has no IGMP querier.',
  why: `Snooping switches forward membership reports only towards a querier, and hosts report only when they join and when
they are queried. Without a querier a receiver behind another switch gets nothing, or loses what somebody nearer the
source has joined; and after ${groupMembershipInterval()} s every membership ends: the group is dropped or flooded, as
the switch is set for unregistered multicast. Name one switch as the VLAN's querier and turn it on there. All groups
travel to it, so the one nearest the senders is best.`,
  source: 'RFC 4541 §2.1.1 and RFC 3376 §8.4, read; what receivers get was measured on Open vSwitch',
  check(context: RuleContext, report: Report): void {
    for (const [{ vlan }, state] of statesOf(context)) {
      if (vlan !== undefined) report(finding(context, vlan, state));
      else withoutVlan(state, report);
    }
  },
};

/** The effects of a missing querier in a VLAN. */
interface State {
  /** Receivers that get nothing of a stream. */
  readonly cutOff: { readonly stream: Stream; readonly unreached: Unreached; readonly bridge: string }[];
  /** Streams that arrive until memberships end, and the switches that then forget them. */
  readonly passing: Set<Stream>;
  readonly forgetting: Set<Device>;
}

function statesOf({ site, network }: RuleContext): Map<BroadcastDomain, State> {
  const states = new Map<BroadcastDomain, State>();
  const stateOf = (domain: BroadcastDomain): State => {
    const known = states.get(domain);
    if (known !== undefined) return known;
    const state: State = { cutOff: [], passing: new Set(), forgetting: new Set() };
    states.set(domain, state);
    return state;
  };
  for (const { stream, reaches, unreached, domains } of network.deliveries) {
    const { group } = stream;
    if (group === undefined || !isMulticast(group) || isLinkLocalGroup(group)) continue;
    for (const one of unreached) {
      const { why } = one;
      if (why.obstacle !== 'report-stays' && why.obstacle !== 'known-nearer') continue;
      const vlan = site.vlanByName.get(why.network);
      const domain = vlan === undefined ? undefined : network.topology.domainOf(vlan);
      if (vlan !== undefined && domain !== undefined && !isAbsent(network.tree(domain), vlan))
        stateOf(domain).cutOff.push({ stream, unreached: one, bridge: why.bridge });
    }
    if (!reaches.some((name) => name !== stream.source)) continue;
    for (const domain of domains) {
      const { vlan } = domain;
      const tree = network.tree(domain);
      if (vlan !== undefined && isAbsent(tree, vlan)) continue;
      const known = network.memberships.known(group, domain);
      for (const bridge of known?.keys() ?? []) {
        if (!bridge.snoops || tree.queried.has(bridge.component) || known?.get(bridge)?.size === 0) continue;
        const state = stateOf(domain);
        state.passing.add(stream);
        state.forgetting.add(bridge.device);
      }
    }
  }
  return states;
}

/** Whether the VLAN's querier is not in it, which querier-absent reports. */
function isAbsent(tree: BridgeTree, { querier }: Vlan): boolean {
  return querier !== undefined && tree.querier === undefined;
}

function finding({ site, network }: RuleContext, vlan: Vlan, { cutOff, passing, forgetting }: State): Finding {
  const why =
    vlan.querier === undefined
      ? `${asName(vlan.name)} has no querier`
      : `A part of ${asName(vlan.name)} is not joined to its querier ${asName(vlan.querier)}`;
  const effects: string[] = [];
  if (cutOff.length > 0) {
    const receivers = unique(cutOff.map(({ unreached }) => unreached.receiver));
    const streams = few(unique(cutOff.map(({ stream }) => stream.name)));
    effects.push(
      `${few(receivers)} ${receivers.length === 1 ? 'gets' : 'get'} nothing of ${streams}, as reports stop at the ` +
        `first switch${isSaid(network, vlan) ? '' : ' (some switches flood instead; if so, say `without-querier: flood`)'}`,
    );
  }
  if (passing.size > 0) effects.push(forgetfulness(passing, forgetting));
  return {
    at: namePlace(vlan.item),
    severity: cutOff.length > 0 || drop(forgetting) ? 'error' : 'warning',
    message: `${why}: ${effects.join('; ')}. Name a querier, preferably the switch nearest the senders.`,
    acceptAt: [vlan.name],
    related: cutOff.map(({ stream, unreached: { receiver } }) => ({
      at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
      message: `${asName(receiver)} gets nothing of ${asName(stream.name)}`,
    })),
    // A consequence where a part of the VLAN is cut off from its querier by a reported fault.
    effects: vlan.querier === undefined ? [] : bridgesOf(network, vlan, { cutOff, passing, forgetting }),
    entails: cutOff.map(({ unreached }) => unreached),
    fixes: () => {
      const best = vlan.querier === undefined ? bestQuerier(site, network, network.topology.domainOf(vlan)) : undefined;
      const edit = best === undefined ? undefined : addEntry(vlan.item, [], 'querier', nameText(best.name));
      return best === undefined
        ? []
        : fixOf(
            `Name ${asName(best.name)} as querier of ${asName(vlan.name)}`,
            edit,
            ...addressedToAsk(site, best, vlan),
          );
    },
  };
}

/** Whether each snooping switch in the VLAN declares what it does without a querier. */
function isSaid({ topology, tree }: RuleContext['network'], vlan: Vlan): boolean {
  return [...tree(topology.domainOf(vlan)).bridges.keys()].every(
    ({ snooping, unasked }) => !snooping || unasked !== undefined,
  );
}

/** The switches that drop streams or forget memberships. */
function bridgesOf({ topology, tree }: Network, vlan: Vlan, { cutOff, forgetting }: State): Bridge[] {
  const names = new Set([...cutOff.map(({ bridge }) => bridge), ...[...forgetting].map(({ name }) => name)]);
  return [...tree(topology.domainOf(vlan)).bridges.values()].filter(({ device }) => names.has(device.name));
}

function drop(forgetting: ReadonlySet<Device>): boolean {
  return [...forgetting].some(({ unregistered }) => unregistered === 'drop');
}

function forgetfulness(passing: ReadonlySet<Stream>, forgetting: ReadonlySet<Device>): string {
  const switches = few([...forgetting].map(({ name }) => name));
  const streams = few([...passing].map(({ name }) => name));
  const then = drop(forgetting) ? 'the picture stops' : `${passing.size === 1 ? 'it goes' : 'they go'} to every port`;
  return (
    `${groupMembershipInterval()} s after joining, ${switches} ${forgetting.size === 1 ? 'forgets' : 'forget'} who ` +
    `wants ${streams}, and ${then}`
  );
}

/** Without a VLAN there is no place for a querier, so the finding stands at a switch. */
function withoutVlan({ passing, forgetting }: State, report: Report): void {
  const [first, ...others] = forgetting;
  if (first === undefined) return;
  report({
    at: namePlace(first.item),
    severity: drop(forgetting) ? 'error' : 'warning',
    message:
      `There is no IGMP querier in this network: ${forgetfulness(passing, forgetting)}. Declare the network as a VLAN with its ` +
      'subnet and a querier, preferably the switch nearest the senders.',
    acceptAt: [...forgetting].map(({ name }) => name),
    // A consequence where they are in a VLAN with a wrong subnet, which is reported.
    effects: [...forgetting],
    related: others.map((device) => ({ at: namePlace(device.item), message: `${asName(device.name)} snoops too` })),
  });
}

function unique(names: readonly string[]): string[] {
  return [...new Set(names)];
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20}
# ^^^^^ video has no querier: stable-screen gets nothing of paddock
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {vlan: video}, 16: {trunk: [video]}}}
  barn: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {trunk: [video]}, 2: {vlan: video}}}
  paddock-cam: {kind: camera}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/16, to: barn/1}
  - {from: barn/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
    fixed: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {vlan: video}, 16: {trunk: [video]}}}
  barn: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1: {trunk: [video]}, 2: {vlan: video}}}
  paddock-cam: {kind: camera}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/16, to: barn/1}
  - {from: barn/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1-2: {}}}
# ^^^^ There is no IGMP querier in this network: 260 s after joining, core forgets who wants paddock, and the
  paddock-cam: {kind: camera, address: 192.168.1.31}
  stable-screen: {kind: display, address: 192.168.1.40}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
    good: `
vlans:
  lan: {id: 1, subnet: 192.168.1.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1-2: {}}}
  paddock-cam: {kind: camera, address: 192.168.1.31}
  stable-screen: {kind: display, address: 192.168.1.40}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20}
# ^^^^^ 260 s after joining, core forgets who wants paddock, and it goes to every port
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: video}}}
  paddock-cam: {kind: camera}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
    fixed: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: video}}}
  paddock-cam: {kind: camera}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: stable-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
  },
];
