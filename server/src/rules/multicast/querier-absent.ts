import { canQuery } from '../../network/can-query.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { addressedToAsk } from '../../site/free/querier-address.ts';
import { bestQuerier } from '../../network/querier.ts';
import type { Network } from '../../network/network.ts';
import { oppositePort } from '../../network/link.ts';
import { type Fix, fixOf, putValue, scalarText, setValue } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Device, Port, Site, Vlan } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const querierAbsent: Rule = {
  id: 'querier-absent',
  severity: 'error',
  summary: 'The querier of a VLAN has no port in it, or cannot be a querier.',
  why: `The querier keeps asking who wants which group, and switches send the answers towards it. One that is not in the VLAN
is not heard there: receivers behind another switch get nothing, and all memberships expire. Name a
switch or router that has a port in the VLAN.`,
  source: 'RFC 4541 §2.1.1, RFC 3376 §8, read',
  check({ site, network, plan }: RuleContext, report: Report): void {
    if (site.cables.length === 0) return;
    const reported = new Map<Device, object>();
    for (const vlan of site.vlans) {
      const device = vlan.querier === undefined ? undefined : site.deviceByName.get(vlan.querier);
      if (device?.kind === undefined) continue;
      const asks = canQuery(device);
      const domain = network.topology.domainOf(vlan);
      if (
        asks &&
        HOSTS.includes(device.kind) &&
        !device.multicastRouting &&
        network.tree(domain).querier !== undefined
      ) {
        report({
          at: placeOf(vlan.item, ['querier']),
          severity: 'warning',
          message:
            `${asName(device.name)} is ${aKind(device.kind)}, which asks for memberships only if a program for it runs there: ` +
            'without one all groups end. Name a switch or router.',
          acceptAt: [vlan.name, device.name],
          related: [{ at: namePlace(device.item), message: `${asName(device.name)} is declared here` }],
          fixes: () => better(site, network, vlan),
        });
        continue;
      }
      if (asks && network.tree(domain).querier !== undefined) continue;
      // No querier is needed without a snooping switch.
      const snoops = [...network.tree(domain).bridges.keys()].some(({ snooping }) => snooping);
      if (!asks && device.kind === 'switch' && !snoops) continue;
      const message = asks
        ? `No cabled port of ${asName(device.name)} carries ${asName(vlan.name)}, so it sends no IGMP queries there. Name one that has such a ` +
          'port.'
        : device.kind === 'switch'
          ? `${asName(device.name)} does not snoop, and a switch without IGMP snooping sends no IGMP queries. Name one ` +
            'that snoops.'
          : `${asName(device.name)} is ${aKind(device.kind)}, which sends no IGMP queries. Name a switch or router.`;
      const unheard = network.deliveries.flatMap(({ unreached }) => unreached.filter(({ why }) => isOf(why, vlan)));
      const isPlain = !asks && device.kind === 'switch';
      // For a querier of several VLANs the first is reported and entails the others.
      const first = isPlain ? reported.get(device) : undefined;
      const own = first ?? {};
      if (isPlain) reported.set(device, own);
      report({
        at: placeOf(vlan.item, ['querier']),
        message,
        acceptAt: [vlan.name, device.name],
        effects: asks ? [vlan] : first === undefined ? [] : [first],
        entails: [
          ...unheard,
          ...(isPlain && first === undefined ? [own, ...airBeyond({ plan, network }, device)] : []),
        ],
        related: [{ at: namePlace(device.item), message: `${asName(device.name)} is declared here` }],
        fixes: () => {
          const named = better(site, network, vlan);
          if (!isPlain) return named;
          const snooping = fixOf(`Let ${asName(device.name)} snoop`, ...putValue(device.item, 'igmp-snooping', 'true'));
          // A device that is the querier of all VLANs is so on purpose.
          const isMeant = site.vlans.filter(({ querier }) => querier === device.name).length > 1;
          return isMeant ? [...snooping, ...named] : [...named, ...snooping];
        },
      });
    }
  },
};

/** The airtime of access points that the device floods, as it does not snoop. */
function airBeyond({ plan, network }: Pick<RuleContext, 'plan' | 'network'>, device: Device): object[] {
  const isAt = (port: Port): boolean => {
    const link = network.topology.linkAt(port);
    return link !== undefined && oppositePort(link, port).device === device;
  };
  return plan.air.filter((air) => air.device.ports.some(isAt));
}

/** Kinds that send queries only where that is set up. */
const HOSTS: readonly string[] = ['server', 'computer'];

function better(site: Site, network: Network, vlan: Vlan): Fix[] {
  const best = bestQuerier(site, network, network.topology.domainOf(vlan));
  return best === undefined
    ? []
    : fixOf(
        `Name ${asName(best.name)} as querier`,
        setValue(vlan.item, ['querier'], scalarText(best.name, true)),
        ...addressedToAsk(site, best, vlan),
      );
}

/** Whether the obstacle is a missing querier in the VLAN. */
function isOf(why: Obstacle, vlan: Vlan): boolean {
  return (why.obstacle === 'report-stays' || why.obstacle === 'known-nearer') && why.network === vlan.name;
}

function aKind(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind.replace('-', ' ')}`;
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: paddock-cam}
#                          ^^^^^^^^^^^ paddock-cam is a camera
  guests: {id: 30, querier: core}
#                           ^^^^ No cabled port of core carries guests
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
`,
    good: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: core}
  guests: {id: 30, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {vlan: guests}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
  guest-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: guest-screen}
`,
    fixed: `
vlans:
  house: {id: 10, querier: core}
  video: {id: 20, querier: core}
  guests: {id: 30, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: barn}
#                                                   ^^^^ barn does not snoop, and a switch without IGMP snooping sends no IGMP queries
devices:
  core: {kind: switch, igmp-snooping: true, address: 192.168.20.2, ports: {1-4: {vlan: video}}}
  barn: {kind: switch, address: 192.168.20.3, ports: {1-4: {vlan: video}}}
cables:
  - {from: core/1, to: barn/1}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, address: 192.168.20.2, ports: {1-4: {vlan: video}}}
  barn: {kind: switch, address: 192.168.20.3, ports: {1-4: {vlan: video}}}
cables:
  - {from: core/1, to: barn/1}
`,
  },
];
