/** Counters as the equipment of a plan would show them, written as the files that an audit reads. */

import { readFileSync, readdirSync } from 'node:fs';
import { auditCounters } from '../../../server/src/audit/counters/audit.ts';
import { type Options, USUAL_LIMITS } from '../../../server/src/audit/counters/compare.ts';
import { IfMibTable } from '../../../server/src/audit/counters/if-mib-table.ts';
import { LinkLines } from '../../../server/src/audit/counters/ip-link.ts';
import type { Readings, SampleReader } from '../../../server/src/audit/counters/sample.ts';
import type { Audited } from '../../../server/src/audit/audited.ts';
import { type Direction, oppositePort } from '../../../server/src/network/link.ts';
import { type Plan, planOf } from '../../../server/src/plan.ts';
import type { Port } from '../../../server/src/site/model.ts';
import { directionsOf } from '../../directions.ts';
import { folderOf } from '../../site.ts';

const SAMPLE = new URL('../../../samples/harrow-lane/', import.meta.url);

export function harrowLane(): Plan {
  return planOf(
    folderOf(
      Object.fromEntries(
        readdirSync(SAMPLE)
          .filter(isSite)
          .map((name) => [name, readFileSync(new URL(name, SAMPLE), 'utf8')]),
      ),
    ).site(),
  );
}

const isSite = (name: string): boolean => name.endsWith('.site.yaml');

export const START = Date.UTC(2026, 2, 1, 12);

/** bit/s in a direction at the second of that number. */
export type Rate = (direction: Direction, second: number) => number;

/** What the plan has, at its nominal rate. */
export function asPlanned(plan: Plan, octets: 'frame' | 'frameWithFcs' = 'frame'): Rate {
  return ({ link, out }) => plan.network.load(link, out)[octets].nominal;
}

interface Wanted {
  readonly devices: readonly string[];
  readonly seconds?: number;
  readonly every?: number;
}

/** Octets by port since the start, received and sent, at each time; whole, so that nothing is lost between samples. */
function* counted(
  plan: Plan,
  rate: Rate,
  { devices, seconds = 60, every = 10 }: Wanted,
): Generator<{ second: number; port: Port; received: number; sent: number }> {
  const sums = new Map<Port, number>();
  const directions = directionsOf(plan);
  const sum = (out: Port): number => sums.get(out) ?? 0;
  for (let second = 0; second <= seconds; second++) {
    if (second > 0)
      for (const direction of directions) sums.set(direction.out, sum(direction.out) + rate(direction, second) / 8);
    if (second % every !== 0) continue;
    for (const device of devices) {
      for (const port of plan.site.deviceByName.get(device)?.ports ?? []) {
        const link = plan.network.topology.linkAt(port);
        if (link === undefined) continue;
        const received = Math.round(sum(oppositePort(link, port)));
        yield { second, port, received, sent: Math.round(sum(port)) };
      }
    }
  }
}

/** Lines of JSON as `jq -c '{time: now, device: …, links: .}'` makes them of what ip prints. */
export function asLinux(plan: Plan, rate: Rate, wanted: Wanted): string {
  const lines = new Map<string, { time: number; device: string; links: object[] }>();
  for (const { second, port, received, sent } of counted(plan, rate, wanted)) {
    const key = `${second} ${port.device.name}`;
    const line = lines.get(key) ?? { time: START / 1000 + second + 0.25, device: port.device.name, links: [] };
    lines.set(key, line);
    line.links.push({
      ifindex: 2 + line.links.length,
      ifname: port.interface ?? port.name,
      link_type: 'ether',
      stats64: { rx: { bytes: received, errors: 0, dropped: 7 }, tx: { bytes: sent, errors: 0, dropped: 0 } },
    });
  }
  return [...lines.values()].map((line) => `${JSON.stringify(line)}\n`).join('');
}

/** Values of the Interfaces MIB as CSV; with `bits` of 32 the counters wrap. */
export function asIfMib(plan: Plan, rate: Rate, wanted: Wanted, bits: 32 | 64 = 64, first = 0): string {
  const columns = bits === 64 ? 'ifHCInOctets,ifHCOutOctets' : 'ifInOctets,ifOutOctets';
  const shown = (octets: number): bigint => BigInt.asUintN(bits, BigInt(octets) + BigInt(first));
  const rows = [...counted(plan, rate, wanted)].map(({ second, port, received, sent }) =>
    [
      new Date(START + second * 1000 + 250).toISOString(),
      port.device.name,
      port.interface ?? port.name,
      shown(received),
      shown(sent),
    ].join(','),
  );
  return `time,device,ifName,${columns}\n${rows.join('\n')}\n`;
}

export function readingsOf(reader: SampleReader, text: string): Readings {
  text
    .replace(/\n$/, '')
    .split('\n')
    .forEach((line, index) => reader.line(line, index + 1));
  return reader.end();
}

export function audited(
  plan: Plan,
  text: string,
  { device, ...options }: Partial<Options> & { device?: string } = {},
): Audited {
  const reader = text.startsWith('{') ? new LinkLines() : new IfMibTable();
  return auditCounters(plan, readingsOf(reader, text), device, { ...USUAL_LIMITS, ...options });
}

export function told({ found }: Audited): string[] {
  return found.map(({ rule, severity, message }) => `${severity} ${rule.id}: ${message}`);
}
