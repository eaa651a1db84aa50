/**
 * Compares the plan's routes, cards and queriers with the kernel of Linux and real switches, point by point. Each shows
 * `ip route get` and the counters beside the prediction.
 */

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import { unavailable } from '../availability.ts';
import { Ahead } from './ahead.ts';
import { planFrom } from './family.ts';
import { kernelRoutesTable } from './kernel-routes.ts';
import { measure } from './measure.ts';
import { whyNoLab } from './probe.ts';
import { randomRoutes } from './random-routes.ts';
import { tableOf } from './table.ts';

const SECONDS = 2;

interface Point {
  readonly title: string;
  readonly site: string;
  /** Streams that reach all, or nobody; the plan must agree. */
  readonly silent?: readonly string[];
  /** The kernel's answer to receivers that may not join. */
  readonly refused?: string;
}

/** A server with two cards and a spare one, a camera and a screen in one of its VLANs, a router between. */
function house(routes: string, stream: string, gateway = ', gateway: router', extra = ''): string {
  return `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24${gateway}}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core${gateway}}
devices:
  core:
    kind: switch
    igmp-snooping: true
    unregistered-multicast: drop
    address: 192.168.20.2
    ports: {1: {vlan: house}, 2-4: {vlan: video}, 5: {trunk: [house, video]}, 6: {vlan: house}}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  nas:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}, spare: {${extra}}}
    routes: [${routes}]
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
  pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: nas/lan}
  - {from: core/2, to: nas/cams}
  - {from: core/3, to: cam}
  - {from: core/4, to: screen}
  - {from: core/5, to: router}
  - {from: core/6, to: pc}
streams:
  ${stream}
`;
}

const VIDEO = 'video: {codec: h264, bitrate: 2 Mb/s}';
const PULLED = `paddock: {source: cam, transport: rtsp, port: 554, ${VIDEO}, receivers: [nas]}`;
const PUSHED = `shown: {source: nas, transport: rtp, port: 5004, ${VIDEO}, receivers: [screen]}`;
const SENT = `live: {source: nas, transport: rtp, group: 239.255.1.1, port: 5004, ${VIDEO}, receivers: [screen]}`;
const TAKEN = `live: {source: cam, transport: rtp, group: 239.255.1.1, port: 5004, ${VIDEO}, receivers: [nas]}`;

const FLAT = (gateway: string, stream: string): string => `
vlans: {video: {id: 20, subnet: 192.168.20.0/24, querier: core${gateway}}}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, address: 192.168.20.2, ports: {1-4: {vlan: video}}}
  nas: {kind: server, address: 192.168.20.5}
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: nas}
  - {from: core/2, to: cam}
  - {from: core/3, to: screen}
streams:
  ${stream}
`;

/** A router behind another; `routes` are those of the nearer one. */
const CHAIN = (routes: string): string => `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: near}
  yard: {id: 30, subnet: 192.168.30.0/24}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: far}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}, 3: {trunk: [house, yard]}, 4: {trunk: [yard, video]}}}
  near:
    kind: router
    ports: {lan: {trunk: [house, yard], addresses: {house: 192.168.10.1, yard: 192.168.30.1}}}
    routes: [${routes}]
  far:
    kind: router
    ports: {lan: {trunk: [yard, video], addresses: {yard: 192.168.30.2, video: 192.168.20.1}}}
    routes: [{to: default, port: lan, vlan: yard, via: 192.168.30.1}]
  pc: {kind: computer, address: 192.168.10.20}
  cam: {kind: camera, address: 192.168.20.31}
cables:
  - {from: core/1, to: pc}
  - {from: core/2, to: cam}
  - {from: core/3, to: near}
  - {from: core/4, to: far}
streams:
  paddock: {source: cam, transport: rtsp, port: 554, ${VIDEO}, receivers: [pc]}
  shown: {source: pc, transport: rtp, port: 5004, ${VIDEO}, receivers: [cam]}
`;

/** Two multicast routers in the senders' VLAN, each with another one behind it. */
const TWO_ROUTERS = (core: string, snooping: string): string => `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24${core}}
  house: {id: 10, subnet: 192.168.10.0/24}
  yard: {id: 30, subnet: 192.168.30.0/24}
devices:
  core:
    kind: switch
    igmp-snooping: ${snooping}
    unregistered-multicast: drop
    address: 192.168.20.9
    ports: {1-2: {vlan: video}, 3: {trunk: [video, house]}, 4: {trunk: [video, yard]}, 5: {vlan: house}, 6: {vlan: yard}}
  east: {kind: router, multicast-routing: true, ports: {lan: {trunk: [video, house], addresses: {video: 192.168.20.1, house: 192.168.10.1}}}}
  west: {kind: router, multicast-routing: true, ports: {lan: {trunk: [video, yard], addresses: {video: 192.168.20.3, yard: 192.168.30.1}}}}
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
  house-screen: {kind: display, address: 192.168.10.41}
  yard-screen: {kind: display, address: 192.168.30.41}
cables:
  - {from: core/1, to: cam}
  - {from: core/2, to: screen}
  - {from: core/3, to: east}
  - {from: core/4, to: west}
  - {from: core/5, to: house-screen}
  - {from: core/6, to: yard-screen}
streams:
  near: {source: cam, transport: rtp, group: 239.255.1.1, port: 5004, ttl: 2, ${VIDEO}, receivers: [screen]}
  indoors: {source: cam, transport: rtp, group: 239.255.1.2, port: 5004, ttl: 2, ${VIDEO}, receivers: [house-screen]}
  outdoors: {source: cam, transport: rtp, group: 239.255.1.3, port: 5004, ttl: 2, ${VIDEO}, receivers: [yard-screen]}
  unseen: {source: cam, transport: rtp, group: 239.255.1.4, port: 5004, ttl: 2, ${VIDEO}}
`;

const NAMED = 'networks of one card without a gateway';

const POINTS: Readonly<Record<string, readonly Point[]>> = {
  [NAMED]: [
    {
      title: 'send and join by the route that what is made for them sets',
      site: FLAT('', SENT + '\n  ' + TAKEN.replace('live', 'taken').replace('1.1', '1.2')),
    },
  ],
  'several cards and no route for a group': [
    { title: 'send nothing', site: house('', SENT, ''), silent: ['live'] },
    { title: 'join nothing', site: house('', TAKEN, ''), silent: ['live'], refused: 'No such device' },
  ],
  'a route by a port without carrier': [
    { title: 'sends a group into nothing', site: house('{to: 224.0.0.0/4, port: spare}', SENT), silent: ['live'] },
    { title: 'joins nothing', site: house('{to: 224.0.0.0/4, port: spare}', TAKEN), silent: ['live'] },
    {
      title: 'sends unicast into nothing',
      site: house('{to: 192.168.20.41/32, port: spare}', PUSHED),
      silent: ['shown'],
    },
    {
      title: 'comes with the address of the port',
      site: house('', PUSHED.replace('screen', 'pc'), ', gateway: router', 'address: 192.168.10.6'),
    },
  ],
  'unicast by the most specific route': [
    { title: 'that of a card', site: house('', PULLED) },
    {
      title: 'a host route through a router, both ways',
      site: house('{to: 192.168.20.31/32, port: lan, via: 192.168.10.1}', PULLED),
    },
    { title: 'a subnet by the wrong card', site: house('{to: 192.168.20.0/24, port: lan}', PUSHED), silent: ['shown'] },
    {
      title: 'half of a subnet by the wrong card',
      site: house('{to: 192.168.20.0/25, port: lan}', PUSHED),
      silent: ['shown'],
    },
    {
      title: 'a router in the same network, which tells of the shorter way',
      site: house('{to: 192.168.20.41/32, port: cams, via: 192.168.20.1}', PUSHED),
    },
    {
      title: 'the same of a stream that is pulled',
      site: house(
        '{to: 192.168.20.41/32, port: cams, via: 192.168.20.1}',
        `shown: {source: nas, transport: rtsp, port: 554, ${VIDEO}, receivers: [screen]}`,
      ),
    },
    {
      title: 'a gateway that nobody has',
      site: house('{to: 192.168.20.41/32, port: cams, via: 192.168.20.9}', PUSHED),
      silent: ['shown'],
    },
    {
      title: 'a gateway that is no router',
      site: house('{to: 192.168.20.41/32, port: lan, via: 192.168.10.20}', PUSHED),
      silent: ['shown'],
    },
    {
      title: 'a gateway off the link, which Linux refuses',
      site: house('{to: 192.168.20.41/32, port: lan, via: 10.9.9.9}', PUSHED),
    },
    {
      title: 'two default routes, of which Linux takes the first',
      site: house('{to: default, port: lan, via: 192.168.10.1}, {to: default, port: cams, via: 192.168.20.1}', SENT),
      silent: ['live'],
    },
    {
      title: 'a default route without a gateway',
      site: house('{to: default, port: cams}', PUSHED.replace('screen', 'pc'), ''),
    },
    { title: 'the routes of a router', site: CHAIN('{to: 192.168.20.0/24, port: lan, vlan: yard, via: 192.168.30.2}') },
    {
      title: 'a router without a route there',
      site: CHAIN('{to: 10.0.0.0/8, port: lan, vlan: yard, via: 192.168.30.2}'),
      silent: ['paddock', 'shown'],
    },
    {
      title: 'routers that hand it to each other',
      site: CHAIN('{to: 192.168.20.0/24, port: lan, vlan: house, via: 192.168.10.20}'),
      silent: ['paddock', 'shown'],
    },
  ],
  'a receiver with two cards': [
    { title: 'joins by its multicast route', site: house('{to: 224.0.0.0/4, port: cams}', TAKEN) },
    {
      title: 'joins by the default route, where no group comes',
      site: house('{to: default, port: lan, via: 192.168.10.1}', TAKEN),
      silent: ['live'],
    },
    {
      title: 'joins by the default route, where the group comes',
      site: house('{to: default, port: cams, via: 192.168.20.1}', TAKEN),
    },
    { title: 'joins by the gateway of a VLAN', site: house('', TAKEN), silent: ['live'] },
  ],
  'one querier': [
    {
      title: 'of two multicast routers and a switch: the lowest address',
      site: TWO_ROUTERS(', querier: core', 'true'),
    },
    { title: 'of two multicast routers', site: TWO_ROUTERS('', 'true') },
    { title: 'where nobody snoops', site: TWO_ROUTERS('', 'false') },
  ],
};

/** Sites that run at the same time: a few hundred frames a second each. */
const AT_ONCE = 4;

describe('hosts as they are', function () {
  const outcomes = new Ahead(
    Object.values(POINTS)
      .flat()
      .map((point) => () => measure(planOfPoint(point), SECONDS)),
    AT_ONCE,
  );
  let index = 0;

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  after(() => outcomes.ended());

  for (const [what, points] of Object.entries(POINTS)) {
    describe(what, () => {
      for (const point of points) {
        const { title, silent = [], refused } = point;
        const own = index++;
        it(title, async () => {
          const { rows, wrong, routes, refusedJoins } = await outcomes.get(own);
          console.log(kernelRoutesTable(routes));
          console.log(tableOf(rows));
          assert.deepEqual(
            routes.filter(({ predicted, kernel }) => predicted !== kernel),
            [],
          );
          assert.deepEqual(wrong, []);
          assert.deepEqual(unheard(planOfPoint(point)), silent);
          if (refused !== undefined) assert.ok(refusedJoins.includes(refused), String(refusedJoins));
        });
      }
    });
  }
});

/** `PLUMBLINE_LAB_ROUTES=17,18` builds the sites of these numbers instead of the usual ones, which disagreed once. */
const NUMBERS = (process.env['PLUMBLINE_LAB_ROUTES'] ?? '1,4,7,23,34,49').split(',').map(Number);

describe('routes at random', function () {
  const texts = NUMBERS.map(randomRoutes);
  const outcomes = new Ahead(
    texts.map((text) => () => measure(planFrom({ 'random.site.yaml': text }), SECONDS, { mostTries: 5 })),
    AT_ONCE,
  );

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  after(() => outcomes.ended());

  NUMBERS.forEach((number, index) => {
    it(`from the number ${number}`, async () => {
      const text = texts[index];
      const { rows, wrong, routes } = await outcomes.get(index);
      console.log(kernelRoutesTable(routes));
      console.log(tableOf(rows));
      assert.deepEqual(
        routes.filter(({ predicted, kernel }) => predicted !== kernel),
        [],
        text,
      );
      assert.deepEqual(wrong, [], text);
    });
  });
});

function planOfPoint({ site }: Point): Plan {
  return planFrom({ 'house.site.yaml': site });
}

/** Streams that by the plan reach nobody. */
function unheard({ network }: Plan): string[] {
  return network.deliveries
    .filter(({ stream, reaches }) => stream.receivers.length > 0 && reaches.length === 0)
    .map(({ stream }) => stream.name);
}
