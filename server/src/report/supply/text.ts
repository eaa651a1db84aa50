/** Power as tables for a terminal. */

import type { Plan } from '../../plan.ts';
import type { DevicePower } from '../../supply/device-power.ts';
import { visible } from '../../text/visible.ts';
import { aboutWatts, percent, runtime, voltAmperes } from '../../text/words.ts';
import { type Align, columns } from '../columns.ts';
import { ASSUMPTIONS, CAUTIONS } from './assumed.ts';
import { camerasOn, kilowattHours, supplyReport, takesPower } from './figures.ts';
import { TURN_NOTE, lastsWords, outageWords, turnsWords } from './words.ts';

/** All that `plumbline power` prints. */
export function powerText(plan: Plan): string {
  const parts = [outageWords(plan), ...powerTables(plan), notes('Assumed where the site says nothing', ASSUMPTIONS)];
  return `${[...parts, notes('Mind', CAUTIONS)].join('\n\n')}\n`;
}

/** The sections for the report: all but the assumptions, which `plumbline power` prints. */
export function powerSections(plan: Plan): string[] {
  if (!plan.supply().isDeclared) return [];
  return [`Power: ${outageWords(plan)}`, ...powerTables(plan), notes('Mind', CAUTIONS)];
}

function powerTables(plan: Plan): string[] {
  return [upses(plan), cameras(plan), devices(plan), racks(plan), total(plan)].filter((part) => part !== '');
}

function upses(plan: Plan): string {
  const rows = plan.supply().upses.map((figures) => {
    const { device, ups, load, apparent, runtime: time, runtimeByClass, undeclared } = figures;
    const more = undeclared.length === 0 ? '' : ' + ?';
    const share = (part: number, whole: number | undefined): string =>
      whole === undefined || whole === 0 ? '?' : percent(part, whole);
    return [
      visible(device.name),
      `${aboutWatts(load)}${more}`,
      share(load, ups.ratedPower),
      `${voltAmperes(apparent)}${more}`,
      share(apparent, ups.rated),
      time === undefined ? '?' : runtime(time),
      runtimeByClass === undefined ? '?' : runtime(runtimeByClass),
      `${camerasOn(plan, figures).length} of ${plan.cameraRuntimes().length}`,
    ];
  });
  const head = ['UPS', 'load', 'of it', 'apparent', 'of it', 'lasts', 'by classes', 'cameras'];
  return section('UPS', 'at most; by classes: if each powered device took what its class may', head, rows);
}

function cameras(plan: Plan): string {
  const { upses: all } = plan.supply();
  if (all.length === 0) return '';
  const lives = plan.cameraRuntimes();
  const turning = lives.some(({ turns }) => turns.length > 0);
  const rows = lives.map(({ camera, lasts, chain, endsAt, turns }) => [
    visible(camera.name),
    chain.length === 0 ? 'no receiver' : lastsWords(lasts),
    ...(turning ? [turnsWords(turns)] : []),
    visible(endsAt?.name ?? ''),
    chain.map(({ name }) => visible(name)).join(' → '),
  ]);
  const head = ['camera', 'lasts', ...(turning ? ['another way'] : []), 'ends at', 'needs'];
  const table = section('Cameras without mains', '', head, rows, ['left', 'right', 'left', 'left', 'left']);
  return turning ? `${table}\n  (${TURN_NOTE})` : table;
}

function devices(plan: Plan): string {
  const { feeding, power, lasts, upses: all } = plan.supply();
  const rows = plan.site.devices
    .filter((device) => takesPower(plan, device))
    .map((device) => {
      const { own, basis, taken, undeclared } = power(device);
      const fed = feeding.of(device);
      const more = undeclared.length === 0 ? '' : ' + ?';
      return [
        visible(device.name),
        fed.by === 'mains' ? (fed.isDeclared ? 'mains' : 'mains?') : visible(fed.device.name),
        ownWattsWords(basis, own.most),
        taken.most === 0 ? '?' : `${aboutWatts(taken.most)}${more}`,
        taken.byClass === 0 ? '?' : `${aboutWatts(taken.byClass)}${more}`,
        ...(all.length === 0 ? [] : [lastsWords(lasts(device))]),
      ];
    });
  const head = ['device', 'fed from', 'own', 'with all on it', 'by classes', ...(all.length === 0 ? [] : ['lasts'])];
  return section('Devices', 'at most; ? where the site does not say', head, rows, [
    'left',
    'left',
    'right',
    'right',
    'right',
    'right',
  ]);
}

/** `9.5 W`, `13 W by class`; empty for a device without watts of its own, such as a UPS. */
export function ownWattsWords(basis: DevicePower['basis'], most: number): string {
  if (basis === 'none') return '';
  if (basis === 'undeclared') return '?';
  return basis === 'class' ? `${aboutWatts(most)} by class` : aboutWatts(most);
}

function racks(plan: Plan): string {
  const rows = supplyReport(plan)
    .racks.filter(({ heat }) => heat > 0)
    .map(({ rack, heat }) => [visible(rack), aboutWatts(heat * 1000), `${Math.round(heat * BTU_PER_WATT_HOUR)} BTU/h`]);
  return section('Heat of racks', 'all that is drawn in one, and not fed to others', ['rack', 'heat', ''], rows);
}

/** By the definition of the international table. */
const BTU_PER_WATT_HOUR = 3.412;

function total(plan: Plan): string {
  const { total: sum, undeclared } = plan.supply();
  const missing = undeclared.length === 0 ? '' : `, not counting ${undeclared.length} without figures`;
  return (
    `From the mains: ${aboutWatts(sum.mean)} on average, ${aboutWatts(sum.most)} at most, ` +
    `${aboutWatts(sum.byClass)} by classes; ${Math.round(kilowattHours(sum))} kWh in a year${missing}.`
  );
}

function section(
  title: string,
  note: string,
  head: readonly string[],
  rows: readonly (readonly string[])[],
  align: readonly Align[] = ['left', ...head.slice(1).map((): Align => 'right')],
): string {
  if (rows.length === 0) return '';
  const lines = columns([head, ...rows], align).map((line) => `  ${line}`);
  return [`${title}${note === '' ? '' : ` (${note})`}`, ...lines].join('\n');
}

function notes(title: string, all: readonly string[]): string {
  return [`${title}:`, ...all.map((one) => `  - ${one}`)].join('\n');
}
