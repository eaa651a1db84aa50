/** The address of a VLAN's gateway. */

import type { Plan } from '../../plan.ts';
import type { Device, Vlan } from '../../site/model.ts';

/** The gateway's lowest address in the VLAN's subnet; `undefined` where it has none there, or is the host itself. */
export function gatewayAddress({ network }: Plan, vlan: Vlan, host?: Device): number | undefined {
  if (vlan.gateway === undefined || vlan.gateway === host?.name) return undefined;
  const own = network.addressUses.filter(({ device, home }) => device.name === vlan.gateway && home === vlan);
  return own.length === 0 ? undefined : Math.min(...own.map(({ address }) => address));
}
