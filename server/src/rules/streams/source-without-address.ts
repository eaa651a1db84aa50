import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { nextFreeAddress } from '../../site/free/address.ts';
import { type Fix, addEntry, fixOf } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { type Device, type Site, type Stream, type Vlan, isRtsp } from '../../site/model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { few, asName } from '../../text/words.ts';

export const sourceWithoutAddress: Rule = {
  id: 'source-without-address',
  severity: 'warning',
  summary: 'A device that others pull from has no fixed address.',
  why: `Whoever pulls a stream asks for it at its source's address. A DHCP server may hand out a different one after a power
cut; then the recorder asks in vain, or gets another camera's picture. Give the source an address outside
the pool, or have the server keep one for it (\`mac\` and \`reserved: true\`). Where the VLAN has no pool this is
only information: the device may have an address that is not written here.`,
  source: 'RFC 2131 §2.2 (an address is given for a time), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const pulled = new Map<Device, Stream[]>();
    for (const stream of site.streams) {
      const { source, transport, receivers } = stream;
      const device = source === undefined ? undefined : site.deviceByName.get(source);
      if (device === undefined || !isRtsp(transport)) continue;
      if (receivers.every((receiver) => receiver === source)) continue;
      const list = pulled.get(device);
      if (list === undefined) pulled.set(device, [stream]);
      else list.push(stream);
    }
    for (const [device, streams] of pulled) {
      const own = network.interfaces.of(device);
      const vlan = own.flatMap(({ domain }) => domain.vlan ?? []).find(({ subnet }) => subnet !== undefined);
      // A misspelled key may be its address.
      if (vlan === undefined || hasAddress(device) || device.item.problems.some(isUnknownKey)) continue;
      const names = few(streams.map(({ name }) => name));
      report({
        at: namePlace(device.item),
        severity: vlan.pool === undefined ? 'information' : 'warning',
        message:
          vlan.pool === undefined
            ? `${asName(device.name)} has no address, and ${names} ${streams.length === 1 ? 'is' : 'are'} pulled from it. Give its address.`
            : `${asName(device.name)} gets its address from the DHCP pool of ${asName(vlan.name)}, so it may change, but ${names} ` +
              `${streams.length === 1 ? 'is' : 'are'} pulled from it. Give it one outside the pool, or reserve one.`,
        acceptAt: [device.name],
        entails: [device],
        fixes: () => giveAddress(site, device, vlan),
      });
    }
  },
};

function isUnknownKey({ problem }: Device['item']['problems'][number]): boolean {
  return problem === 'unknown-key';
}

/** Whether it has an address; `auto` counts, which the rule unfilled reports. */
function hasAddress({ ports, item }: Device): boolean {
  return ports.some(({ addresses }) => addresses.length > 0) || item.mentions.some(({ text }) => text === 'auto');
}

function giveAddress(site: Site, { item, ports }: Device, vlan: Vlan): Fix[] {
  const free = nextFreeAddress(site, vlan);
  const [only, ...others] = ports;
  if (free === undefined || only === undefined || others.length > 0) return [];
  const text = formatAddress(free);
  const where = only.keyPath[1] === undefined || only.keyPath[1] === only.name ? only.keyPath : undefined;
  if (where === undefined) return [];
  return fixOf(
    `Give it ${text}, the next free address of ${asName(vlan.name)}`,
    addEntry(item, where, 'address', text),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  gate-cam: {kind: camera}
# ^^^^^^^^ gate-cam gets its address from the DHCP pool of video, so it may change, but gate is pulled from it. Give
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, receivers: [recorder]}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199}
devices:
  core: {kind: switch, ports: {1-4: {vlan: video}}}
  gate-cam: {kind: camera, address: 192.168.20.1}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, receivers: [recorder]}
`,
  },
];
