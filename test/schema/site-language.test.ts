import assert from 'node:assert/strict';
import { parse } from 'yaml';
import * as generated from '../../server/src/site/schema.generated/validate.js';
import { SECTIONS, type SectionName } from '../../server/src/site/shape.ts';
import { unitsOf } from '../../server/src/text/quantity.ts';
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };

const validators = new Map(Object.entries(generated));

/** What does not fit, as `/path keyword`. */
function faults(section: SectionName, yaml: string): string[] {
  const validate = validators.get(section);
  assert.ok(validate !== undefined, section);
  validate(parse(yaml));
  return (validate.errors ?? []).map(({ instancePath, keyword }) => `${instancePath} ${keyword}`.trim());
}

const fits: readonly (readonly [SectionName, string])[] = [
  ['site', '{name: Harrow Lane, timezone: Europe/London}'],
  ['vlans', '{id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}'],
  ['vlans', '{id: 20, subnet: 192.168.20.0/24, querier: core}'],
  [
    'devices',
    '{kind: switch, igmp-snooping: true, unregistered-multicast: drop, spanning-tree: true, poe-budget: 130 W, ports: {1-8: {speed: 1 Gb/s, vlan: video, poe: at}, 16: {speed: 1 Gb/s, trunk: [house, video], native: house}}}',
  ],
  [
    'devices',
    '{kind: router, multicast-routing: false, ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}',
  ],
  [
    'devices',
    '{kind: server, ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}, routes: [{to: 224.0.0.0/4, port: cams}, {to: default, port: lan, via: 192.168.10.1}]}',
  ],
  ['devices', '{kind: server, ports: {1: {}, 2: {}}, routes: [{to: 224.0.0.0/4, port: 2}]}'],
  ['devices', '{kind: camera, address: 192.168.20.31, speed: 100 Mb/s, poe: {class: 3, power: 9.5 W}}'],
  ['devices', '{kind: patch-panel, ports: {1-24: {}}}'],
  ['devices', '{kind: patch-panel, rack: cupboard, unit: 11, units: 2, rows: 2, order: by-column, ports: {1-48: {}}}'],
  [
    'devices',
    '{kind: server, rack: cupboard, unit: 1, units: 2, side: rear, depth: 420 mm, width: 0.21 m, weight: 14 kg}',
  ],
  ['racks', '{units: 12, depth: 450 mm, numbered-from: top, bears: 60 kg, location: farmhouse}'],
  ['cables', '{from: core/1, to: paddock-cam, type: cat6, length: 38 m, through: [panel-a/1]}'],
  [
    'streams',
    '{source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, size: 2560x1440, frame-rate: 20, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s, keyframe-interval: 2 s}, audio: {codec: pcma, bitrate: 64 kb/s}, receivers: [recorder]}',
  ],
  [
    'streams',
    '{source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, ttl: 4, audio: {codec: aac, bitrate: 96 kb/s}, receivers: [recorder, kitchen-screen]}',
  ],
  ['streams', '{source: attic-tuner, transport: ts-rtp, mux-rate: 40 Mb/s, packet-size: 1316 B, egress: eth}'],
  ['volumes', '{host: recorder, capacity: 8 TB, reserve: 5 %, sustained-write: 120 MB/s}'],
  ['volumes', '{host: recorder, capacity: 3.64 TiB, disks: 4, redundancy: raid5}'],
  [
    'recordings',
    '{stream: paddock-live, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%Y-%m-%d_%H-%M-%S.mp4"}',
  ],
  [
    'policies',
    '{link-load: {warn: 70 %, limit: 90 %}, volume-fill: {limit: 90 %}, retention: [{recordings: [paddock], at-least: 14 d, at-most: 30 d}]}',
  ],
  [
    'lint',
    '{rules: {cable-length: off}, accept: [{rule: poe-missing, at: gate-cam, because: an injector in the cupboard feeds it}]}',
  ],
];

const doesNotFit: readonly (readonly [SectionName, string, ...string[]])[] = [
  ['site', '{name: Harrow Lane, colour: green}', 'additionalProperties'],
  ['vlans', '{id: 4095}', '/id maximum'],
  ['vlans', '{id: 0}', '/id minimum'],
  ['vlans', '{subnet: 192.168.20.0/33}', '/subnet pattern'],
  ['vlans', '{subnet: 192.168.256.0/24}', '/subnet pattern'],
  ['vlans', '{dhcp-pool: 192.168.10.100}', '/dhcp-pool pattern'],
  ['devices', '{address: 192.168.20.31}', 'required'],
  ['devices', '{kind: hub}', '/kind enum'],
  ['devices', '{kind: server, rack: cupboard, unit: 0}', '/unit minimum'],
  ['racks', '{depth: 450 mm}', 'required'],
  ['racks', '{units: 12, depth: 45 cm}', '/depth pattern'],
  ['devices', '{kind: camera, address: 192.168.20.031}', '/address pattern'],
  ['devices', '{kind: camera, mac: "02:00:00:00:20"}', '/mac pattern'],
  ['devices', '{kind: camera, speed: 100}', '/speed type'],
  ['devices', '{kind: switch, spanning-tree-priority: 1000}', '/spanning-tree-priority multipleOf'],
  ['devices', '{kind: switch, igmp-snooping: "yes"}', '/igmp-snooping type'],
  ['devices', '{kind: switch, ports: {1: {trunk: []}}}', '/ports/1/trunk minItems'],
  ['devices', '{kind: switch, ports: {1: {trunk: [house, house]}}}', '/ports/1/trunk uniqueItems'],
  ['devices', '{kind: switch, ports: {1: {poe: poe++}}}', '/ports/1/poe enum', '/ports/1/poe if'],
  ['devices', '{kind: camera, poe: {class: 9}}', '/poe/class maximum'],
  ['devices', '{kind: switch, ports: {ge 1: {}}}', '/ports pattern', '/ports propertyNames'],
  ['devices', '{kind: server, routes: [{port: cams}]}', '/routes/0 required'],
  ['cables', '{from: core/1}', 'required'],
  ['cables', '{from: core/1/2, to: paddock-cam}', '/from pattern'],
  ['cables', '{from: core/1, to: paddock-cam, type: cat9}', '/type enum'],
  ['streams', '{source: paddock-cam, port: 65536}', '/port maximum'],
  ['streams', '{source: paddock-cam, ttl: 0}', '/ttl minimum'],
  ['streams', '{source: paddock-cam, receivers: [recorder, recorder]}', '/receivers uniqueItems'],
  ['streams', '{source: paddock-cam, video: {frame-rate: 0}}', '/video/frame-rate exclusiveMinimum'],
  ['streams', '{source: paddock-cam, video: {size: 1440p}}', '/video/size pattern'],
  ['volumes', '{host: recorder, capacity: 8 TB, disks: 0}', '/disks minimum'],
  ['volumes', '{host: recorder}', 'required'],
  ['recordings', '{stream: paddock-live, volume: archive, file: ""}', '/file minLength'],
  ['policies', '{retention: [{at-least: 14 d}]}', '/retention/0 required'],
  ['lint', '{rules: {cable-length: ignore}}', '/rules/cable-length enum'],
  ['lint', '{accept: [{rule: cable-length, at: paddock-cam}]}', '/accept/0 required'],
];

describe('The site language', () => {
  it('has a validator for each section', () =>
    assert.deepEqual([...validators.keys()].sort(), Object.keys(SECTIONS).sort()));

  for (const [section, yaml] of fits)
    it(`${section} allows ${yaml}`, () => assert.deepEqual(faults(section, yaml), []));

  for (const [section, yaml, ...expected] of doesNotFit) {
    it(`${section} refuses ${yaml}`, () => assert.deepEqual(faults(section, yaml), expected));
  }

  for (const definition of Object.values(siteSchema.$defs)) {
    if (!('x-quantity' in definition) || !('pattern' in definition)) continue;
    const kind = definition['x-quantity'] as Parameters<typeof unitsOf>[0];
    it(`allows the units that are read as ${kind}, and no others`, () => {
      const pattern = new RegExp(definition.pattern);
      const all = (
        [
          'bit-rate',
          'byte-rate',
          'size',
          'duration',
          'length',
          'power',
          'mass',
          'apparent-power',
          'energy',
          'percentage',
          'frequency',
          'ratio',
          'level',
          'voltage',
          'current',
          'symbol-rate',
          'area',
        ] as const
      ).flatMap(unitsOf);
      assert.deepEqual(all.filter((unit) => pattern.test(`1.5 ${unit}`)).sort(), unitsOf(kind).sort());
      for (const text of [
        '1',
        '1,5 Mb/s',
        '.5 s',
        '-1 m',
        `1${unitsOf(kind)[0] ?? ''}`,
        `1  ${unitsOf(kind)[0] ?? ''}`,
      ]) {
        assert.doesNotMatch(text, pattern);
      }
    });
  }
});
