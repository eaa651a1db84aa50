import { Command, Option } from 'commander';
import { closest } from 'fastest-levenshtein';
import { type Element, elementNamed, elementNames } from '../failure/element.ts';
import { type Failure, failureOf } from '../failure/failure.ts';
import { type Ranked, rankingOf } from '../failure/ranking.ts';
import { failureWords, groupWords, lossWords, picturesWords } from '../failure/words.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { planOf } from '../plan.ts';
import { columns } from '../report/columns.ts';
import { visible } from '../text/visible.ts';
import { bitRate, few, list, percent } from '../text/words.ts';
import { visibleJson } from './format/json.ts';
import { print } from './print.ts';
import { readSite } from './sites.ts';

/** Links that take over, as many as anybody reads. */
const SHOWN = 8;

export function failureCommand(): Command {
  return new Command('failure')
    .description('Print what is lost when something fails, what takes over, whether it fits, and how long that takes.')
    .argument('[NAME]', 'a cable by either end or its label, a device, a volume, a duct or a rack')
    .option('--all', 'each of them, by what is lost with it')
    .option('--site <folder>', 'the folder of the site', '.')
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
A failed cable is not one that is taken away: whoever is plugged in keeps address and routes, and sends into nothing.
What a server sends on is lost with what it carries, and what is fed with what feeds it.

Examples:
  plumbline failure core/16
  plumbline failure --all --site samples/harrow-lane`,
    )
    .action((name: string | undefined, options: { all?: true; site: string; format: string }) => {
      const plan = planOf(readSite(options.site).folder.site());
      const isJson = options.format === 'json';
      if (options.all === true) {
        const ranking = rankingOf(plan);
        print(isJson ? `${visibleJson(ranking.map(rankedJson))}\n` : rankingText(ranking));
        return;
      }
      if (name === undefined) throw new CannotDo('Say what fails, or --all.');
      const element = elementNamed(plan, name);
      if (element === undefined)
        throw new CannotDo(`Nothing here is called ${name}. The nearest is ${closest(name, [...elementNames(plan)])}.`);
      const failure = failureOf(plan, element);
      print(isJson ? `${visibleJson(failureJson(failure))}\n` : failureText(failure));
    });
}

function elementJson({ kind, name }: Element): object {
  return { kind, name };
}

function rankedJson({ element, recordings, cameras, pictures, losesFootage }: Ranked): object {
  return {
    element: elementJson(element),
    recordings: recordings.length,
    cameras: cameras.length,
    pictures: pictures.length,
    losesFootage,
  };
}

function failureJson(failure: Failure): object {
  const { element, pictures, recordings, cameras, devices, footage, gateways, takeovers, recovery } = failure;
  return {
    element: elementJson(element),
    pictures: pictures.map(({ stream, receiver, after }) => ({ stream: stream.name, receiver, after })),
    recordings: recordings.map(({ name }) => name),
    cameras: cameras.map(({ name }) => name),
    dark: devices.map(({ name }) => name),
    footage: footage.map(({ volume, fate, bytes, rebuild }) => ({
      volume: volume.name,
      fate,
      bytes,
      rebuild: rebuild === undefined ? null : Math.round(rebuild),
    })),
    gateways: gateways.map(({ vlan, gateway, hosts }) => ({
      vlan: vlan.name,
      gateway: gateway.name,
      hosts: hosts.map(({ name }) => name),
    })),
    withoutQuerier: failure.withoutQuerier,
    takesOver: takeovers.map(({ at, before, after, capacity, fits }) => ({
      at,
      before,
      after,
      capacity: capacity ?? null,
      fits: fits ?? null,
    })),
    backAfter: recovery === undefined ? null : { frames: recovery.frames, groups: recovery.frames + recovery.groups },
  };
}

function failureText(failure: Failure): string {
  const { pictures, recordings, cameras, devices, gateways, takeovers, recovery } = failure;
  const names = (all: readonly { readonly name: string }[]): string => list(all.map(({ name }) => name));
  const later = pictures.filter(({ after }) => after > 0);
  const rows = [
    ['recordings', names(recordings)],
    ['cameras', names(cameras)],
    ['pictures', list(picturesWords(pictures.filter(({ after }) => after === 0)))],
    [`after ${later[0]?.after ?? 0} s`, list(picturesWords(later))],
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
    [
      'querier',
      failure.withoutQuerier.length === 0 ? '' : `nobody asks for memberships in ${list(failure.withoutQuerier)}`,
    ],
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

/** As they may be printed. */
function cells(rows: readonly (readonly string[])[]): string[][] {
  return rows.map((row) => row.map((cell) => visible(cell, 2000)));
}

function rankingText(ranking: readonly Ranked[]): string {
  if (ranking.length === 0) return 'Nothing is lost, whatever fails alone.\n';
  const groups = new Map<string, Ranked[]>();
  for (const ranked of ranking) {
    const { element, recordings, cameras, pictures, losesFootage } = ranked;
    const key = [element.kind, recordings.length, cameras.length, pictures.length, losesFootage].join();
    groups.set(key, [...(groups.get(key) ?? []), ranked]);
  }
  const rows = [...groups.values()].map((group) => {
    const [{ recordings, cameras, pictures, losesFootage }] = group as [Ranked, ...Ranked[]];
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
