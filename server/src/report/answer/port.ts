import { type Link, oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import type { Device, Port } from '../../site/model.ts';
import { bitRate, count, percent } from '../../text/words.ts';
import { answer, isLoadKnown, sumWords } from './words.ts';

/** `95 % of 100 Mb/s out, 2.9 % in` */
export function portAnswer(plan: Plan, port: Port): string {
  const { topology, load } = plan.network;
  const link = topology.linkAt(port);
  if (link === undefined) return passages(plan, port.device, port.name) === 0 ? 'free' : 'passed through';
  const other = oppositePort(link, port);
  if (link.blocked !== undefined && load(link, port).line.peak + load(link, other).line.peak === 0)
    return 'idle: spanning tree blocks it';
  return answer(
    `${partWords(plan, link, port)} out, ${partWords(plan, link, other)} in`,
    link.capacity === undefined ? 'its speed is not declared' : `at most ${bitRate(link.capacity)}`,
  );
}

/** `9.78 Mb/s (9.8 %)` at peak */
export function partWords(plan: Plan, link: Link, out: Port): string {
  const { peak } = plan.network.load(link, out).line;
  const share = link.capacity === undefined || link.capacity === 0 ? '' : ` (${percent(peak, link.capacity)})`;
  return `${sumWords(peak, isLoadKnown(plan, link, out))}${share}`;
}

/** `8 ports, 6 free`; at a patch panel a port that a cable passes is not free. */
export function portsAnswer(plan: Plan, device: Device, ports: readonly Port[]): string {
  const isUsed = (port: Port): boolean =>
    plan.network.topology.linkAt(port) !== undefined || passages(plan, device, port.name) > 0;
  const free = ports.filter((port) => !isUsed(port)).length;
  return `${count(ports.length, 'port')}, ${free === 0 ? 'none' : free} free`;
}

/** How many cables run through a port of a patch panel. */
function passages({ site }: Plan, device: Device, port: string): number {
  if (device.kind !== 'patch-panel') return 0;
  return site.cables.filter(({ through }) => through.some((end) => end.device === device.name && end.port === port))
    .length;
}
