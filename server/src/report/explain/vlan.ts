/** A VLAN at a glance: its addresses, gateway, querier, links and streams. */

import { taggingOf } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import type { Vlan } from '../../site/model.ts';
import { formatAddress, formatSubnet, firstHost, lastHost } from '../../standards/ipv4.ts';
import { bitRate, few } from '../../text/words.ts';
import { hostsIn } from './address.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { digitsGrouped } from './figure.ts';
import { vlanAnswer } from '../answer/vlan.ts';

function querierLine({ network }: Plan, vlan: Vlan): ExplanationLine {
  const { querier } = network.tree(network.topology.domainOf(vlan));
  if (querier === undefined)
    return {
      label: 'querier',
      cells: [vlan.querier ?? 'none'],
      formula: 'memberships end after about four minutes',
      source: 'RFC 3376 §8',
    };
  const elected = vlan.querier === querier.name ? '' : 'elected as its address is the lowest: ';
  return {
    label: 'querier',
    cells: [querier.name],
    formula: `${elected}every group of the VLAN travels to its switch too`,
    source: elected === '' ? 'RFC 4541 §2.1.2' : 'RFC 3376 §6.6.2',
  };
}

export function vlanExplained(plan: Plan, vlan: Vlan): Explanation {
  const { network } = plan;
  const domain = network.topology.domainOf(vlan);
  const { subnet, pool } = vlan;
  const lines: ExplanationLine[] = [
    { label: '802.1Q tag', cells: [vlan.id === undefined ? 'no id' : String(vlan.id)], source: 'IEEE 802.1Q' },
  ];
  if (subnet !== undefined) {
    lines.push({
      label: 'subnet',
      cells: [formatSubnet(subnet)],
      formula:
        `${digitsGrouped(hostsIn(subnet))} addresses for hosts, ${formatAddress(firstHost(subnet))} to ` +
        formatAddress(lastHost(subnet)),
      source: 'RFC 4632 §3.1',
    });
  }
  const uses = network.addressUses.filter(({ home }) => home === vlan);
  const taken = new Set(uses.map(({ address }) => address)).size;
  lines.push({
    label: 'addresses in use',
    cells: [{ value: taken, unit: 'addresses' }],
    formula: few([...new Set(uses.map(({ device }) => device.name))], 6),
  });
  if (pool !== undefined) {
    lines.push({
      label: 'DHCP pool',
      cells: [{ value: pool.last - pool.first + 1, unit: 'addresses' }],
      formula: `${formatAddress(pool.first)} to ${formatAddress(pool.last)}`,
    });
  }
  lines.push({
    label: 'gateway',
    cells: [vlan.gateway ?? 'none'],
    ...(vlan.gateway === undefined && { formula: 'no way into other VLANs' }),
  });
  if (vlan.reaches !== undefined || !vlan.internet) {
    const inside = vlan.reaches === undefined ? 'all VLANs' : few(vlan.reaches, 6);
    lines.push({
      label: 'may reach',
      cells: [inside === '' ? 'no other VLAN' : inside],
      formula: vlan.internet ? 'and the Internet' : 'and not the Internet',
    });
  }
  if (vlan.clock !== undefined)
    lines.push({ label: 'clock', cells: [vlan.clock], formula: 'its hosts set theirs by it', source: 'RFC 5905' });
  lines.push(querierLine(plan, vlan));
  const tagged = network.topology.links.filter((link) => taggingOf(link, domain) === 'tagged').length;
  const untagged = network.topology.links.filter((link) => taggingOf(link, domain) === 'untagged').length;
  lines.push({
    label: 'links',
    cells: [String(tagged + untagged)],
    formula: `${untagged} without a tag, ${tagged} with one`,
  });
  const streams = network.deliveries.filter(({ domains }) => domains.includes(domain)).map(({ stream }) => stream);
  const peak = streams.reduce((sum, stream) => sum + network.rates(stream).untagged.line.peak, 0);
  if (streams.length > 0)
    lines.push({
      label: 'streams',
      cells: [String(streams.length)],
      formula: `${few(
        streams.map(({ name }) => name),
        6,
      )}; one copy of each is ${bitRate(peak)} at peak`,
    });
  return { answer: vlanAnswer(plan, vlan), title: `${vlan.name}: VLAN`, columns: [], lines };
}
