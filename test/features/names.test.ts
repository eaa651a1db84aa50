// Definition, references, highlights and rename of every kind of name, over several files.
import assert from 'node:assert/strict';
import { definition, highlights, references } from '../../server/src/features/names/definition.ts';
import { rename, renameable } from '../../server/src/features/names/rename.ts';
import { fileOf } from '../../server/src/site/item.ts';
import type { Place } from '../../server/src/site/item.ts';
import { atCursor, shown } from '../cursor.ts';
import { type Texts, diagnosticsOf, edited } from '../site.ts';

const NETWORK = `vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core:
    kind: switch
    igmp-snooping: true
    ports:
      1-4: {speed: 1 Gb/s, vlan: video}
      16: {speed: 1 Gb/s, trunk: [house, video], native: house}
  router: {kind: router, ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  recorder:
    kind: server
    ports: {lan: {speed: 1 Gb/s, address: 192.168.20.5}}
    routes: [{to: 224.0.0.0/4, port: lan}]
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 1 Gb/s}
cables:
  - {from: core/16, to: router/lan}
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
`;

const STREAMS = `streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.192.20.31, port: 5004, egress: lan}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 15 d, file: "%H%M%S.mp4"}
policies:
  retention: [{recordings: [paddock], at-least: 14 d}]
lint:
  accept:
    - {rule: repeated-hour, at: paddock, because: it is a trial}
    - {rule: no-receivers, at: paddock-live, because: somebody will watch}
    - {rule: cable-length, at: core/16, because: it is short}
site: {timezone: Europe/London}
`;

/** The site with a cursor in a word; `|` says where in it, and which one of several is counted from 1. */
function site(word: string, nth = 1): ReturnType<typeof atCursor> {
  const texts: Record<string, string> = { 'network.site.yaml': NETWORK, 'streams.site.yaml': STREAMS };
  let left = nth;
  for (const [uri, text] of Object.entries(texts)) {
    for (let at = text.indexOf(word.replace('|', '')); at !== -1; at = text.indexOf(word.replace('|', ''), at + 1)) {
      if (--left > 0) continue;
      const cursor = at + Math.max(0, word.indexOf('|'));
      return atCursor({ ...texts, [uri]: `${text.slice(0, cursor)}$0${text.slice(cursor)}` });
    }
  }
  throw new Error(`${word} is not there`);
}

function places({ texts }: { texts: Texts }, found: readonly Place[]): string[] {
  return found.map(
    (place) => `${fileOf(place).uri.charAt(0)} ${shown(place, { text: texts[fileOf(place).uri] ?? '' })}`,
  );
}

function definedAt(word: string): string[] {
  const at = site(word);
  return places(at, definition(at.checked, at.file, at.offset)?.to ?? []);
}

function usedAt(word: string): string[] {
  const at = site(word);
  return places(at, references(at.checked, at.file, at.offset, true));
}

describe('Definition', () => {
  for (const [word, to] of [
    ['gateway: ro|uter', 'n 11: router'],
    ['from: co|re/16', 'n 5: core'],
    ['from: core/1|6', 'n 10: 16'],
    ['from: core/|1,', 'n 9: 1-4'],
    ['to: paddock-|cam', 'n 16: paddock-cam'],
    ['vlan: vi|deo', 'n 3: video'],
    ['{hou|se: 192', 'n 2: house'],
    ['port: la|n}', 'n 14: lan'],
    ['egress: la|n', 'n 14: lan'],
    ['carries: pad|dock', 's 2: paddock'],
    ['volume: arch|ive', 's 5: archive'],
    ['stream: pad|dock', 's 2: paddock'],
    ['recordings: [pad|dock', 's 7: paddock'],
    ['at: paddock|-live', 's 3: paddock-live'],
    ['at: core/1|6', 'n 10: 16'],
    ['at: co|re/16', 'n 5: core'],
  ] as const)
    it(`of ${word} is ${to}`, () => assert.deepEqual(definedAt(word), [to]));

  it('of an acceptance is what its rule finds, where several things have the name', () => {
    assert.deepEqual(definedAt('at: pad|dock, '), ['s 7: paddock']);
  });

  it('of what is no name is none', () => {
    for (const word of ['ki|nd: switch', 'kind: swi|tch', '192.168.10.|1', 'it is a tr|ial']) {
      const at = site(word);
      assert.equal(definition(at.checked, at.file, at.offset), undefined, word);
    }
  });
});

describe('References', () => {
  it('of a device are found in cables, streams, volumes and acceptances', () => {
    assert.deepEqual(usedAt('co|re:'), [
      'n 3: core',
      'n 5: core',
      'n 18: core',
      'n 19: core',
      'n 20: core',
      's 14: core',
    ]);
    assert.deepEqual(usedAt('recor|der:'), [
      'n 12: recorder',
      'n 20: recorder',
      's 2: recorder',
      's 3: recorder',
      's 5: recorder',
    ]);
  });

  it('of a port are found as device/port, as own port, and as the device alone', () => {
    assert.deepEqual(usedAt('1|6: {'), ['n 10: 16', 'n 18: 16', 's 14: 16']);
    assert.deepEqual(usedAt('port: la|n}'), ['n 14: lan', 'n 15: lan', 'n 20: recorder', 's 3: lan']);
  });

  it('of a VLAN are found in ports and addresses', () => {
    assert.deepEqual(usedAt('hou|se: {id'), ['n 2: house', 'n 10: house', 'n 10: house', 'n 11: house', 'n 11: house']);
  });

  it('tell a stream from a recording of the same name', () => {
    assert.deepEqual(usedAt('carries: pad|dock'), ['s 2: paddock', 's 3: paddock', 's 7: paddock']);
    assert.deepEqual(usedAt('recordings: [pad|dock'), ['s 7: paddock', 's 9: paddock', 's 12: paddock']);
  });

  it('are highlighted in the file that is looked at', () => {
    const at = site('querier: co|re');
    const found = highlights(at.checked, at.file, at.offset);
    assert.deepEqual(
      found.map(({ at: place, isDeclaration }) => `${shown(place, at.file)}${isDeclaration ? ' declared' : ''}`),
      ['3: core', '5: core declared', '18: core', '19: core', '20: core'],
    );
  });
});

describe('Rename', () => {
  function renamed(word: string, to: string): { texts: Texts; before: Texts } {
    const at = site(word);
    const found = rename(at.checked, at.file, at.offset, to);
    assert.ok('edits' in found, 'refused' in found ? found.refused : '');
    return { texts: edited(at.texts, found.edits), before: at.texts };
  }

  for (const [word, to, lines] of [
    [
      'from: co|re/16',
      'hall',
      ['querier: hall', '  hall:', '{from: hall/16,', '{from: hall/1,', '{from: hall/2,', 'at: hall/16,'],
    ],
    ['from: core/1|6', 'uplink', ['uplink: {speed', '{from: core/uplink,', 'at: core/uplink,']],
    [
      'vlan: vi|deo',
      'cameras',
      ['  cameras: {id: 20', '{speed: 1 Gb/s, vlan: cameras}', 'trunk: [house, cameras]', 'cameras: 192.168.20.1'],
    ],
    ['carries: pad|dock', 'field', ['  field: {source', 'carries: field', '{stream: field,', 'recordings: [paddock]']],
    ['recordings: [pad|dock', 'field', ['recordings: [field]', '  field: {stream: paddock,', 'at: field,']],
    ['volume: arch|ive', 'disks', ['  disks: {host', 'volume: disks']],
    ['port: la|n}', 'cams', ['ports: {cams: {speed: 1 Gb/s, address: 192.168.20.5', 'port: cams}', 'egress: cams']],
  ] as const) {
    it(`of ${word} to ${to} changes every mention, and the site stays as sound`, () => {
      const { texts, before } = renamed(word, to);
      const all = Object.values(texts).join('\n');
      for (const line of lines) assert.ok(all.includes(line), `${line} in\n${all}`);
      const rules = (of: Texts): string[] => diagnosticsOf(of).map(({ rule }) => rule.id);
      assert.deepEqual(rules(texts), rules(before));
    });
  }

  it('quotes a name that YAML would take for something else, and keeps quotes', () => {
    const text =
      'devices:\n  core: {kind: switch, ports: {1: {vlan: "vid$0eo"}, 2: {vlan: video}}}\nvlans:\n  video: {id: 20}\n';
    const at = atCursor(text);
    const found = rename(at.checked, at.file, at.offset, '20');
    assert.ok('edits' in found);
    const [all] = Object.values(edited(at.texts, found.edits));
    assert.equal(
      all,
      'devices:\n  core: {kind: switch, ports: {1: {vlan: "20"}, 2: {vlan: "20"}}}\nvlans:\n  20: {id: 20}\n',
    );
  });

  for (const [word, to, reason] of [
    ['from: co|re/16', 'router', /a device router already/],
    ['from: core/1|6', '3', /has a port 3 already/],
    ['from: core/1|6', '5-6', /range of ports/],
    ['from: core/|1,', '9', /declared by the range 1-4/],
    ['volume: arch|ive', 'the archive', /cannot be a name/],
    ['volume: arch|ive', '', /cannot be a name/],
    ['rule: repeated|-hour', 'x', /name of a rule/],
    ['ki|nd: switch', 'x', /word of the site language/],
    ['kind: swi|tch', 'x', /no name here/],
    ['  1|-4: {', '1-5', /declares several ports/],
  ] as const) {
    it(`of ${word} to “${to}” is refused: ${reason.source}`, () => {
      const at = site(word);
      const found = rename(at.checked, at.file, at.offset, to);
      assert.match('refused' in found ? found.refused : 'not refused', reason);
    });
  }

  it('is refused before a name is typed where it can never be', () => {
    const port = atCursor('devices:\n  a: {kind: server}\n  b: {kind: camera}\ncables: [{from: a/e$0th, to: b}]\n');
    const found = renameable(port.checked, port.file, port.offset);
    assert.match('refused' in found ? found.refused : '', /a has one port, whose name is eth/);
    const twice = atCursor(
      'devices:\n  a: {kind: server}\nstreams:\n  x: {source: $0a}\n---\n'
        .replace('---\n', 'volumes:\n  a: {host: a}\n  a: {host: a}\n')
        .replace('{source: $0a}', '{source: a}')
        .replace('host: a}\n  a', 'host: a}\n  $0a'),
    );
    const again = renameable(twice.checked, twice.file, twice.offset);
    assert.match('refused' in again ? again.refused : '', /declared twice/);
    const missing = atCursor('streams:\n  x: {source: gat$0e}\n');
    const none = renameable(missing.checked, missing.file, missing.offset);
    assert.match('refused' in none ? none.refused : '', /There is no device gate/);
  });

  it('begins with the name alone', () => {
    const at = site('from: core/1|6');
    const found = renameable(at.checked, at.file, at.offset);
    assert.ok('name' in found);
    assert.equal(found.name, '16');
    assert.equal(shown(found.at, at.file), '18: 16');
  });
});
