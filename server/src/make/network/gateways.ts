/** The address by which hosts of a VLAN reach all others. */

import type { Plan } from '../../plan.ts';
import type { Device, Vlan } from '../../site/model.ts';

/** The lowest of the gateway's addresses in the VLAN's subnet; `undefined` where it has none, or is the host itself. */
export function gatewayAddress({ network }: Plan, vlan: Vlan, host?: Device): number | undefined {
  if (vlan.gateway === undefined || vlan.gateway === host?.name) return undefined;
  const own = network.addressUses.filter(({ device, home }) => device.name === vlan.gateway && home === vlan);
  return own.length === 0 ? undefined : Math.min(...own.map(({ address }) => address));
}
