/** The addresses of a VLAN's gateway and clock. */

import type { Plan } from '../../plan.ts';
import type { Device, Vlan } from '../../site/model.ts';

/** The gateway's lowest address in the VLAN's subnet; `undefined` where it has none there, or is the host itself. */
export function gatewayAddress({ network }: Plan, vlan: Vlan, host?: Device): number | undefined {
  if (vlan.gateway === undefined || vlan.gateway === host?.name) return undefined;
  const own = network.addressUses.filter(({ device, home }) => device.name === vlan.gateway && home === vlan);
  return own.length === 0 ? undefined : Math.min(...own.map(({ address }) => address));
}

/** The address of the VLAN's clock: in the VLAN, or else its lowest; `undefined` where it has none. */
export function clockAddress({ network }: Plan, vlan: Vlan): number | undefined {
  const own = network.addressUses.filter(({ device }) => device.name === vlan.clock);
  const near = own.filter(({ home }) => home === vlan);
  const all = near.length > 0 ? near : own;
  return all.length === 0 ? undefined : Math.min(...all.map(({ address }) => address));
}
