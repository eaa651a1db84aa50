/** What crosses the line to the Internet in each direction, of what the provider gives. */

import type { Uplink, UplinkWay } from '../../network/uplinks.ts';
import { loadOf } from '../../network/loads.ts';
import type { Load } from '../../network/rates.ts';
import type { Plan } from '../../plan.ts';
import { type Explanation, type ExplanationLine, RATES } from './explanation.ts';
import { type Figure, rates } from './figure.ts';

export function uplinkExplained(plan: Plan, { device, down, up }: Uplink): Explanation[] {
  return [up, down].map((way) => ({
    title: `${device.name}: ${way.way === 'up' ? 'up, from the house' : 'down, towards the house'}`,
    sentences: ['In frames with FCS, without preamble and gap, which the line of a provider does not have.'],
    columns: RATES,
    lines: linesOf(plan, way),
    total: { label: 'in all', cells: rates(way.load) },
    ...(way.rate !== undefined && { after: shares(way.rate, way.load) }),
  }));
}

function linesOf({ network }: Plan, { link, out }: UplinkWay): ExplanationLine[] {
  return [
    ...network.copies(link, out).map((copies) => ({
      label: copies.stream.name,
      cells: rates(loadOf(copies, network.rates(copies.stream)).frameWithFcs),
    })),
    ...network.trafficCopies(link, out).map((copies) => ({
      label: copies.traffic.name,
      cells: rates(loadOf(copies, copies.rates).frameWithFcs),
      formula: 'other traffic',
    })),
  ];
}

function shares(rate: number, load: Load): ExplanationLine[] {
  const share = (part: keyof Load): Figure => ({ value: rate === 0 ? 0 : (load[part] / rate) * 100, unit: '%' });
  return [
    { label: 'the line gives', cells: rates({ nominal: rate, peak: rate }), formula: 'as declared' },
    { label: 'of that', cells: [share('nominal'), share('peak')] },
  ];
}
