// What `auto` is filled in with: free, each its own, and the same from run to run.
import assert from 'node:assert/strict';
import { check, fixAll } from '../../server/src/check.ts';
import { diagnosticsOf, edited, folderOf } from '../site.ts';

const SITE = `vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.2-192.168.10.250}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, address: auto, igmp-snooping: true, ports: {1-8: {speed: 1 Gb/s, vlan: video}, 9: {speed: 1 Gb/s, trunk: [house, video]}}}
  router: {kind: router, ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: auto, video: auto}}}}
  paddock-cam: {kind: camera, address: 192.168.20.2, speed: 1 Gb/s}
  gate-cam: {kind: camera, address: auto, speed: 1 Gb/s}     # new
  doors: {kind: computer, ports: {1-3: {address: auto, speed: 1 Gb/s}}}
  recorder: {kind: server, address: auto, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: gate-cam}
  - {from: core/3, to: recorder}
  - {from: core/4, to: doors/1}
  - {from: core/5, to: doors/2}
  - {from: core/6, to: doors/3}
  - {from: core/9, to: router}
streams:
  a: {source: recorder, transport: rtp, group: 239.192.20.1, port: auto, receivers: [gate-cam]}
  b: {source: recorder, transport: rtp, group: auto, port: auto, receivers: [gate-cam]}
  c: {source: recorder, transport: rtp, group: auto, port: 5004, receivers: [gate-cam]}
  d: {source: recorder, transport: rtp, port: auto, receivers: [gate-cam]}
  e: {source: paddock-cam, transport: rtp, port: auto, receivers: [gate-cam, recorder]}
  f: {source: paddock-cam, transport: rtsp, port: auto, receivers: [recorder]}
`;

const FILLED = `vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.2-192.168.10.250}
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, address: 192.168.20.3, igmp-snooping: true, ports: {1-8: {speed: 1 Gb/s, vlan: video}, 9: {speed: 1 Gb/s, trunk: [house, video]}}}
  router: {kind: router, ports: {lan: {speed: 1 Gb/s, trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  paddock-cam: {kind: camera, address: 192.168.20.2, speed: 1 Gb/s}
  gate-cam: {kind: camera, address: 192.168.20.4, speed: 1 Gb/s}     # new
  doors: {kind: computer, ports: {1-3: {address: 192.168.20.21, speed: 1 Gb/s}}}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
`;

const values = (text: string): string[] =>
  diagnosticsOf({ a: text })
    .filter(({ rule }) => rule.id === 'unfilled')
    .map(({ message }) => message);

describe('What is written as auto', () => {
  it('is filled in with what is free, each with its own, comments kept', () => {
    const after = fixAll(folderOf({ a: SITE })).texts.get('a') ?? '';
    assert.equal(after.slice(0, FILLED.length), FILLED);
    assert.doesNotMatch(after, /auto/);
  });

  it('makes no clash', () => {
    const after = fixAll(folderOf({ a: SITE })).texts.get('a') ?? '';
    const clashes = diagnosticsOf({ a: after }).filter(({ rule }) =>
      /duplicate|clash|reserved|shared|overlap|pool|outside|unfilled/.test(rule.id),
    );
    assert.deepEqual(
      clashes.map(({ message }) => message),
      [],
    );
  });

  it('is filled in alike whenever it is asked, and in whatever order', () => {
    const all = fixAll(folderOf({ a: SITE })).texts.get('a');
    assert.equal(fixAll(folderOf({ a: SITE })).texts.get('a'), all);
    const first = check(folderOf({ a: SITE })).diagnostics.filter(({ rule }) => rule.id === 'unfilled');
    // One by one from the first on, each time from a site that is read afresh.
    let texts: Readonly<Record<string, string>> = { a: SITE };
    for (let left = first.length; left > 0; left--) {
      const [next] = check(folderOf(texts)).diagnostics.filter(({ rule }) => rule.id === 'unfilled');
      texts = edited(texts, next?.fixes?.()[0]?.edits ?? []);
    }
    assert.equal(texts['a'], all);
  });

  it('follows an edit', () => {
    const folder = folderOf({ a: SITE });
    const before = check(folder);
    folder.set('a', SITE.replace('192.168.20.2,', '192.168.20.1,'));
    const filled = check(folder, before)
      .diagnostics.filter(({ rule }) => rule.id === 'unfilled')
      .map(({ message }) => message);
    assert.deepEqual(filled, values(SITE.replace('192.168.20.2,', '192.168.20.1,')));
  });

  it('is not reported as missing', () => {
    const ids = diagnosticsOf({ a: SITE.replace('querier: core', 'querier: core, gateway: router') }).map(
      ({ rule }) => rule.id,
    );
    assert.ok(!ids.includes('gateway-without-address') && !ids.includes('port-missing'), ids.join());
  });

  it('stays as it is where the site does not tell enough', () => {
    const loose =
      'vlans:\n  a: {id: 1, subnet: 10.0.0.0/24}\n  b: {id: 2, subnet: 10.0.1.0/24}\ndevices:\n  cam: {kind: camera, address: auto}\n';
    assert.match(values(loose).join(), /its VLAN is not known/);
    assert.equal(fixAll(folderOf({ a: loose })).texts.get('a'), loose);
    const full =
      'vlans:\n  a: {id: 1, subnet: 10.0.0.0/30}\ndevices:\n  x: {kind: camera, address: 10.0.0.1}\n  y: {kind: camera, address: 10.0.0.2}\n  z: {kind: camera, address: auto}\n';
    assert.match(values(full).join(), /a is full/);
  });
});
