import { Command, Option } from 'commander';
import { type Headroom, headroomOf } from '../headroom/headroom.ts';
import { triedAtOnce } from '../headroom/tried-at-once.ts';
import { ALLOTTED, headroomWords, nextWords, panelWords } from '../headroom/words.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { notThereWords } from '../outlook/explain.ts';
import { headroomReport, untriedHeadroomReport } from '../outlook/figures.ts';
import { type Plan, planOf } from '../plan.ts';
import { columns } from '../report/columns.ts';
import type { Device } from '../site/model.ts';
import { visible } from '../text/visible.ts';
import { count } from '../text/words.ts';
import { visibleJson } from './format/json.ts';
import { print, printMessage } from './print.ts';
import { readSite } from './sites.ts';

/** The most rows for one kind of limit. */
const SHOWN = 5;

export function headroomCommand(): Command {
  return new Command('headroom')
    .description(
      'Print how many more cameras like this one fit at a switch, what stops the next one, and what would stop more.',
    )
    .argument('CAMERA', 'the camera to add more of')
    .argument('[SWITCH]', 'the switch that they are plugged into (default: each, in a row)')
    .option('--site <folder>', 'the folder of the site', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
Each added camera has the same streams, receivers and recordings, and servers do the same with them. The site is planned
and checked with them: that many bring no new error, and one more does.

Examples:
  plumbline headroom gate-cam core
  plumbline headroom gate-cam --site samples/harrow-lane`,
    )
    .action((cameraName: string, switchName: string | undefined, options: { site: string; format: string }) => {
      const plan = planOf(readSite(options.site).folder.site());
      const { devices } = plan.site;
      const camera = named(
        'camera',
        cameraName,
        devices.filter(({ kind }) => kind === 'camera'),
      );
      const switches = devices.filter(takesCameras);
      if (switchName !== undefined) {
        const found = headroomOf(plan, camera, named('switch', switchName, switches));
        print(options.format === 'json' ? `${visibleJson(headroomReport(found))}\n` : whole(found));
        return;
      }
      const tried = switches.slice(0, triedAtOnce(plan));
      const rows = tried.map((at) => headroomOf(plan, camera, at));
      const untried = switches.slice(tried.length).map((at) => untriedHeadroomReport(camera, at));
      print(
        options.format === 'json' ? `${visibleJson([...rows.map(headroomReport), ...untried])}\n` : inRows(plan, rows),
      );
      if (untried.length > 0)
        printMessage(
          `The site is too large to try ${count(untried.length, 'switch', 'switches')} more. Ask for one by name.\n`,
        );
    });
}

/** Whether the device has ports to plug cameras into. */
function takesCameras({ kind, ports }: Device): boolean {
  return kind === 'switch' || (kind === 'router' && ports.some(({ forwards }) => forwards));
}

function named(what: string, name: string, all: readonly Device[]): Device {
  const found = all.find((device) => device.name === name);
  if (found !== undefined) return found;
  throw new CannotDo(notThereWords(what, name, all));
}

function whole(headroom: Headroom): string {
  const { limits } = headroom;
  const ofKind = (index: number): number =>
    limits.slice(0, index).filter(({ limit }) => limit === limits[index]?.limit).length;
  const shown = limits.filter((_, index) => ofKind(index) < SHOWN);
  const rows = shown.map(({ limit, at, more, words }) => [limit, visible(at), String(more ?? '?'), visible(words)]);
  const hidden = limits.length - shown.length;
  const isFed = shown.some(({ limit, at }) => limit === 'power' && at === headroom.at.name);
  const notes = [...panelWords(headroom), ...(isFed ? [ALLOTTED] : [])];
  return [
    visible(headroomWords(headroom), 1000),
    ...[nextWords(headroom)].filter((words) => words !== '').map((words) => visible(words)),
    '',
    'Each limit taken alone:',
    ...columns(rows, ['left', 'left', 'right', 'left']).map((line) => `  ${line}`),
    ...(hidden === 0 ? [] : [`  and ${count(hidden, 'link')} with more room`]),
    ...notes.flatMap((note) => ['', visible(note)]),
    '',
  ].join('\n');
}

function inRows({ site }: Plan, rows: readonly Headroom[]): string {
  if (rows.length === 0) return `${visible(site.name ?? 'The site')} has no switch.\n`;
  const cells = rows.map(({ at, more, stop }) => [at.name, String(more), visible(stop, 1000)]);
  return `${columns(cells, ['left', 'right', 'left']).join('\n')}\n`;
}
