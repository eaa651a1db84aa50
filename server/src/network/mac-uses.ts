/** Every MAC address that the site declares. */

import { type Device, type Port, type Site, portName } from '../site/model.ts';
import { type KeyPath, textAt } from '../text/syntax.ts';
import { formatMac } from '../standards/mac.ts';

export interface MacUse {
  /** Six octets in lower-case hexadecimal digits with colons. */
  readonly mac: string;
  readonly device: Device;
  /** The ports that declare it: several for a range, none if it is the device's own. */
  readonly ports: readonly Port[];
  readonly keyPath: KeyPath;
}

export function macUses(site: Site): MacUse[] {
  return site.devices.flatMap((device) => {
    const own = textAt(device.item.data, ['mac']);
    if (own === undefined && !device.ports.some(({ mac }) => mac !== undefined)) return [];
    const byRoute = new Map<string, { mac: string; device: Device; ports: Port[]; keyPath: KeyPath }>();
    for (const port of device.ports) {
      if (port.mac === undefined) continue;
      const keyPath = [...port.keyPath, 'mac'];
      const use = byRoute.get(keyPath.join('/'));
      if (use === undefined)
        byRoute.set(keyPath.join('/'), { mac: formatMac(port.mac), device, ports: [port], keyPath });
      else use.ports.push(port);
    }
    if (own !== undefined && !byRoute.has('mac'))
      byRoute.set('mac', { mac: formatMac(own), device, ports: [], keyPath: ['mac'] });
    return [...byRoute.values()];
  });
}

/** `paddock-cam`, `recorder/cams`, or `core/1 to core/8`. */
export function macHolder({ device, ports }: MacUse): string {
  const [first] = ports;
  const last = ports.at(-1);
  if (first === undefined || last === undefined || device.ports.length === 1) return device.name;
  return first === last ? portName(first) : `${portName(first)} to ${portName(last)}`;
}
