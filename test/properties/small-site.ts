// Small sites at random: a tree of switches or a ring of them, cameras pulled by a server that re-sends some as
// multicast, screens that watch, now and then a router and a second network card.

import fc from 'fast-check';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

/** An entry or element of a section, as data. */
export interface Entry {
  readonly section: string;
  readonly name: string | undefined;
  readonly data: unknown;
}

export interface SmallSite {
  readonly switches: readonly { readonly snooping: boolean; readonly drop: boolean; readonly parent: number }[];
  /** A further cable between the first switch and the last, which spanning tree has to cut. */
  readonly ring: boolean;
  readonly querier: number | undefined;
  readonly router: { readonly at: number; readonly multicast: boolean } | undefined;
  readonly server: { readonly at: number; readonly secondCard: boolean; readonly route: boolean };
  readonly cameras: readonly {
    readonly at: number;
    readonly bitrate: number;
    readonly peak: number | undefined;
    readonly audio: boolean;
  }[];
  readonly screens: readonly { readonly at: number; readonly vlan: 'house' | 'video' }[];
  readonly groups: readonly {
    readonly camera: number;
    readonly transport: 'rtp' | 'ts-udp' | 'ts-rtp';
    readonly ttl: number;
    readonly screens: readonly number[];
  }[];
  /** Screens that pull a camera by themselves. */
  readonly pulls: readonly { readonly camera: number; readonly screen: number }[];
  readonly keep: number;
}

interface Choices {
  /** Whether groups that nobody joined may be flooded. */
  readonly flooding?: boolean;
}

export function smallSite({ flooding = true }: Choices = {}): fc.Arbitrary<SmallSite> {
  return fc.integer({ min: 1, max: 4 }).chain((count) => {
    const at = fc.nat({ max: count - 1 });
    const few = <T>(one: fc.Arbitrary<T>, minLength = 0, maxLength = 4): fc.Arbitrary<T[]> =>
      fc.array(one, { minLength, maxLength });
    return fc.record({
      switches: fc.tuple(
        ...Array.from({ length: count }, (_, index) =>
          fc.record({
            snooping: fc.boolean(),
            drop: flooding ? fc.boolean() : fc.constant(true),
            parent: fc.nat({ max: Math.max(0, index - 1) }),
          }),
        ),
      ),
      ring: fc.boolean(),
      querier: fc.option(at, { nil: undefined }),
      router: fc.option(fc.record({ at, multicast: fc.boolean() }), { nil: undefined }),
      server: fc.record({ at, secondCard: fc.boolean(), route: fc.boolean() }),
      cameras: few(
        fc.record({
          at,
          bitrate: fc.integer({ min: 1, max: 40_000 }),
          peak: fc.option(fc.nat({ max: 9000 }), { nil: undefined }),
          audio: fc.boolean(),
        }),
        1,
      ),
      screens: few(fc.record({ at, vlan: fc.constantFrom('house' as const, 'video' as const) }), 1),
      groups: few(
        fc.record({
          camera: fc.nat({ max: 3 }),
          transport: fc.constantFrom('rtp' as const, 'ts-udp' as const, 'ts-rtp' as const),
          ttl: fc.integer({ min: 1, max: 3 }),
          screens: fc.uniqueArray(fc.nat({ max: 3 }), { maxLength: 3 }),
        }),
      ),
      pulls: few(fc.record({ camera: fc.nat({ max: 3 }), screen: fc.nat({ max: 3 }) }), 0, 2),
      keep: fc.integer({ min: 1, max: 40 }),
    });
  });
}

/** The site in the site language, an entry at a time. */
export function entriesOf(site: SmallSite): Entry[] {
  const entries: Entry[] = [];
  const add = (section: string, name: string | undefined, data: unknown): void =>
    void entries.push({ section, name, data });
  const ports: Record<string, unknown>[] = site.switches.map(() => ({}));
  const plug = (at: number, port: unknown): string => {
    const own = ports[at] ?? {};
    const name = `p${Object.keys(own).length + 1}`;
    own[name] = port;
    return `switch-${at}/${name}`;
  };
  const speed = '1 Gb/s';
  const trunk = { speed, trunk: ['house', 'video'] };
  const join = (a: string, b: string): void => add('cables', undefined, { from: a, to: b });
  const pick = (list: readonly unknown[], index: number): number => index % list.length;

  const asks = site.querier === undefined ? {} : { querier: `switch-${site.querier}` };
  const leads = site.router === undefined ? {} : { gateway: 'router' };
  add('site', 'name', 'Harrow Lane');
  add('vlans', 'house', { id: 10, subnet: '192.168.10.0/24', ...leads });
  add('vlans', 'video', { id: 20, subnet: '192.168.20.0/24', ...leads, ...asks });

  site.switches.forEach(({ parent }, index) => {
    if (index > 0) join(plug(parent, trunk), plug(index, trunk));
  });
  const last = site.switches.length - 1;
  if (site.ring && last >= 2 && site.switches[last]?.parent !== 0) join(plug(0, trunk), plug(last, trunk));

  const { server, router } = site;
  const cards = {
    cams: { speed, address: '192.168.20.5' },
    ...(server.secondCard && { lan: { speed, address: '192.168.10.5' } }),
  };
  const routes = [
    { to: 'default', port: server.secondCard ? 'lan' : 'cams' },
    ...(server.route ? [{ to: '224.0.0.0/4', port: 'cams' }] : []),
  ];
  add('devices', 'recorder', { kind: 'server', ports: cards, routes });
  join(plug(server.at, { speed, vlan: 'video' }), 'recorder/cams');
  if (server.secondCard) join(plug(server.at, { speed, vlan: 'house' }), 'recorder/lan');
  if (router !== undefined) {
    const lan = { ...trunk, addresses: { house: '192.168.10.1', video: '192.168.20.1' } };
    add('devices', 'router', { 'kind': 'router', 'multicast-routing': router.multicast, 'ports': { lan } });
    join(plug(router.at, trunk), 'router/lan');
  }
  site.cameras.forEach(({ at, bitrate, peak, audio }, index) => {
    const name = `cam-${index}`;
    add('devices', name, {
      kind: 'camera',
      address: `192.168.20.${31 + index}`,
      speed: '100 Mb/s',
      poe: { class: index % 5 },
    });
    join(plug(at, { speed, vlan: 'video', poe: 'at' }), name);
    const video = {
      'codec': 'h264',
      'frame-rate': 20,
      'bitrate': `${bitrate} kb/s`,
      ...(peak !== undefined && { 'peak-bitrate': `${bitrate + peak} kb/s` }),
    };
    add('streams', `pull-${index}`, {
      source: name,
      transport: 'rtsp',
      port: 554,
      video,
      ...(audio && { audio: { codec: 'pcma', bitrate: '64 kb/s' } }),
      receivers: [
        'recorder',
        ...site.pulls
          .filter(({ camera }) => pick(site.cameras, camera) === index)
          .map(({ screen }) => `screen-${pick(site.screens, screen)}`),
      ].filter(unlike),
    });
    add('recordings', `rec-${index}`, {
      stream: `pull-${index}`,
      volume: 'archive',
      segment: '60 s',
      keep: `${site.keep} d`,
    });
  });
  add('volumes', 'archive', { host: 'recorder', capacity: '8 TB', reserve: '5 %' });
  site.screens.forEach(({ at, vlan }, index) => {
    const name = `screen-${index}`;
    add('devices', name, {
      kind: 'display',
      speed: '100 Mb/s',
      address: `192.168.${vlan === 'house' ? 10 : 20}.${60 + index}`,
    });
    join(plug(at, { speed, vlan }), name);
  });
  site.groups.forEach(({ camera, transport, ttl, screens }, index) => {
    add('streams', `live-${index}`, {
      source: 'recorder',
      carries: `pull-${pick(site.cameras, camera)}`,
      transport,
      group: `239.192.20.${31 + index}`,
      port: 5004,
      ttl,
      receivers: screens.map((screen) => `screen-${pick(site.screens, screen)}`).filter(unlike),
    });
  });
  site.switches.forEach(({ snooping, drop }, index) => {
    add('devices', `switch-${index}`, {
      'kind': 'switch',
      'igmp-snooping': snooping,
      'unregistered-multicast': drop ? 'drop' : 'flood',
      'poe-budget': '60 W',
      // Of equal priority the name would decide, and renaming would change the tree.
      'spanning-tree': true,
      'spanning-tree-priority': 4096 * (index + 1),
      'ports': ports[index],
    });
  });
  return entries;
}

function unlike(name: string, index: number, all: readonly string[]): boolean {
  return all.indexOf(name) === index;
}

/** The text of a file that holds these entries, in their order. */
export function textOf(entries: readonly Entry[]): string {
  const sections = [...new Set(entries.map(({ section }) => section))];
  return sections
    .map((section) => {
      const lines = entries
        .filter((entry) => entry.section === section)
        .map(({ name, data }) => {
          const value = JSON.stringify(data);
          return name === undefined ? `  - ${value}` : `  ${name}: ${value}`;
        });
      return `${section}:\n${lines.join('\n')}\n`;
    })
    .join('');
}

export function folderOf(...texts: readonly string[]): SiteFolder {
  const folder = new SiteFolder();
  texts.forEach((text, index) => folder.set(`file:///harrow-lane/${index}.site.yaml`, text));
  return folder;
}

export function planFrom(...texts: readonly string[]): Plan {
  return planOf(folderOf(...texts).site());
}

export function reportFrom(...texts: readonly string[]): Report {
  return reportOf(planFrom(...texts));
}
