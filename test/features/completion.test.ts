// What is offered at a cursor `$0`, the best first.
import assert from 'node:assert/strict';
import { complete } from '../../server/src/features/completion/completion.ts';
import { type Offer, withoutTabStops } from '../../server/src/features/completion/offer.ts';
import { fileOf } from '../../server/src/site/item.ts';
import { atCursor, shown } from '../cursor.ts';

const NETWORK = `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.2-192.168.10.99}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    igmp-snooping: true
    ports:
      1-4: {speed: 1 Gb/s, vlan: video}
      5: {speed: 1 Gb/s, trunk: [house, video]}
  router: {kind: router, ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1}}}}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  gate-cam: {kind: camera, speed: 100 Mb/s}
  recorder: {kind: server, address: 192.168.20.1, speed: 1 Gb/s}
  kitchen-screen: {kind: display, address: 192.168.20.40}
  panel-a: {kind: patch-panel, ports: {1-3: {}}}
cables:
  - {from: core/1, to: paddock-cam, through: [panel-a/1]}
  - {from: core/2, to: recorder}
`;

const STREAMS = `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive}
`;

function offers(typed: string, schemaFeatures = true): readonly Offer[] {
  const { checked, file, offset } = atCursor({
    'a.site.yaml': NETWORK,
    'b.site.yaml': STREAMS,
    'typed.site.yaml': typed,
  });
  return complete(checked, file, offset, { schemaFeatures })?.offers ?? [];
}

const labels = (typed: string): string[] => offers(typed).map(({ label }) => label);

describe('Completion', () => {
  describe('of keys', () => {
    it('begins with the sections that the file has not', () => {
      assert.deepEqual(labels('$0').slice(0, 3), ['site', 'vlans', 'devices']);
    });

    it('offers what the item may have, the required first, without what it has', () => {
      const found = labels('recordings:\n  gate:\n    stream: paddock\n    $0\n    keep: 14 d\n');
      assert.equal(found[0], 'volume');
      assert.ok(found.includes('segment') && !found.includes('keep') && !found.includes('stream'));
    });

    it('offers what a device of that kind can have', () => {
      assert.ok(labels('devices:\n  stable: {kind: switch, $0').includes('igmp-snooping'));
      assert.ok(!labels('devices:\n  yard-cam: {kind: camera, $0').includes('igmp-snooping'));
      assert.deepEqual(labels('devices:\n  panel-b: {kind: patch-panel, $0').sort(), [
        'building',
        'depth',
        'description',
        'location',
        'model',
        'order',
        'ports',
        'rack',
        'rows',
        'side',
        'unit',
        'units',
        'weight',
        'width',
      ]);
      assert.ok(!labels('devices:\n  nvr:\n    kind: server\n    ports: {lan: {}}\n    $0').includes('speed'));
    });

    it("comes with the schema's words", () => {
      const snooping = offers('devices:\n  stable: {kind: switch, igmp$0}').find(
        ({ label }) => label === 'igmp-snooping',
      );
      assert.match(snooping?.documentation ?? '', /floods every group/);
    });

    it('goes on below, or in brackets', () => {
      const below = offers('devices:\n  stable:\n    kind: switch\n    po$0').find(({ label }) => label === 'ports');
      assert.equal(below?.insert, 'ports:\n  $0');
      const inside = offers('devices:\n  stable: {kind: switch, po$0').find(({ label }) => label === 'ports');
      assert.equal(inside?.insert, 'ports: {$0}');
    });

    it('leaves the colon alone that is there', () => {
      assert.equal(
        offers('devices:\n  stable:\n    ki$0nd: switch').find(({ label }) => label === 'kind')?.insert,
        'kind',
      );
    });

    it('counts ports on', () => {
      assert.deepEqual(labels('devices:\n  stable:\n    kind: switch\n    ports:\n      1-4: {}\n      $0'), [
        '5',
        '5-12',
      ]);
    });

    it('names the VLANs that a port carries', () => {
      assert.deepEqual(
        labels(
          'devices:\n  r2: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.9, $0',
        ),
        ['video'],
      );
    });
  });

  describe('of words', () => {
    it('offers what the schema lists, with what each means', () => {
      const [first] = offers('devices:\n  core2: {kind: $0');
      assert.equal(first?.label, 'switch');
      assert.match(first.documentation ?? '', /Forwards frames/);
      assert.deepEqual(labels('cables:\n  - {from: core/3, to: gate-cam, type: cat6$0}').slice(0, 4), [
        'cat6',
        'cat5',
        'cat5e',
        'cat6a',
      ]);
    });

    it('offers truth and falsehood', () => {
      assert.deepEqual(labels('devices:\n  core2:\n    spanning-tree: $0'), ['true', 'false']);
    });

    it('offers what a port feeds, and what a device draws', () => {
      assert.deepEqual(labels('devices:\n  s: {kind: switch, ports: {1: {poe: $0}}}').slice(0, 2), ['af', 'at']);
    });
  });

  describe('of names', () => {
    it("offers free ports at a cable's end, and a device alone where it has one port", () => {
      assert.deepEqual(labels('cables:\n  - {from: $0'), [
        'core/3',
        'core/4',
        'core/5',
        'gate-cam',
        'kitchen-screen',
        'router',
      ]);
      assert.deepEqual(labels('cables:\n  - {from: core/$0'), ['core/3', 'core/4', 'core/5']);
      assert.deepEqual(labels('cables:\n  - {from: core/3, to: $0'), ['gate-cam', 'kitchen-screen', 'router']);
      assert.deepEqual(labels('cables:\n  - {from: core/3, to: gate-cam, through: [$0]}'), ['panel-a/2', 'panel-a/3']);
    });

    it("does not take a cable's own ports for taken", () => {
      const { checked, file, offset } = atCursor(NETWORK.replace('to: recorder}', 'to: rec$0order}'));
      assert.ok(
        complete(checked, file, offset, { schemaFeatures: true })?.offers.some(({ label }) => label === 'recorder'),
      );
    });

    it('offers recordings that are kept as long as the policy asks', () => {
      const under = (policy: string): string[] =>
        labels(
          `recordings:\n  gate: {keep: 7 d}\n  yard: {keep: 14 d}\n  barn: {}\n` +
            `policies:\n  retention:\n    - {${policy}, recordings: [$0]}\n`,
        );
      assert.deepEqual(under('at-least: 10 d'), ['yard']);
      assert.deepEqual(under('at-most: 10 d'), ['gate']);
    });

    it('offers hosts that do not receive yet, and no cameras', () => {
      assert.deepEqual(labels('streams:\n  gate: {source: gate-cam, receivers: [recorder, $0]}'), ['kitchen-screen']);
      assert.deepEqual(
        labels('streams:\n  gate:\n    source: gate-cam\n    receivers:\n      - kitchen-screen\n      - $0'),
        ['recorder'],
      );
      assert.deepEqual(
        offers('streams:\n  gate: {receivers: $0').map(({ insert }) => insert),
        ['[recorder$0]', '[kitchen-screen$0]'],
      );
    });

    it('offers hosts as sources, those that send nothing yet first', () => {
      assert.deepEqual(labels('streams:\n  gate: {source: $0'), [
        'gate-cam',
        'recorder',
        'paddock-cam',
        'kitchen-screen',
      ]);
    });

    it('offers routers as gateways, switches and routers as queriers', () => {
      assert.deepEqual(labels('vlans:\n  guests: {gateway: $0'), ['router']);
      assert.deepEqual(labels('vlans:\n  guests: {querier: $0'), ['core', 'router']);
    });

    it('offers VLANs, streams, volumes and recordings', () => {
      assert.deepEqual(labels('devices:\n  s: {kind: switch, ports: {1: {vlan: $0'), ['house', 'video']);
      assert.deepEqual(labels('devices:\n  s: {kind: switch, ports: {1: {trunk: [house, $0'), ['video']);
      assert.deepEqual(labels('devices:\n  s: {kind: switch, ports: {1: {trunk: [video], native: $0'), ['video']);
      assert.deepEqual(labels('streams:\n  x: {source: recorder, carries: $0'), ['paddock', 'paddock-live']);
      assert.deepEqual(labels('recordings:\n  y: {stream: $0'), ['paddock-live', 'paddock']);
      assert.deepEqual(labels('recordings:\n  y: {stream: paddock-live, volume: $0'), ['archive']);
      assert.deepEqual(labels('policies:\n  retention:\n    - {recordings: [$0'), ['paddock']);
    });

    it("offers a device's own ports", () => {
      assert.deepEqual(
        labels(
          'devices:\n  nvr:\n    kind: server\n    ports: {lan: {}, cams: {}}\n    routes:\n      - {to: 224.0.0.0/4, port: $0}',
        ),
        ['lan', 'cams'],
      );
      assert.deepEqual(labels('streams:\n  x: {source: router, egress: $0'), ['lan']);
    });

    it('offers rules, those that find something first, and what their findings are about', () => {
      for (const typed of ['lint:\n  rules:\n    $0', 'lint:\n  accept:\n    - {rule: $0']) {
        const found = labels(typed);
        assert.ok(found.indexOf('unreached-receiver') < found.indexOf('loop'), 'finds something, so it comes first');
      }
      assert.ok(labels('lint:\n  accept:\n    - {rule: unreached-receiver, at: $0').includes('kitchen-screen'));
      assert.ok(!labels('lint:\n  accept:\n    - {rule: unreached-receiver, at: $0').includes('recorder'));
    });
  });

  describe('of numbers and addresses', () => {
    it("offers the next free address in the VLAN of the cable, or of the device's kind", () => {
      assert.deepEqual(
        labels('cables:\n  - {from: core/3, to: gate-cam}\ndevices:\n  gate-cam2: {kind: camera, address: $0}')[0],
        '192.168.20.32',
      );
      assert.deepEqual(
        labels('devices:\n  nvr: {kind: server, ports: {a: {address: $0}}}\ncables:\n  - {from: core/3, to: nvr/a}'),
        ['192.168.20.2', 'auto'],
      );
      assert.deepEqual(labels('devices:\n  r2: {kind: router, ports: {a: {addresses: {house: $0}}}}'), [
        '192.168.10.100',
        'auto',
      ]);
    });

    it('offers the next free group, and the next free pair of ports', () => {
      assert.deepEqual(labels('streams:\n  gate-live: {source: recorder, group: $0'), ['239.192.20.32', 'auto']);
      assert.deepEqual(
        labels('streams:\n  gate-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: $0'),
        ['5006', 'auto'],
      );
      assert.deepEqual(labels('streams:\n  gate: {source: gate-cam, transport: rtsp, port: $0'), ['554']);
    });

    it('offers the next id, and the subnet that goes with it', () => {
      assert.deepEqual(labels('vlans:\n  guests: {id: $0'), ['30']);
      assert.deepEqual(labels('vlans:\n  guests: {id: 30, subnet: $0'), ['192.168.30.0/24']);
    });

    it('offers units behind a number, and usual amounts without one', () => {
      assert.deepEqual(labels('devices:\n  x: {kind: camera, speed: 1 $0'), ['1 Mb/s', '1 b/s', '1 kb/s', '1 Gb/s']);
      assert.deepEqual(labels('devices:\n  x: {kind: camera, speed: 1$0}'), ['1 Mb/s', '1 b/s', '1 kb/s', '1 Gb/s']);
      assert.ok(labels('devices:\n  x:\n    speed:$0').includes('1 Gb/s'));
      assert.equal(offers('devices:\n  x:\n    speed:$0')[0]?.insert?.charAt(0), ' ');
    });
  });

  describe('of whole items', () => {
    it('puts an item into its column, where the cursor is in one that fits none', () => {
      const { checked, file, offset } = atCursor({ 'a.site.yaml': 'cables:\n  - {from: a, to: b}\n     $0\n' });
      const { offers: found, at } = complete(checked, file, offset, { schemaFeatures: true, anyColumn: true }) ?? {};
      assert.match(found?.[0]?.insert ?? '', /^ {2}- \{from: /);
      assert.equal(file.text.slice(at?.start, at?.end), '     ');
      assert.deepEqual(
        complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [],
        [],
        'while it is typed',
      );
    });

    const whole = (section: string, label: string): string => {
      const offer = offers(`${section}:\n  $0`).find((candidate) => candidate.label === label);
      return withoutTabStops(offer?.insert ?? '');
    };

    it('fills in what is free in the site', () => {
      assert.equal(
        whole('devices', 'camera'),
        'camera: {kind: camera, address: 192.168.20.32, speed: 100 Mb/s, poe: {class: 3}}',
      );
      assert.match(whole('streams', 'stream re-sent as multicast'), /group: 239\.192\.20\.32/);
      assert.equal(whole('cables', 'cable'), '- {from: core/3, to: gate-cam, type: cat6, length: }');
    });

    it('offers the rest of an item whose name stands already', () => {
      assert.ok(
        withoutTabStops(
          offers('devices:\n  yard-cam: $0').find(({ label }) => label === 'camera')?.insert ?? '',
        ).startsWith('{kind: camera, address: 192.168.20.32'),
      );
    });
  });

  it('replaces what is typed, and nothing else', () => {
    const { checked, file, offset } = atCursor('devices:\n  core: {kind: sw$0, igmp-snooping: true}');
    const at = complete(checked, file, offset, { schemaFeatures: true })?.at;
    assert.ok(at !== undefined);
    assert.equal(shown(at, file), '2: sw');
    assert.equal(fileOf(at).uri, file.uri);
  });

  it("leaves the schema's words to another extension that offers them", () => {
    assert.deepEqual(offers('devices:\n  x: {$0', false), []);
    assert.deepEqual(offers('devices:\n  x: {kind: $0', false), []);
    assert.ok(offers('cables:\n  - {from: $0', false).length > 0);
    assert.ok(offers('devices:\n  x: {kind: camera, speed: 1 $0', false).length > 0);
  });
});
