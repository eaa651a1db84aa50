/** Links, streams, other traffic and lines to the Internet. */

import { type Link, oppositePort } from '../../network/link.ts';
import { obstacleWords } from '../../network/obstacle-words.ts';
import { trafficAsStream, trafficRates } from '../../network/traffic.ts';
import { type UplinkWay, uplinksOf } from '../../network/uplinks.ts';
import type { Plan } from '../../plan.ts';
import { isRateKnown } from '../../site/media.ts';
import { type Port, portName } from '../../site/model.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { groupMac } from '../../standards/multicast.ts';
import { bitRate } from '../../text/words.ts';
import { isLoadKnown, sumWords } from '../answer/words.ts';
import { boundsOf } from '../bounds.ts';
import {
  type Cell,
  type Naming,
  type Row,
  figure,
  html,
  namesCell,
  shareCell,
  signWords,
  table,
  text,
  word,
} from './cells.ts';

/** The id of the row of a link, by its number in the plan. */
export function linkRow(index: number): string {
  return `link-${index + 1}`;
}

export function linksSection(plan: Plan, naming: Naming): string {
  const { links } = plan.network.topology;
  return table({
    title: 'Links',
    note: `Line rate: Ethernet frames with preamble and gaps. ${signWords(boundsOf(plan.site.policies.linkLoad))}`,
    head: ['Link', 'Speed', 'Nominal', 'Peak', 'Of the speed', 'Streams'],
    rows: links.flatMap((link, index): Row[] => {
      const id = linkRow(index);
      const loaded = [link.a, link.b].some((out) => plan.network.load(link, out).line.peak > 0);
      if (link.blocked !== undefined && !loaded)
        return [
          {
            id,
            cells: [
              ends(naming, link.a, link.b),
              speed(link),
              figure(''),
              figure(''),
              figure(''),
              text('idle: spanning tree blocks it'),
            ],
          },
        ];
      return [
        { id, cells: direction(plan, naming, link, link.a) },
        { cells: direction(plan, naming, link, link.b), part: true },
      ];
    }),
  });
}

function ends(naming: Naming, from: Port, to: Port): Cell {
  const end = (port: Port): string => naming({ names: 'ports', name: portName(port) });
  return { html: `${end(from)} → ${end(to)}` };
}

function speed({ capacity, members }: Link): Cell {
  if (capacity === undefined) return figure('?');
  const cables = members.length;
  return figure(cables === 1 ? bitRate(capacity) : `${cables} × ${bitRate(capacity / cables)}`);
}

function direction(plan: Plan, naming: Naming, link: Link, out: Port): Cell[] {
  const { network, site } = plan;
  const { nominal, peak } = network.load(link, out).line;
  const isKnown = isLoadKnown(plan, link, out);
  const { capacity } = link;
  const share = capacity === undefined || capacity === 0 ? undefined : peak / capacity;
  const streams = network.copies(link, out).map(({ stream }) => stream.name);
  const others = network.trafficCopies(link, out).map(({ traffic }) => traffic.name);
  return [
    ends(naming, out, oppositePort(link, out)),
    speed(link),
    figure(sumWords(nominal, isKnown)),
    figure(sumWords(peak, isKnown)),
    shareCell(share, boundsOf(site.policies.linkLoad), isKnown),
    {
      html: [namesCell(naming, 'streams', streams).html, namesCell(naming, 'traffic', others).html]
        .filter((part) => part !== '')
        .join(', '),
    },
  ];
}

export function streamsSection(plan: Plan, naming: Naming): string {
  const { network, site } = plan;
  const missed = network.deliveries.flatMap(({ stream, unreached }) =>
    unreached.map(({ receiver, why }) => {
      const { what, remedy } = obstacleWords(why, receiver, stream);
      const names = `${naming({ names: 'streams', name: stream.name })} does not reach ${naming({ names: 'devices', name: receiver })}`;
      return `<p>${names}: ${html(`${what}; ${remedy}`)}.</p>\n`;
    }),
  );
  return table({
    title: 'Streams',
    note: 'Line rate of one copy, without a VLAN tag.',
    head: ['Stream', 'Group', 'MAC', 'Nominal', 'Peak', 'Reaches'],
    rows: network.deliveries.map(({ stream, reaches }) => {
      const { line } = network.rates(stream).untagged;
      const isKnown = isRateKnown(site, stream);
      const { group } = stream;
      return {
        cells: [
          { html: naming({ names: 'streams', name: stream.name }) },
          word(group === undefined ? 'unicast' : formatAddress(group)),
          group === undefined || !isMulticast(group) ? text('') : word(groupMac(group)),
          figure(sumWords(line.nominal, isKnown)),
          figure(sumWords(line.peak, isKnown)),
          reaches.length === 0 ? text('nobody') : namesCell(naming, 'devices', reaches),
        ],
      };
    }),
    after: missed.join(''),
  });
}

export function trafficSection({ network }: Plan, naming: Naming): string {
  const end = (name: string | undefined): Cell =>
    name === undefined ? text('?') : { html: naming({ names: 'devices', name }) };
  const missed = network.traffic.flatMap(({ traffic, from, to, obstacle }) => {
    if (from !== undefined && to !== undefined && obstacle === undefined) return [];
    const words =
      obstacle === undefined || to === undefined
        ? undefined
        : obstacleWords(obstacle, to.name, trafficAsStream(traffic, to));
    const why = words === undefined ? 'one of its ends is no device of the site' : `${words.what}; ${words.remedy}`;
    return [`<p>${naming({ names: 'traffic', name: traffic.name })} does not get there: ${html(why)}.</p>\n`];
  });
  return table({
    title: 'Other traffic',
    note: 'Line rate without a VLAN tag, acknowledgements included.',
    head: ['Traffic', 'From', 'To', 'There', 'Back'],
    rows: network.traffic.map(({ traffic }) => {
      const { untagged, reply } = trafficRates(traffic);
      const isKnown = traffic.rate !== undefined;
      return {
        cells: [
          { html: naming({ names: 'traffic', name: traffic.name }) },
          end(traffic.from),
          end(traffic.to),
          figure(sumWords(untagged.line.peak, isKnown)),
          figure(sumWords(reply.untagged.line.peak, isKnown)),
        ],
      };
    }),
    after: missed.join(''),
  });
}

export function uplinksSection(plan: Plan, naming: Naming): string {
  const bounds = boundsOf(plan.site.policies.linkLoad);
  return table({
    title: 'Lines to the Internet',
    note: `Frames with FCS. ${signWords(bounds)}`,
    head: ['Line', 'Way', 'Rate', 'Nominal', 'Peak', 'Of the rate'],
    rows: uplinksOf(plan.site.devices, plan.network).flatMap(({ device, down, up }) =>
      [down, up].map(({ way, rate, load, link, out }: UplinkWay, index) => {
        const isKnown = isLoadKnown(plan, link, out);
        return {
          cells: [
            { html: naming({ names: 'devices', name: device.name }) },
            text(way),
            figure(rate === undefined ? '?' : bitRate(rate)),
            figure(sumWords(load.nominal, isKnown)),
            figure(sumWords(load.peak, isKnown)),
            shareCell(rate === undefined || rate === 0 ? undefined : load.peak / rate, bounds, isKnown),
          ],
          part: index > 0,
        };
      }),
    ),
  });
}
