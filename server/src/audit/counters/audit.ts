/** Compares interface counters over time with the planned load of each port and direction. */

import { oppositePort } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import type { Found, Related } from '../../lint/rule.ts';
import { type Place, namePlace } from '../../site/item.ts';
import { portName, type Port } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { bitRate, count, duration, list, asName } from '../../text/words.ts';
import type { Audited } from '../audited.ts';
import { diagnose } from '../../lint/diagnose.ts';
import { advice, isChange } from './advice.ts';
import { type Blame, type SeenAll, type Suspect, blame } from './blame.ts';
import { type Options, type Row, rowsOf } from './compare.ts';
import { counterRules } from './rules.ts';
import { flowOf, lostIn } from './flow.ts';
import { sharesIn } from './planned.ts';
import { type Counted, matched } from './ports.ts';
import type { Readings } from './sample.ts';
import { tableOf } from './table.ts';

/**
 * @param named the device whose counters they are, where the samples do not say
 * @throws Unreadable where nothing shows whose they are
 */
export function auditCounters(
  plan: Plan,
  { samples, notes }: Readings,
  named: string | undefined,
  options: Options,
): Audited {
  const { counted, notes: leftOut } = matched(plan.site, samples, named);
  const rows = rowsOf(plan, counted, options);
  const seen = new Map(
    rows.flatMap(({ at, difference, verdict }) =>
      at === undefined || verdict === 'unknown' ? [] : [[at.out, { difference, shares: sharesIn(plan, at) }]],
    ),
  );
  const reported = new Set<Port>();
  const found = [
    ...rows.flatMap((row) => deviation(plan, row, seen, options, reported)),
    ...counted.flatMap((one) => [...unplanned(one, rows, options), ...dropped(plan, one)]),
    ...rows.flatMap(tooFar),
  ];
  return {
    found: diagnose(plan.site.lint, found),
    summary: [...tableOf(rows, options), ...summaryOf(counted, rows, options), ...leftOut, ...notes],
  };
}

/** Reports more or less than planned. A direction counted at both ends of its cable is reported once. */
function deviation(plan: Plan, row: Row, seen: SeenAll, options: Options, reported: Set<Port>): Found[] {
  const { at, flow, planned, difference, verdict, title } = row;
  if (at === undefined || verdict === 'agrees' || verdict === 'unknown' || reported.has(at.out)) return [];
  reported.add(at.out);
  const part = options.tolerance / 10_000;
  const guess = (amount: number): Blame | undefined => blame(plan, at, amount, seen, part);
  const burst = verdict === 'above-peak' && flow.mean <= planned.nominal * (1 + part) + options.other;
  const less = verdict === 'below';
  const amount = burst ? flow.busiest - planned.peak : difference;
  const instead = burst ? NaN : (less ? flow.quietest : flow.busiest) - planned.nominal;
  const always = guess(amount);
  // A stream that comes and goes shows best in a stretch with, or without, all of it.
  const atTimes = (always !== undefined && !isChange(always)) || Number.isNaN(instead) ? undefined : guess(instead);
  const blamed = atTimes === undefined || (always !== undefined && isChange(atTimes)) ? always : atTimes;
  const busiest =
    flow.busiest > flow.mean * 1.01 ? `, ${bitRate(flow.busiest)} in its busiest ${duration(options.over)}` : '';
  const peak = planned.peak > planned.nominal ? `, ${bitRate(planned.peak)} at peak` : '';
  const by = burst
    ? `${bitRate(amount)} more than the planned peak of ${bitRate(planned.peak)}`
    : `${bitRate(Math.abs(difference))} ${less ? 'less' : 'more'} than the ${bitRate(planned.nominal)} planned${peak}`;
  const sure = less ? blamed !== undefined && !isChange(blamed) : verdict === 'above-peak';
  return [
    {
      rule: less ? counterRules.below : counterRules.above,
      severity: sure ? 'warning' : 'information',
      at: placeOfEnd(at.link, row.port),
      message:
        `${title} carried ${bitRate(flow.mean)} on average${busiest}: ${by}. ` +
        advice(blamed, less, blamed !== always),
      acceptAt: acceptAtPorts(row.port, oppositePort(at.link, row.port)),
      related: (blamed?.all === true ? [] : (blamed?.alternatives.flat() ?? [])).map(relatedOf),
    },
  ];
}

function relatedOf({ stream, rate }: Suspect): Related {
  return { at: namePlace(stream.item), message: `${asName(stream.name)}, of ${bitRate(rate)} there` };
}

/** Reports an interface that carries something, without a port or a cable in the site. */
function unplanned({ device, name, port, samples }: Counted, rows: readonly Row[], { other, over }: Options): Found[] {
  const own = rows.filter((row) => row.port === port && row.at === undefined);
  if (port !== undefined && own.length === 0) return [];
  const flows =
    port !== undefined
      ? own.map(({ flow }) => flow)
      : [
          flowOf(samples, ({ received }) => received, undefined, over),
          flowOf(samples, ({ sent }) => sent, undefined, over),
        ];
  const most = Math.max(0, ...flows.map(({ mean }) => mean));
  if (most <= other) return [];
  const at: Place = port === undefined ? namePlace(device.item) : placeOfPort(port);
  return [
    {
      rule: counterRules.unplanned,
      // It may be the Wi-Fi of a laptop, or a bridge to containers.
      severity: port === undefined ? 'information' : 'warning',
      at,
      message:
        port === undefined
          ? `${asName(device.name)} carried ${bitRate(most)} on its interface ${visible(name, 40)}, which is no port of it in the ` +
            'site. Declare the port and its cable, or say by interface which port it is.'
          : `${portName(port)} carried ${bitRate(most)}, and no cable is at it in the site. Declare the cable.`,
      acceptAt: port === undefined ? [device.name] : acceptAtPorts(port),
    },
  ];
}

function dropped(plan: Plan, { device, port, name, samples }: Counted): Found[] {
  const lost = [...lostIn(samples)];
  const [first, last] = [samples[0], samples[samples.length - 1]];
  if (lost.length === 0 || first === undefined || last === undefined) return [];
  const link = port === undefined ? undefined : plan.network.topology.linkAt(port);
  const at =
    port === undefined ? namePlace(device.item) : link === undefined ? placeOfPort(port) : placeOfEnd(link, port);
  const title = port === undefined ? `${device.name}/${visible(name, 40)}` : portName(port);
  const frames = list(lost.map(([counter, number]) => `${number} ${counter}`));
  const damaged = lost.some(([counter]) => /rx errors|ifInErrors/.test(counter));
  return [
    {
      rule: counterRules.dropped,
      at,
      message:
        `${title} lost frames in ${duration(last.time - first.time)}: ${frames}. ` +
        (damaged
          ? 'Look at the cable and its plugs, and whether both ends run at the same speed and duplex.'
          : 'More was sent to it at once than it could pass on: look at its load.'),
      acceptAt: port === undefined ? [device.name] : acceptAtPorts(port),
    },
  ];
}

function tooFar({ port, at, title, flow }: Row): Found[] {
  if (flow.tooFar.count === 0) return [];
  const speed = at?.link.capacity ?? port.speed;
  const allowed = speed === undefined || speed === 0 ? undefined : (2 ** 32 * 8) / speed;
  return [
    {
      rule: counterRules.unknown,
      at: at === undefined ? placeOfPort(port) : placeOfEnd(at.link, port),
      message:
        `${title}: ${count(flow.tooFar.count, 'time')} nobody can tell what was carried, since the samples lie up to ` +
        `${duration(flow.tooFar.longest)} apart and the counter has 32 bits. ` +
        (allowed === undefined
          ? 'Nor does anything say how fast the port is: give ifSpeed, or its speed in the site, or counters of 64 bits.'
          : `At ${bitRate(speed ?? 0)} it is full after ${duration(Math.floor(allowed) * 1000)}: sample more often, ` +
            'or take counters of 64 bits.'),
      acceptAt: acceptAtPorts(port),
    },
  ];
}

function summaryOf(counted: readonly Counted[], rows: readonly Row[], { tolerance, other }: Options): string[] {
  const samples = counted.reduce((total, { samples: own }) => total + own.length, 0);
  const agree = rows.filter(({ verdict }) => verdict === 'agrees').length;
  const beginnings = rows.reduce((total, { flow }) => total + flow.beginnings, 0);
  const lines = [
    `${count(counted.length, 'interface')} in ${count(samples, 'sample')}: ${agree} of ` +
      `${count(rows.length, 'direction')} as planned, within ${tolerance / 100} % and ${bitRate(other)} of other traffic.`,
  ];
  if (beginnings > 0)
    lines.push(`Counters began anew ${count(beginnings, 'time')}; what was carried meanwhile is not known.`);
  return lines;
}
