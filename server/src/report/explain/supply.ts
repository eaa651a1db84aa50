/** The sums of what a device takes in, and of how long a UPS lasts. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { PEUKERT_EXPONENT } from '../../standards/battery.ts';
import { portName } from '../../site/model.ts';
import {
  ASSUMED_POE_EFFICIENCY,
  ASSUMED_POWER_FACTOR,
  type DevicePower,
  wattsAtPort,
} from '../../supply/device-power.ts';
import { type UpsFigures, batteryOf } from '../../supply/ups.ts';
import { runtime, threshold, voltAmperes, wattHours } from '../../text/words.ts';
import { kilowattHours } from '../supply/figures.ts';
import { lastsWords } from '../supply/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import type { Figure } from './figure.ts';

const COLUMNS: readonly string[] = ['at most', 'by class'];

/** Empty where the device declares nothing of power and feeds no other. */
export function supplyExplained(plan: Plan, device: Device): Explanation[] {
  const supply = plan.supply();
  const draw = supply.power(device);
  const isSaid = device.ownPower !== undefined || device.ups !== undefined || supply.feeding.fedBy(device).length > 0;
  if (
    !isSaid ||
    (device.ownPower === undefined &&
      device.ups === undefined &&
      device.kind !== 'circuit' &&
      draw.basis === 'undeclared')
  )
    return [];
  const ups = supply.ups(device);
  return [takenExplained(plan, device, draw), ...(ups === undefined ? [] : [runtimeExplained(ups)])];
}

/** The power that the site takes from the mains. */
export function totalExplained(plan: Plan): Explanation {
  const { total, feeding, power, undeclared } = plan.supply();
  const roots = plan.site.devices.filter((device) => feeding.of(device).by === 'mains' && power(device).taken.most > 0);
  return {
    title: 'What the site takes from the mains',
    sentences:
      undeclared.length === 0
        ? []
        : [`Without declared watts, and left out: ${undeclared.map(({ name }) => name).join(', ')}.`],
    columns: COLUMNS,
    lines: roots.map((device) => ({ label: device.name, cells: both(power(device).taken) })),
    total: { label: 'together', cells: both(total) },
    after: [
      {
        label: 'in a year',
        cells: [`${kilowattHours(total)} kWh`, ''],
        formula: `${(total.mean / 1000).toFixed(2)} W on average × 8,760 h`,
      },
    ],
  };
}

function takenExplained(plan: Plan, device: Device, { own, basis, given, taken }: DevicePower): Explanation {
  const { feeding, power, lasts, upses } = plan.supply();
  const lines: ExplanationLine[] = [];
  if (basis !== 'none')
    lines.push({ label: 'own', cells: basis === 'undeclared' ? ['?', '?'] : both(own), formula: BASIS[basis] });
  let hasPoe = false;
  for (const one of feeding.fedBy(device)) {
    const fed = feeding.of(one);
    const of = power(one).taken;
    if (fed.by === 'host' || fed.by === 'mains') continue;
    if (fed.by === 'source') {
      lines.push({ label: one.name, cells: both(of), formula: 'with all that hangs on it' });
      continue;
    }
    hasPoe = true;
    const left = wattsAtPort(fed.feed, of, plan.network.topology.linkAt);
    const lost = left.most - of.most;
    lines.push({
      label: one.name,
      cells: both(left),
      formula: `leaves by ${portName(fed.feed.from)}${lost < 5 ? '' : `, ${(lost / 1000).toFixed(2)} W of it for the cable`}; class ${fed.feed.class.class}`,
    });
  }
  if (hasPoe) {
    const efficiency = device.ownPower?.poeEfficiency ?? ASSUMED_POE_EFFICIENCY;
    const isAssumed = device.ownPower?.poeEfficiency === undefined;
    lines.push({
      label: 'its supply for PoE',
      cells: both(scaled(given, 1e4 / efficiency - 1)),
      formula: `lost, as ${threshold(efficiency)} leave by the ports${isAssumed ? ' (assumed)' : ''}`,
    });
  }
  const fed = feeding.of(device);
  const from = fed.by === 'mains' ? (fed.isDeclared ? 'the mains' : 'the mains (assumed)') : fed.device.name;
  return {
    title: `${device.name}: power`,
    sentences: [`It is fed from ${from}${upses.length === 0 ? '' : `; without mains it ${goesOn(lasts(device))}`}.`],
    columns: COLUMNS,
    lines,
    total: { label: 'taken', cells: both(taken) },
  };
}

function goesOn(lasts: number | undefined): string {
  return lasts === 0 ? 'ends at once' : `goes on for ${lastsWords(lasts)}`;
}

const BASIS: Readonly<Record<Exclude<DevicePower['basis'], 'none'>, string>> = {
  declared: 'as declared',
  class: 'what its PoE class allows, as its watts are undeclared',
  undeclared: 'undeclared, and left out',
};

function runtimeExplained(figures: UpsFigures): Explanation {
  const { device, ups, load, apparent, runtime: time, runtimeByClass, runtimeOfLabel, runtimePeukert } = figures;
  const battery = batteryOf(ups);
  const assumed = (share: number | undefined): string => (share === undefined ? ', assumed' : '');
  const lines: ExplanationLine[] = [
    { label: 'load', cells: [watts(load)] },
    {
      label: 'apparent',
      cells: [voltAmperes(apparent)],
      formula: `power ÷ power factor, ${ASSUMED_POWER_FACTOR} where undeclared`,
    },
  ];
  if (battery !== undefined)
    lines.push(
      { label: 'battery', cells: [wattHours(battery.energy)], formula: 'when new' },
      {
        label: 'efficiency',
        cells: [threshold(battery.efficiency)],
        formula: `of the inverter${assumed(ups.efficiency)}`,
      },
      { label: 'depth', cells: [threshold(battery.depth)], formula: `of its charge is used${assumed(ups.depth)}` },
      { label: 'health', cells: [threshold(battery.health)], formula: `of its capacity is left${assumed(ups.health)}` },
    );
  const known = (value: number | undefined, label: string, formula: string): ExplanationLine[] =>
    value === undefined ? [] : [{ label, cells: [runtime(value)], formula }];
  return {
    title: `${device.name}: how long it lasts`,
    columns: [],
    lines,
    total: {
      label: 'lasts',
      cells: [time === undefined ? '?' : runtime(time)],
      formula:
        ups.chemistry === 'lead-acid'
          ? 'battery × efficiency × depth × health ÷ load, or by Peukert where that is less'
          : 'battery × efficiency × depth × health ÷ load',
    },
    after: [
      ...known(runtimeByClass, 'by classes', 'if each powered device took what its class may'),
      ...known(runtimeOfLabel, 'by its label', 'a new battery, emptied wholly: battery × efficiency ÷ load'),
      ...known(runtimePeukert, 'by Peukert', `a new battery of lead, emptied so fast: k = ${PEUKERT_EXPONENT}, 20 h`),
    ],
  };
}

function both({ most, byClass }: Pick<DevicePower['taken'], 'most' | 'byClass'>): Figure[] {
  return [watts(most), watts(byClass)];
}

function watts(milliwatts: number): Figure {
  return { value: milliwatts / 1000, unit: 'W' };
}

function scaled(
  { most, byClass }: DevicePower['taken'],
  factor: number,
): Pick<DevicePower['taken'], 'most' | 'byClass'> {
  return { most: most * factor, byClass: byClass * factor };
}
