/** The sites that are built: files, and variants with a few changed words. */

import { readFileSync, readdirSync } from 'node:fs';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import type { Site } from '../../server/src/site/model.ts';
import { randomSite } from './random-site.ts';

export interface Case {
  readonly title: string;
  readonly plan: () => Plan;
}

/** A file of `sites/` in which each key of `changes` is replaced, wherever it stands, by its value. */
function site(file: string, title: string, changes: Readonly<Record<string, string>> = {}): Case {
  return {
    title,
    plan: () => {
      let text = readFileSync(new URL(`./sites/${file}.site.yaml`, import.meta.url), 'utf8');
      for (const [from, to] of Object.entries(changes)) {
        if (!text.includes(from)) throw new Error(`${file}.site.yaml has no '${from}'`);
        text = text.replaceAll(from, to);
      }
      return planFrom({ [`${file}.site.yaml`]: text });
    },
  };
}

/** A site of these files, by name. */
export function folderOf(files: Readonly<Record<string, string>>): SiteFolder {
  const folder = new SiteFolder();
  for (const [name, text] of Object.entries(files)) folder.set(`file:///lab/${name}`, text);
  return folder;
}

/** @throws where the site is not written as its schema asks */
export function planFrom(files: Readonly<Record<string, string>>): Plan {
  return planOf(siteFrom(files));
}

/** The same site without other traffic, which no host sends there. */
export function planOfStreams(files: Readonly<Record<string, string>>): Plan {
  return planOf({ ...siteFrom(files), traffic: [] });
}

function siteFrom(files: Readonly<Record<string, string>>): Site {
  const built = folderOf(files).site();
  const problem = built.items.flatMap((item) => item.problems)[0];
  if (problem !== undefined) throw new Error(`the site is not written as it should be: ${JSON.stringify(problem)}`);
  return built;
}

function sample(name: string): Case {
  const folder = new URL(`../../samples/${name}/`, import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith('.site.yaml'));
  return {
    title: `the sample ${name}`,
    plan: () => {
      const texts = Object.fromEntries(files.map((file) => [file, readFileSync(new URL(file, folder), 'utf8')]));
      // Beside the copies of a night, at the part of the rates that is left, streams would be lost in the noise.
      return planOfStreams(texts);
    },
  };
}

/**
 * `PLUMBLINE_LAB_NUMBERS=17,18` builds the sites of these numbers instead of the usual ones. 22 and 26 are kept
 * because they disagreed once: a switch forgets memberships that it learns only by a router port.
 */
const NUMBERS = (process.env['PLUMBLINE_LAB_NUMBERS'] ?? '1,2,3,4,8,22,26').split(',').map(Number);

const NO_QUERIER = { ', querier: ask1': '' };
const ONE_OF_TWO = { 'view2: {kind: display,': 'view2: {kind: display, decoders: 1,' };
const FLOOD = { 'unregistered-multicast: drop': 'unregistered-multicast: flood' };

export const FAMILY: readonly Case[] = [
  site('line', 'A: a querier at the first of three switches in a line, unregistered groups dropped'),
  site('line', 'B: no querier, dropped', NO_QUERIER),
  site('line', 'C: no querier, the trunks forward reports, dropped', {
    ...NO_QUERIER,
    '{trunk: [house, video]}': '{trunk: [house, video], forward-reports: true}',
  }),
  site('line', 'D: a querier at the first switch, flooded', FLOOD),
  site('line', 'E: no querier, flooded', { ...NO_QUERIER, ...FLOOD }),
  site('line', 'a querier, flooded, and a screen that shows one of its two groups at a time', {
    ...FLOOD,
    ...ONE_OF_TWO,
  }),
  site('line', 'a querier, dropped, and a screen that shows one of its two groups at a time', ONE_OF_TWO),
  site('line', 'F: snooping off', { 'igmp-snooping: true': 'igmp-snooping: false' }),
  site('line', 'G: a querier at the last switch, dropped', { 'querier: ask1': 'querier: ask3' }),
  site('line', 'no querier, ports towards the middle set as router ports', {
    ...NO_QUERIER,
    's2: {trunk: [house, video]}': 's2: {trunk: [house, video], router-port: true}',
  }),
  site('line', 'snooping off in the middle only', {
    's2:\n    kind: switch\n    igmp-snooping: true': 's2:\n    kind: switch\n    igmp-snooping: false',
  }),
  site('querier-receives', 'a querier that is the only receiver, flooded'),
  site('one-armed-router', 'unicast through a router on one cable'),
  site('two-gateways', 'two gateways, so that what comes back passes another router'),
  site('two-gateways', 'a receiver that has no gateway to ask the camera by', { ', gateway: attic-router': '' }),
  site('two-ports', 'a server with two ports and a multicast route'),
  site('two-ports', 'a server with two ports and no multicast route', {
    '    routes: [{to: 224.0.0.0/4, port: cams}]\n': '',
  }),
  site('groups', 'two groups on one MAC address, 224.0.0.x, a receiver in another VLAN'),
  site('routed', 'multicast routers and the TTL'),
  site('unmanaged', 'an unmanaged switch, an access point, a media converter, two hosts on one cable'),
  site('ring', 'three switches in a ring with spanning tree'),
  site('ring', 'a ring, unregistered groups flooded', FLOOD),
  site('ring', 'a ring without snooping', { 'igmp-snooping: true': 'igmp-snooping: false' }),
  site('ring', 'a ring without a querier', { ', querier: s1': '' }),
  site('ring', 'a ring with the querier at the idle side', { 'querier: s1': 'querier: s3' }),
  site('ring', 'a ring whose root the MAC addresses choose', {
    '    spanning-tree-priority: 4096\n': '',
    '  s1:\n    kind: switch': '  s1:\n    mac: "02:00:00:00:00:99"\n    kind: switch',
    '  s2:\n    kind: switch': '  s2:\n    mac: "02:00:00:00:00:50"\n    kind: switch',
    '  s3:\n    kind: switch': '  s3:\n    mac: "02:00:00:00:00:01"\n    kind: switch',
  }),
  site('home-router', 'a home router with switched sockets and one address'),
  site('layer-3', 'a layer-3 switch that routes unicast and multicast'),
  site('layer-3', 'a layer-3 switch that routes unicast alone', { '    multicast-routing: true\n': '' }),
  site('layer-3', 'a layer-3 switch without snooping', { '    igmp-snooping: true\n': '' }),
  site('aggregated', 'three cables as one link'),
  site('traffic', 'other traffic beside streams, within a VLAN and through a router'),
  site('ring', 'the ring cut open: a line with spanning tree', { '  - {from: s1/12, to: s3/11}\n': '' }),
  ...NUMBERS.map((number) => ({
    title: `a random site from the number ${number}`,
    plan: () => planFrom({ 'random.site.yaml': randomSite(number) }),
  })),
  sample('harrow-lane'),
];
