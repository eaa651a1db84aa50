/** The way by which each host of a lab sends to each address of its streams: as predicted, and by its kernel. */

import type { Interface } from '../../server/src/network/interface.ts';
import type { RouteEntry } from '../../server/src/network/route-table.ts';
import { addressedInterface } from '../../server/src/network/unicast.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device } from '../../server/src/site/model.ts';
import { formatAddress, isMulticast, parseAddress } from '../../server/src/standards/ipv4.ts';
import { type Addresses, interfaceOf } from './addresses.ts';

export interface KernelRoute {
  readonly host: string;
  readonly to: string;
  /** `dev p3`, `via 192.168.10.1 dev p3` or `unreachable`. */
  readonly predicted: string;
  readonly kernel: string;
}

/** `answer` is the first line of `ip route get` on a host. */
export function kernelRoutes(
  plan: Plan,
  addresses: Addresses,
  answer: (device: Device, address: string) => string,
): KernelRoute[] {
  const { interfaces, deliveries } = plan.network;
  const found = new Map<string, KernelRoute>();
  const add = (device: Device, to: string, way: RouteEntry | undefined): void => {
    const key = `${device.name} ${to}`;
    if (interfaces.of(device).length === 0 || found.has(key)) return;
    found.set(key, {
      host: device.name,
      to,
      predicted: wayWords(addresses, way, isMulticast(parseAddress(to) ?? 0)),
      kernel: kernelWords(answer(device, to)),
    });
  };
  const towards = (device: Device, at: Interface | undefined): void => {
    if (at !== undefined) add(device, addresses.of(at), interfaces.towards(device, at));
  };
  for (const { stream, source } of deliveries) {
    const receivers = stream.receivers.flatMap((name) => plan.site.deviceByName.get(name) ?? []);
    for (const receiver of receivers) {
      if (source === undefined || receiver === source) continue;
      if (stream.group === undefined) {
        const to = addressedInterface(plan.network, receiver, source);
        towards(source, to);
        towards(receiver, addressedInterface(plan.network, source, receiver));
        for (const router of plan.site.devices)
          if (router.kind === 'router' && interfaces.table(router).hasUnicastRoutes) towards(router, to);
      } else add(receiver, formatAddress(stream.group), interfaces.towardsGroup(receiver, stream.group));
    }
    if (source !== undefined && stream.group !== undefined)
      add(source, formatAddress(stream.group), interfaces.towardsGroup(source, stream.group));
  }
  return [...found.values()];
}

function wayWords(addresses: Addresses, way: RouteEntry | undefined, isGroup: boolean): string {
  if (way === undefined) return 'unreachable';
  // A group is not handed to a router, but sent on the link.
  const dev = way.by === undefined ? interfaceOf(way.port) : addresses.nameOf(way.by);
  // A gateway without a declared address has one in the lab.
  const via = isGroup ? undefined : way.via?.at === undefined ? way.via?.address : addresses.of(way.via.at);
  return `${via === undefined ? '' : `via ${typeof via === 'number' ? formatAddress(via) : via} `}dev ${dev}`;
}

function kernelWords(line: string): string {
  if (line.includes('unreachable')) return 'unreachable';
  const [, via = '', dev] = /(via \S+ )?(dev \S+)/.exec(line) ?? [];
  return dev === undefined ? line : `${via}${dev}`;
}

export function kernelRoutesTable(routes: readonly KernelRoute[]): string {
  const lines = routes.map(({ host, to, predicted, kernel }) => [`${host} to ${to}`, predicted, kernel]);
  const all = [['ip route get', 'predicted', 'the kernel'], ...lines];
  const widths = [0, 1].map((column) => Math.max(...all.map((line) => line[column]?.length ?? 0)));
  return all
    .map((line) => `      ${line.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd())
    .join('\n');
}
