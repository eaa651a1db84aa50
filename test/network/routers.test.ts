/** What was measured of router ports and gateways (test/lab), in the smallest sites that show it. */

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

// Source: measured on Open vSwitch; RFC 4541 §2.1.2 leaves open what a report at a router port counts for.
describe('a group that is asked for by way of the router port alone', () => {
  const site = (unregistered: string): Plan =>
    planFrom(`
vlans:
  video: {id: 20, querier: recorder}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: ${unregistered}, ports: {1-3: {speed: 1 Gb/s, vlan: video}}}
  recorder: {kind: server}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: paddock-cam}
  - {from: core/3, to: kitchen-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
`);

  it('is flooded as one that nobody joined', () => {
    assert.deepEqual(leaving(site('flood'), 'core/3'), ['paddock']);
  });

  it('goes there and nowhere else where such groups are dropped', () => {
    assert.deepEqual(leaving(site('drop'), 'core/1'), ['paddock']);
    assert.deepEqual(leaving(site('drop'), 'core/3'), []);
  });
});

// Source: RFC 1122 §3.3.1.1 (each host sends by its own gateway), from memory; measured with Linux hosts and routers.
describe('two gateways', () => {
  const site = (house: string): Plan =>
    planFrom(`
vlans:
  house: {id: 10, subnet: 192.168.10.0/24${house}}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: yard-router}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}, 3-4: {trunk: [house, video]}}}
  yard-router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.2, video: 192.168.20.2}}}}
  attic-router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: office-pc}
  - {from: core/3, to: yard-router}
  - {from: core/4, to: attic-router}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [office-pc]}
`);

  it('let the acknowledgements go back by the receiver’s own', () => {
    const plan = site(', gateway: attic-router');
    assert.deepEqual(leaving(plan, 'core/3'), ['paddock']);
    assert.deepEqual(leaving(plan, 'core/4'), ['paddock back']);
  });

  it('do not help a receiver that has none to ask the camera by', () => {
    const plan = site('');
    assert.deepEqual(plan.network.deliveries[0]?.unreached, [
      { receiver: 'office-pc', why: { obstacle: 'no-gateway', network: 'house', to: 'video', back: true } },
    ]);
    assert.deepEqual(leaving(plan, 'core/3'), []);
  });
});
