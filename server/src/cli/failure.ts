import { Command, Option } from 'commander';
import { type Element, elementNamed, noElementWords } from '../failure/element.ts';
import { type Failure, failureOf } from '../failure/failure.ts';
import { type Ranked, allOf, equalsIn, rankingOf } from '../failure/ranking.ts';
import { reasonsWords, remedyWords } from '../failure/reasons.ts';
import { failureWords, groupWords, lossWords, picturesWords } from '../failure/words.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { failureReport, rankingReport } from '../outlook/figures.ts';
import { type Plan, planOf } from '../plan.ts';
import { columns } from '../report/columns.ts';
import { SECOND } from '../standards/time-units.ts';
import { visible } from '../text/visible.ts';
import { bitRate, count, duration, few, list, percent } from '../text/words.ts';
import { visibleJson } from './format/json.ts';
import { print, printMessage } from './print.ts';
import { readSite } from './sites.ts';

/** The most links taking over that are listed. */
const SHOWN = 8;

export function failureCommand(): Command {
  return new Command('failure')
    .description('Print what is lost when something fails, what takes over, whether it fits, and how long that takes.')
    .argument('[NAME]', 'a cable by either end or its label, a device, a UPS, a circuit, a volume, a duct or a rack')
    .option('--all', 'each of them, by what is lost with it')
    .option('--site <folder>', 'the folder of the site', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
A failed cable is not the same as one removed from the plan: what is plugged in keeps its address and routes, and what
it sends is lost.
What a server sends on is lost with what it carries, and what is fed with what feeds it.

Examples:
  plumbline failure core/16
  plumbline failure --all --site samples/harrow-lane`,
    )
    .action((name: string | undefined, options: { all?: true; site: string; format: string }) => {
      const plan = planOf(readSite(options.site).folder.site());
      const isJson = options.format === 'json';
      if (options.all === true && name !== undefined) throw new CannotDo('Say what fails, or --all, not both.');
      if (options.all === true) {
        const ranking = rankingOf(plan);
        const { ranked, untried } = ranking;
        print(isJson ? `${visibleJson(rankingReport(ranking))}\n` : rankingText(plan, ranked));
        if (untried.length > 0) printMessage(untriedWords(untried));
        return;
      }
      if (name === undefined) throw new CannotDo('Say what fails, or --all.');
      const element = elementNamed(plan, name);
      if (element === undefined) throw new CannotDo(noElementWords(plan, name));
      const failure = failureOf(plan, element);
      print(isJson ? `${visibleJson(failureReport(failure))}\n` : failureText(plan, failure));
    });
}

function failureText(plan: Plan, failure: Failure): string {
  const why = reasonsWords(plan, failure);
  const remedy = remedyWords(plan, failure);
  const { pictures, recordings, cameras, devices, gateways, takeovers, recovery } = failure;
  const names = (all: readonly { readonly name: string }[]): string => list(all.map(({ name }) => name));
  const later = pictures.filter(({ after }) => after > 0);
  const rows = [
    ['recordings', names(recordings)],
    ['cameras', names(cameras)],
    ['pictures', picturesWords(pictures.filter(({ after }) => after === 0)).join('; ')],
    [`after ${duration((later[0]?.after ?? 0) * SECOND)}`, picturesWords(later).join('; ')],
    ['dark with it', names(devices)],
    ...gateways.map(({ vlan, gateway, hosts }) => [
      'gateway',
      `${few(
        hosts.map(({ name }) => name),
        3,
      )} of ${vlan.name} ${hosts.length === 1 ? 'reaches' : 'reach'} no other network${
        vlan.pool === undefined ? '' : `, and no new address if ${gateway.name} hands them out`
      }`,
    ]),
    ...failure.clocks.map(({ vlan, clock, hosts }) => [
      'clock',
      `${few(
        hosts.map(({ name }) => name),
        3,
      )} of ${vlan.name} no longer ${hosts.length === 1 ? 'sets its clock' : 'set their clocks'} by ${clock.name}: ` +
        'they drift by some seconds a day',
    ]),
    ['why', why],
    ['querier', failure.withoutQuerier.length === 0 ? '' : `there is none left in ${list(failure.withoutQuerier)}`],
  ].filter(([, words]) => words !== '');
  const over = takeovers
    .slice(0, SHOWN)
    .map(({ at, before, after, capacity, fits }) => [
      at,
      bitRate(before),
      '→',
      bitRate(after),
      capacity === undefined || capacity === 0 ? '' : `${percent(after, capacity)} of ${bitRate(capacity)}`,
      fits === false ? 'too much' : '',
    ]);
  return [
    visible(failureWords(failure), 1000),
    ...(rows.length === 0 ? [] : ['', ...columns(cells(rows), ['left', 'left']).map((line) => `  ${line}`)]),
    ...(over.length === 0
      ? []
      : [
          '',
          'Links that carry more, at peak:',
          ...columns(cells(over), ['left', 'right', 'left', 'right']).map((line) => `  ${line}`),
        ]),
    ...(remedy === '' ? [] : ['', remedy]),
    ...remarks(failure).flatMap((remark) => ['', remark]),
    '',
  ].join('\n');

  function remarks({ otherwise }: Failure): string[] {
    return [
      ...(recovery === undefined || recovery.frames === 0
        ? []
        : [
            `The ${recovery.frames} s are by the timers of IEEE 802.1D; where all switches have the rapid protocol ` +
              'it is a second or so, and 6 s at most. A recorder may have to start its connections anew.',
          ]),
      ...(otherwise === undefined
        ? []
        : [
            `A host that gives up the routes of a card without carrier goes by its other one, and then this is lost: ${
              lossWords({ ...otherwise, cameras: [] }) || 'nothing'
            }.`,
          ]),
    ];
  }
}

/** The rows made safe for printing. */
function cells(rows: readonly (readonly string[])[]): string[][] {
  return rows.map((row) => row.map((cell) => visible(cell, 2000)));
}

function untriedWords(untried: readonly Element[]): string {
  const names = few(
    untried.map(({ name }) => name),
    3,
  );
  return `The site is too large to try all: ${count(untried.length, 'thing')} more, ${visible(names, 300)}. Ask for one by name.\n`;
}

function rankingText(plan: Plan, ranking: readonly Ranked[]): string {
  if (ranking.length === 0) {
    const { recordings, pictures } = allOf(plan);
    const isIdle = recordings + pictures === 0;
    return isIdle
      ? 'Nothing is shown or recorded here, so nothing is lost.\n'
      : 'Nothing is lost, whatever fails alone.\n';
  }
  const rows = equalsIn(ranking).map((group) => {
    const [{ recordings, cameras, pictures, losesFootage }] = group;
    return [
      String(recordings.length),
      String(cameras.length),
      String(pictures.length),
      `${groupWords(group.map(({ element }) => element))}${losesFootage ? ', with the footage on it' : ''}`,
    ];
  });
  const head = ['recordings', 'cameras', 'pictures', 'are lost with'];
  return `${columns(cells([head, ...rows]), ['right', 'right', 'right', 'left']).join('\n')}\n`;
}
