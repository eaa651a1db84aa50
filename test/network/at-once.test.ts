import assert from 'node:assert/strict';
import fc from 'fast-check';
import { type Network, networkOf } from '../../server/src/network/network.ts';
import { oppositePort } from '../../server/src/network/link.ts';
import { portName } from '../../server/src/site/model.ts';
import { planOf } from '../../server/src/plan.ts';
import { directionExplained } from '../../server/src/report/explain/link.ts';
import { portOf, siteOf } from '../site-of.ts';

interface House {
  /** Mb/s of each group. */
  readonly groups: readonly number[];
  /** Which groups each screen receives, how many of them at a time, and at which of two switches it is. */
  readonly screens: readonly {
    readonly receives: readonly number[];
    readonly decoders: number;
    readonly far: boolean;
  }[];
  /** Groups that a recorder takes always. */
  readonly recorded: readonly number[];
  /** Cameras that the screens pull: Mb/s, and which screens. */
  readonly pulls: readonly { readonly rate: number; readonly screens: readonly number[] }[];
}

/** What each screen shows, or everything where a screen is left out. */
type Shown = readonly (ReadonlySet<string> | undefined)[];

/** Switches that drop what nobody has joined. */
function textOf({ groups, screens, recorded, pulls }: House, shown: Shown = []): string {
  const takes = (screen: number, stream: string): boolean => shown[screen]?.has(stream) ?? true;
  const names = (list: readonly number[], stream: string): string =>
    list
      .filter((screen) => takes(screen, stream))
      .map((screen) => `, screen-${screen}`)
      .join('');
  const lines = [
    'vlans: {video: {id: 20, subnet: 192.168.20.0/24, querier: core}}',
    'devices:',
    '  core: {kind: switch, address: 192.168.20.2, igmp-snooping: true, unregistered-multicast: drop, ports: {1-40: {speed: 1 Gb/s, vlan: video}}}',
    '  barn: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1-40: {speed: 1 Gb/s, vlan: video}}}',
    '  tuner: {kind: tuner, address: 192.168.20.9, speed: 1 Gb/s}',
    '  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}',
    ...screens.map(
      ({ decoders }, index) =>
        `  screen-${index}: {kind: display, address: 192.168.20.${60 + index}, speed: 1 Gb/s${shown.length === 0 ? `, decoders: ${decoders}` : ''}}`,
    ),
    ...pulls.map((_, index) => `  cam-${index}: {kind: camera, address: 192.168.20.${30 + index}, speed: 1 Gb/s}`),
    'cables:',
    '  - {from: core/40, to: barn/40}',
    '  - {from: core/39, to: tuner}',
    '  - {from: barn/39, to: recorder}',
    ...screens.map(({ far }, index) => `  - {from: ${far ? 'barn' : 'core'}/${1 + index}, to: screen-${index}}`),
    ...pulls.map((_, index) => `  - {from: core/${20 + index}, to: cam-${index}}`),
    'streams:',
    ...groups.map((rate, index) => {
      const to = screens.flatMap(({ receives }, screen) => (receives.includes(index) ? [screen] : []));
      const receivers = `${recorded.includes(index) ? 'recorder' : ''}${names(to, `g${index}`)}`.replace(/^, /, '');
      return `  g${index}: {source: tuner, transport: ts-rtp, group: 239.192.30.${1 + index}, port: 5004, mux-rate: ${rate} Mb/s, receivers: [${receivers}]}`;
    }),
    ...pulls.map(
      ({ rate, screens: to }, index) =>
        `  p${index}: {source: cam-${index}, transport: rtsp, port: 554, video: {codec: h264, bitrate: ${rate} Mb/s}, receivers: [${names(to, `p${index}`).replace(/^, /, '')}]}`,
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function loads(network: Network): Map<string, number> {
  return new Map(
    network.topology.links.flatMap((link) =>
      [link.a, link.b].map((out): [string, number] => [
        `${portName(out)} → ${portName(oppositePort(link, out))}`,
        network.load(link, out).line.peak,
      ]),
    ),
  );
}

/** All sets of so many of the names. */
function* some(names: readonly string[], most: number): Iterable<string[]> {
  const [first, ...others] = names;
  if (first === undefined || most === 0) {
    yield [];
    return;
  }
  yield* some(others, most);
  for (const rest of some(others, most - 1)) yield [first, ...rest];
}

/** Every way in which the screens can choose. */
function* ways({ screens, pulls }: House, from = 0): Iterable<ReadonlySet<string>[]> {
  const screen = screens[from];
  if (screen === undefined) {
    yield [];
    return;
  }
  const pulled = pulls.flatMap(({ screens: to }, index) => (to.includes(from) ? [`p${index}`] : []));
  const own = [...new Set(screen.receives.map((group) => `g${group}`)), ...pulled];
  for (const set of some(own, screen.decoders))
    for (const rest of ways({ screens, pulls, groups: [], recorded: [] }, from + 1)) yield [new Set(set), ...rest];
}

const house = fc
  .record({
    groups: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 4 }),
    screens: fc.array(
      fc.record({
        receives: fc.uniqueArray(fc.nat({ max: 3 }), { maxLength: 4 }),
        decoders: fc.integer({ min: 1, max: 2 }),
        far: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    recorded: fc.uniqueArray(fc.nat({ max: 3 }), { maxLength: 1 }),
    pulls: fc.array(
      fc.record({
        rate: fc.integer({ min: 1, max: 20 }),
        screens: fc.uniqueArray(fc.nat({ max: 2 }), { maxLength: 2 }),
      }),
      { maxLength: 1 },
    ),
  })
  .map(({ groups, screens, recorded, pulls }): House => ({
    groups,
    screens: screens.map((screen) => ({
      ...screen,
      receives: screen.receives.filter((group) => group < groups.length),
    })),
    recorded,
    pulls: pulls.map((pull) => ({ ...pull, screens: pull.screens.filter((screen) => screen < screens.length) })),
  }));

describe('screens that show some of their streams at a time', () => {
  // Held against the same site with each choice of the screens written out as receivers.
  it('load each direction of each link as the worst of their choices does', () => {
    fc.assert(
      fc.property(house, (site) => {
        const worst = new Map<string, number>();
        for (const shown of ways(site)) {
          for (const [direction, peak] of loads(networkOf(siteOf(textOf(site, shown)))))
            worst.set(direction, Math.max(worst.get(direction) ?? 0, peak));
        }
        assert.deepEqual(loads(networkOf(siteOf(textOf(site)))), worst);
      }),
      { numRuns: 15 },
    );
  });

  it('say which streams do not count, and what comes for a moment after a change', () => {
    const plan = planOf(
      siteOf(
        textOf({
          groups: [12, 10, 4],
          screens: [{ receives: [0, 1, 2], decoders: 1, far: false }],
          recorded: [],
          pulls: [],
        }),
      ),
    );
    const { network, site } = plan;
    const port = portOf(site, 'core/1');
    const link = network.topology.linkAt(port) ?? assert.fail();
    assert.deepEqual(directionExplained(plan, link, port).sentences, [
      '12.7 Mb/s, 1.3 % of 1 Gb/s.',
      'screen-0 shows 1 stream at a time, so the largest that can be shown together count, and g1 and g2 not.',
      // 12.71 and 10.59 Mb/s on the line
      'For up to 2 s after a change the stream before may still come (RFC 3376 §8.10): then it is up to 23.3 Mb/s.',
    ]);
  });
});
