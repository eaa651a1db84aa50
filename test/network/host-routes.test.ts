/**
 * By what hosts and routers send, in the smallest sites that show it. Source: `test/lab/host-routes.test.ts` holds the
 * same sites against the kernel of Linux (`ip route get`, counters); RFC 1122 §3.3.1, from memory.
 */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { portName } from '../../server/src/site/model.ts';

function planFrom(text: string): Plan {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane/all.site.yaml', text);
  return planOf(folder.site());
}

/** The streams that leave by a port, and those that are answered by it, as `paddock` and `paddock back`. */
function leaving({ site, network }: Plan, name: string): string[] {
  const port = site.ports.find((candidate) => portName(candidate) === name);
  const link = port === undefined ? undefined : network.topology.linkAt(port);
  assert.ok(link !== undefined && port !== undefined, `${name} is cabled`);
  return network
    .copies(link, port)
    .flatMap((crossing) => [
      ...(crossing.tagged + crossing.untagged > 0 ? [crossing.stream.name] : []),
      ...(crossing.repliesTagged + crossing.repliesUntagged > 0 ? [`${crossing.stream.name} back`] : []),
    ]);
}

function why({ network }: Plan): string[] {
  return network.deliveries.flatMap(({ unreached }) => unreached.map(({ why: obstacle }) => obstacle.obstacle));
}

/** A server in two VLANs, a camera in one of them, and a router between. */
function twoCards(routes: string, streams: string, gateway = ', gateway: router'): Plan {
  return planFrom(`
vlans:
  house: {id: 10, subnet: 192.168.10.0/24${gateway}}
  video: {id: 20, subnet: 192.168.20.0/24${gateway}}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2-4: {vlan: video}, 5: {trunk: [house, video]}, 6: {vlan: house}}}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  nas:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}, spare: {}}
    routes: [${routes}]
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: nas/lan}
  - {from: core/2, to: nas/cams}
  - {from: core/3, to: cam}
  - {from: core/4, to: screen}
  - {from: core/5, to: router}
streams:
  ${streams}
`);
}

const PULLED = 'paddock: {source: cam, transport: rtsp, port: 554, video: {bitrate: 4 Mb/s}, receivers: [nas]}';
const PUSHED = 'shown: {source: nas, transport: rtp, port: 5004, video: {bitrate: 4 Mb/s}, receivers: [screen]}';
const GROUP =
  'live: {source: nas, transport: rtp, group: 239.255.1.1, port: 5004, video: {bitrate: 4 Mb/s}, receivers: [screen]}';
const TAKEN =
  'live: {source: cam, transport: rtp, group: 239.255.1.1, port: 5004, video: {bitrate: 4 Mb/s}, receivers: [nas]}';

describe('unicast', () => {
  it('goes by the connected subnet where no route is set', () => {
    const plan = twoCards('', PULLED);
    assert.deepEqual(leaving(plan, 'core/2'), ['paddock']);
    assert.deepEqual(leaving(plan, 'nas/cams'), ['paddock back']);
  });

  it('goes by a host route through a router, and what comes back goes to the port that asked', () => {
    const plan = twoCards('{to: 192.168.20.31/32, port: lan, via: 192.168.10.1}', PULLED);
    assert.deepEqual(leaving(plan, 'nas/lan'), ['paddock back']);
    assert.deepEqual(leaving(plan, 'nas/cams'), []);
    assert.deepEqual(leaving(plan, 'core/1'), ['paddock']);
    assert.deepEqual(leaving(plan, 'core/2'), []);
    assert.deepEqual(leaving(plan, 'core/5'), ['paddock', 'paddock back']);
  });

  it('is lost by the route for a subnet on the wrong card', () => {
    const plan = twoCards('{to: 192.168.20.0/24, port: lan}', PUSHED);
    assert.deepEqual(why(plan), ['not-on-link']);
    assert.deepEqual(leaving(plan, 'nas/lan'), []);
  });

  it('is lost by a route to a port without a cable, however many others there are', () => {
    assert.deepEqual(why(twoCards('{to: 192.168.20.41/32, port: spare}', PUSHED)), ['into-nothing']);
  });

  it('takes a route that Linux refuses as none', () => {
    assert.deepEqual(why(twoCards('{to: 192.168.20.41/32, port: lan, via: 10.9.9.9}', PUSHED)), []);
  });

  it('is lost at a gateway that nobody has, and at one that forwards nothing', () => {
    assert.deepEqual(why(twoCards('{to: 192.168.20.41/32, port: cams, via: 192.168.20.9}', PUSHED)), [
      'no-such-gateway',
    ]);
    assert.deepEqual(why(twoCards('{to: 192.168.20.41/32, port: cams, via: 192.168.20.31}', PUSHED)), ['no-router']);
  });

  // A router that sends a packet back into the network that it came from tells the host of the shorter way (RFC 792).
  it('goes directly where the router is in the network of the receiver', () => {
    const plan = twoCards('{to: 192.168.20.41/32, port: cams, via: 192.168.20.1}', PUSHED);
    assert.deepEqual(leaving(plan, 'nas/cams'), ['shown']);
    assert.deepEqual(leaving(plan, 'core/5'), []);
  });

  it('goes by the routes that a router has', () => {
    const site = (routes: string): Plan =>
      planFrom(`
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
  paddock: {source: cam, transport: rtsp, port: 554, video: {bitrate: 4 Mb/s}, receivers: [pc]}
`);
    const right = site('{to: 192.168.20.0/24, port: lan, vlan: yard, via: 192.168.30.2}');
    assert.deepEqual(why(right), []);
    assert.deepEqual(leaving(right, 'core/4'), ['paddock', 'paddock back']);
    assert.deepEqual(why(site('{to: 10.0.0.0/8, port: lan, vlan: yard, via: 192.168.30.2}')), ['no-route']);
    // Each hands it to the other.
    assert.deepEqual(
      why(site('{to: default, port: lan, vlan: yard, via: 192.168.30.2}')).length,
      0,
      'the default route leads there too',
    );
  });
});

describe('multicast', () => {
  it('is neither sent nor joined by a host in two networks without a route', () => {
    assert.deepEqual(why(twoCards('', GROUP, '')), ['no-group-route']);
    assert.deepEqual(why(twoCards('', TAKEN, '')), ['no-group-route']);
  });

  it('is sent into nothing by a port without a cable', () => {
    const plan = twoCards('{to: 224.0.0.0/4, port: spare}', GROUP);
    assert.deepEqual(why(plan), ['into-nothing']);
    assert.deepEqual(leaving(plan, 'nas/cams'), []);
    assert.deepEqual(leaving(plan, 'nas/lan'), []);
  });

  it('is joined by the default route too', () => {
    assert.deepEqual(why(twoCards('{to: default, port: lan, via: 192.168.10.1}', TAKEN)), ['joins-elsewhere']);
    assert.deepEqual(why(twoCards('{to: default, port: cams, via: 192.168.20.1}', TAKEN)), []);
  });

  it('leaves by the VLAN that the route of a tagging host names', () => {
    const site = (vlan: string): Plan =>
      planFrom(`
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: video}}}
  nas:
    kind: server
    ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.5, video: 192.168.20.5}}}
    routes: [{to: 224.0.0.0/4, port: lan${vlan}}]
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: nas}
  - {from: core/2, to: screen}
streams:
  ${GROUP}
`);
    assert.deepEqual(why(site(', vlan: video')), []);
    assert.deepEqual(why(site('')), ['leaves-elsewhere']);
    assert.deepEqual(why(site(', vlan: house')), ['leaves-elsewhere']);
  });
});

// Source: measured on bridges of Linux and of Open vSwitch (test/lab); RFC 4541 §2.1.1 leaves it open.
describe('a switch in a VLAN in which nobody asks', () => {
  const site = (says: string): Plan =>
    planFrom(`
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop${says}, ports: {1-2: {vlan: video}, 3: {vlan: video}}}
  barn: {kind: switch, igmp-snooping: true, unregistered-multicast: drop${says}, ports: {1-2: {vlan: video}}}
  nas: {kind: server, address: 192.168.20.5}
  screen: {kind: display, address: 192.168.20.41}
  idle: {kind: display, address: 192.168.20.42}
cables:
  - {from: core/1, to: nas}
  - {from: core/2, to: idle}
  - {from: core/3, to: barn/1}
  - {from: barn/2, to: screen}
streams:
  ${GROUP}
`);

  it('leaves a receiver behind another switch without a picture, or floods', () => {
    assert.deepEqual(why(site('')), ['report-stays']);
    assert.deepEqual(leaving(site(''), 'core/2'), []);
    assert.deepEqual(why(site(', without-querier: flood')), []);
    assert.deepEqual(leaving(site(', without-querier: flood'), 'core/2'), ['live']);
  });
});
