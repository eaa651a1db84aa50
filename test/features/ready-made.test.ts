// Ready-made items: what they are filled in with. That they check clean is a property (properties/completion.test.ts).
import assert from 'node:assert/strict';
import { complete } from '../../server/src/features/completion/completion.ts';
import { withoutTabStops } from '../../server/src/features/completion/offer.ts';
import { deviceKinds } from '../../server/src/site/shape.ts';
import { atCursor } from '../cursor.ts';

/** Two switches' worth of VLANs, in an order that says nothing. */
const HOME = `
vlans:
  rooms: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  eyes: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    address: 192.168.20.2
    igmp-snooping: true
    poe-budget: 60 W
    ports:
      1-3: {speed: 1 Gb/s, vlan: rooms}
      4-9: {speed: 100 Mb/s, vlan: eyes, poe: af}
      10-12: {speed: 1 Gb/s, vlan: eyes}
  router: {kind: router, address: 192.168.10.1, speed: 1 Gb/s}
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3}}
  yard-cam: {kind: camera, address: 192.168.20.32, speed: 100 Mb/s, poe: {class: 3}}
  barn-cam: {kind: camera, address: 192.168.20.33, speed: 100 Mb/s, poe: {class: 3}}
  lane-cam: {kind: camera, address: 192.168.20.34, speed: 100 Mb/s, poe: {class: 3}}
  well-cam: {kind: camera, address: 192.168.20.35, speed: 100 Mb/s, poe: {class: 3}}
`;
const CABLES = `
cables:
  - {from: core/1, to: router}
  - {from: core/4, to: gate-cam}
  - {from: core/5, to: yard-cam}
  - {from: core/6, to: barn-cam}
`;
const RECORDER = `
devices:
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
`;

function readyMade(typed: string, label: string, ...more: readonly string[]): string {
  const others = Object.fromEntries([HOME, CABLES, ...more].map((text, index) => [`${index}.site.yaml`, text]));
  const { checked, file, offset } = atCursor({ ...others, 'typed.site.yaml': typed });
  const found = complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [];
  const offer = found.find((one) => one.kind === 'snippet' && one.label === label);
  assert.ok(offer !== undefined, `${label} is offered`);
  return withoutTabStops(offer.insert ?? '');
}

describe('A ready-made item', () => {
  it('is there for every kind of device, the commonest first', () => {
    const { checked, file, offset } = atCursor('devices:\n  $0');
    const found = complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [];
    const kinds = found.map(({ insert = '' }) => /kind: ([\w-]+)/.exec(insert)?.[1]);
    assert.deepEqual([...new Set(kinds)].sort(), [...deviceKinds()].sort());
    assert.deepEqual(kinds.slice(0, 3), ['camera', 'switch', 'server']);
  });

  it('has an address beside devices of its kind', () => {
    assert.match(readyMade('devices:\n  $0', 'camera'), /^camera: \{kind: camera, address: 192\.168\.20\.36,/);
  });

  it('begins where its kind usually does, and leaves out the first and the last address', () => {
    assert.match(readyMade('devices:\n  $0', 'display'), /address: 192\.168\.20\.61/);
    assert.match(readyMade('devices:\n  $0', 'server'), /address: 192\.168\.20\.5,/);
    const few = 'vlans:\n  eyes: {id: 20, subnet: 192.168.20.0/28}\n';
    const taken = Array.from({ length: 12 }, (_, i) => `  c${i}: {kind: camera, address: 192.168.20.${i + 2}}`);
    const { checked, file, offset } = atCursor(`${few}devices:\n${taken.join('\n')}\n  $0`);
    const offers = complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [];
    assert.doesNotMatch(offers.find(({ label }) => label === 'camera')?.insert ?? '', /192\.168\.20\.(1|14)\}/);
  });

  it('puts two cards into the VLANs that they fit, by cameras and querier', () => {
    const text = readyMade('devices:\n  $0', 'server with two network cards');
    assert.match(text, /lan: \{speed: 1 Gb\/s, address: 192\.168\.10\.5\}/);
    assert.match(text, /cams: \{speed: 1 Gb\/s, address: 192\.168\.20\.5\}/);
    assert.match(text, /\{to: default, port: lan, via: 192\.168\.10\.1\}/);
  });

  it('takes a free port whose VLAN, power and speed suit, and leaves the length', () => {
    // 60 W feed three cameras of class 3 (15.4 W each, IEEE 802.3af), and a fourth no more than that: 61.6 W.
    assert.equal(readyMade('cables:\n  $0', 'cable'), '- {from: , to: , type: cat6, length: }');
    const enough = { from: 'poe-budget: 60 W', to: 'poe-budget: 130 W' };
    const { checked, file, offset } = atCursor({
      'a.site.yaml': HOME.replace(enough.from, enough.to) + CABLES,
      'b.site.yaml': 'cables:\n  $0',
    });
    const [cable] = complete(checked, file, offset, { schemaFeatures: true })?.offers ?? [];
    assert.equal(withoutTabStops(cable?.insert ?? ''), '- {from: core/7, to: lane-cam, type: cat6, length: }');
    assert.match(cable?.insert ?? '', /length: \$\{1:\}/, 'the cursor goes first to what is still to be typed');
    assert.equal(
      readyMade('cables:\n  $0', 'cable', RECORDER),
      '- {from: core/10, to: recorder, type: cat6, length: }',
      'what needs no power is not put at a port that feeds, nor at a slow one',
    );
  });

  it('is named after what it is about, and nothing of an example', () => {
    const cable = 'cables:\n  - {from: core/10, to: recorder}\n';
    const stream = readyMade('streams:\n  $0', 'stream of a camera', RECORDER, cable);
    assert.match(stream, /^gate:\n {2}source: gate-cam/);
    assert.match(stream, /receivers: \[recorder\]/);
    const gate = 'streams:\n  gate: {source: gate-cam, transport: rtsp, port: 554, receivers: [recorder]}\n';
    const disk = 'volumes:\n  disk: {host: recorder, capacity: 4 TB}\n';
    assert.match(
      readyMade('recordings:\n  $0', 'recording', RECORDER, cable, gate, disk),
      /^gate:\n {2}stream: gate\n {2}volume: disk\n[^]*file: gate\/%Y/,
    );
    assert.match(readyMade('streams:\n  $0', 'stream re-sent as multicast', RECORDER, cable, gate), /^gate-live:\n/);
    assert.match(readyMade('streams:\n  yard: $0', 'stream of a camera', RECORDER, cable), /source: yard-cam/);
  });
});
