/** The host name of each address of the site, in the local domain. */

import { firstOthers, grouped } from '../../grouped.ts';
import { lastResult } from '../../memo.ts';
import { type AddressUse, holder } from '../../network/address-uses.ts';
import type { Plan } from '../../plan.ts';
import { namePlace } from '../../site/item.ts';
import { list } from '../../text/words.ts';
import { visible } from '../../text/visible.ts';
import type { Refusal } from '../output.ts';
import { hostLabel } from '../quoting/dnsmasq.ts';

/** The domain for names of a home network (RFC 8375). */
export const DOMAIN = 'home.arpa';

export interface NamedAddress {
  readonly use: AddressUse;
  /** Labels below the domain; a reverse lookup gives the first. */
  readonly labels: readonly string[];
}

export interface HostNames {
  /** In the order of addresses. */
  readonly named: readonly NamedAddress[];
  /** Devices whose host name differs from their name in the site, such as `foaling-box` for `foaling_box`. */
  readonly changed: readonly string[];
  readonly refused: readonly Refusal[];
}

interface Claim {
  readonly use: AddressUse;
  readonly as: string;
}

/**
 * A device with one address has its own name. Where it has several, the first has the device's name, and each also has
 * a name made of the device and the port or VLAN: `recorder-cams`, `router-video`.
 */
export function hostNames({ network }: Plan): HostNames {
  const { labels, changed, refused } = labelsOf(network.addressUses);
  const named = [...labels]
    .map(([use, own]) => ({ use, labels: own }))
    .sort((a, b) => a.use.address - b.use.address || ((a.labels[0] ?? '') < (b.labels[0] ?? '') ? -1 : 1));
  return { named, changed, refused };
}

/** The devices that get no host name, or not their own. */
export function refusedHostNames({ network }: Plan): readonly Refusal[] {
  return labelsOf(network.addressUses).refused;
}

interface Labels extends Omit<HostNames, 'named'> {
  readonly labels: ReadonlyMap<AddressUse, readonly string[]>;
}

// Not by each list: edits would pile them up.
const labelsOf = lastResult((addressUses: readonly AddressUse[]): Labels => {
  const refused: Refusal[] = [];
  const claimed: (Claim & { readonly label: string })[] = [];
  const changed: string[] = [];
  for (const [name, uses] of grouped(addressUses, ({ device }) => device.name)) {
    const [first] = uses;
    if (first === undefined) continue;
    const own = hostLabel(name);
    if (own === undefined) {
      refused.push({
        rule: 'malformed-value',
        at: namePlace(first.device.item),
        message: `${visible(name, 80)} is no host name: ${RULE}. Rename the device.`,
      });
      continue;
    }
    if (own !== name.toLowerCase()) changed.push(name);
    claimed.push({ use: first, as: name, label: own });
    if (uses.length === 1) continue;
    for (const use of uses) {
      const as = ownName(use);
      const label = hostLabel(as);
      // A composed name may be too long; the address has another one.
      if (label !== undefined) claimed.push({ use, as, label });
    }
  }
  const labels = new Map<AddressUse, readonly string[]>();
  for (const [label, claims] of grouped(claimed, ({ label }) => label)) {
    // A device's own name takes precedence over one that is composed for an address of another device.
    const own = claims.length === 1 ? claims : claims.filter(({ use, as }) => as === use.device.name);
    const winner = own.length === 1 ? own[0] : undefined;
    // A composed name gives way; it is only an addition to the device's own.
    for (const claim of own.length > 1 ? own : []) {
      const others = firstOthers(own, claim, 5).map(whose);
      refused.push({
        rule: 'host-name-clash',
        at: namePlace(claim.use.device.item),
        message: clashMessage(label, whose(claim), others),
      });
    }
    if (winner !== undefined) labels.set(winner.use, [...(labels.get(winner.use) ?? []), label]);
  }
  return { labels, changed: changed.sort(), refused };
});

const RULE = 'those are of letters, digits and hyphens, with no hyphen at either end, and 63 characters at most';

function clashMessage(label: string, name: string, others: readonly string[]): string {
  const shown = [...new Set(others)].sort().map((other) => visible(other, 80));
  return (
    `${visible(name, 80)} would be called ${label}.${DOMAIN}, as ${list(shown)} would: host names know neither ` +
    'capitals nor underscores. Rename one.'
  );
}

/** The device, or its port where the name is composed of both. */
function whose({ use, as }: Claim): string {
  return as === use.device.name ? as : holder(use);
}

function ownName({ device, port, keyPath }: AddressUse): string {
  const vlan = keyPath.at(-2) === 'addresses' ? String(keyPath.at(-1)) : undefined;
  return [device.name, vlan ?? port?.name ?? 'management'].join('-');
}
