import assert from 'node:assert/strict';
import type { Item } from '../../server/src/site/item.ts';
import * as read from '../../server/src/site/read.ts';
import { readDevice } from '../../server/src/site/read-device.ts';
import * as television from '../../server/src/site/television/read.ts';
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };

/** `data`, noting under `path` which keys are looked at. */
function watched<T>(data: T, seen: Set<string>, path: string): T {
  if (typeof data !== 'object' || data === null) return data;
  return new Proxy(data, {
    get(target, key) {
      const value: unknown = Reflect.get(target, key);
      if (typeof key !== 'string' || Array.isArray(target)) return watched(value, seen, path);
      seen.add(`${path}.${key}`);
      return watched(value, seen, `${path}.${key}`);
    },
  });
}

function keysRead(reader: (item: Item) => unknown, root: string, items: readonly unknown[]): Set<string> {
  const seen = new Set<string>();
  for (const data of items) reader({ name: 'paddock', data: watched(data, seen, root) } as unknown as Item);
  return seen;
}

function keysOf(definition: keyof typeof siteSchema.$defs): string[] {
  return Object.keys((siteSchema.$defs[definition] as { properties: object }).properties);
}

describe('Keys of the site language', () => {
  const described = ['description'];
  for (const [definition, path, reader, items, unread] of [
    ['vlan', 'vlan', read.readVlan, [{}], described],
    [
      'device',
      'device',
      readDevice,
      [{ kind: 'switch' }, { kind: 'camera' }, { kind: 'tap', mast: {} }, { kind: 'ups' }],
      [...described, 'model', 'location'],
    ],
    ['port', 'device.ports.lan', readDevice, [{ kind: 'server', ports: { lan: {} } }], described],
    ['poe', 'device.poe', readDevice, [{ kind: 'camera', poe: { class: 3, power: '9.5 W' } }], []],
    ['own-power', 'device.power', readDevice, [{ kind: 'server', power: { from: 'ups-1' } }], []],
    ['route', 'device.routes', readDevice, [{ kind: 'server', routes: [{ to: 'default', port: 'lan' }] }], []],
    ['cable', 'cable', read.readCable, [{}], described],
    ['multiplex', 'multiplex', television.readMultiplex, [{}], described],
    ['service', 'service', television.readService, [{}], described],
    ['occasion', 'occasion', television.readOccasion, [{}], described],
    ['stream', 'stream', read.readStream, [{}], described],
    ['video', 'stream.video', read.readStream, [{ video: {} }], []],
    ['audio', 'stream.audio', read.readStream, [{ audio: {} }], []],
    ['volume', 'volume', read.readVolume, [{}], described],
    ['recording', 'recording', read.readRecording, [{}], described],
    ['retention', 'retention', read.readRetention, [[{}]], ['because']],
    [
      'acceptance',
      'acceptance',
      read.readAcceptances,
      [[{ rule: 'cable-length', at: 'core/1', because: 'measured' }]],
      [],
    ],
  ] as const) {
    it(`of ${definition} are read${unread.length === 0 ? '' : `, but ${unread.join(', ')}, which change no figure`}`, () => {
      const seen = keysRead(reader, path.split('.')[0] ?? '', items);
      assert.deepEqual(
        keysOf(definition)
          .filter((key) => !seen.has(`${path}.${key}`))
          .sort(),
        [...unread].sort(),
      );
    });
  }
});
