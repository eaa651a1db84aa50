/**
 * Run by named.test.ts: prints, as JSON, how many operations a check of hostile sites takes, small and eight times as
 * large, and how many the fixes of the large one take.
 */

// Imported first, so that all other code has counters.
import { operations } from '../operations.ts';
import { check } from '../../server/src/check.ts';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { folderOf } from '../site.ts';

const times = (count: number, make: (index: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, index) => make(index)).join(between);

const SITES: Readonly<Record<string, (size: number) => string>> = {
  'keys of one mapping': (size) => `policies: {${times(size, (i) => `k${i}: 1`, ', ')}}\n`,
  'keys of one mapping on lines': (size) => `policies:\n${times(size, (i) => `  k${i}: 1\n`)}`,
  'a key that is there again and again': (size) => `policies:\n${times(size, () => '  k: 1\n')}`,
  'streams that carry each other in a ring': (size) =>
    `streams:\n${times(size, (i) => `  s${i}: {source: cam, carries: s${(i + 1) % size}}\n`)}`,
  'devices of one name': (size) => `devices:\n${times(size, () => '  cam: {kind: camera, address: 10.0.0.1}\n')}`,
  'devices of one address': (size) =>
    `devices:\n${times(size, (i) => `  cam-${i}: {kind: camera, address: 10.0.0.1}\n`)}`,
  'streams of one group': (size) =>
    `streams:\n${times(size, (i) => `  s${i}: {source: cam, transport: rtp, group: 239.192.0.1, port: 5004}\n`)}`,
  'hardware addresses that are one': (size) =>
    `devices:\n${times(size, (i) => `  cam-${i}: {kind: camera, mac: "02:00:00:00:20:41"}\n`)}`,
  'cables to one port': (size) => `cables:\n${times(size, () => '  - {from: core/1, to: cam}\n')}`,
  'lines that are no YAML': (size) => times(size, () => '<p>camera</p>\n'),
  'names that are not declared': (size) =>
    `streams:\n${times(size, (i) => `  s${i}: {source: unknown-${i}, transport: rtp, group: 239.192.0.1, port: 5004}\n`)}` +
    `devices:\n${times(size, (i) => `  camera-${i}: {kind: camera}\n`)}`,
  'names that are not declared beside values that do not fit': (size) =>
    `policies:\n  retention:\n${times(size, (i) => `    - {recordings: [r${i}], at-least: x, at-most: x, because: ""}\n`)}`,
  'elements of one list that do not fit': (size) =>
    `policies: {retention: [${times(size, (i) => `{recordings: [r${i}, 1, {}], until: x}`, ', ')}]}\n`,
  'cables to devices that are not declared': (size) =>
    `cables:\n${times(size, (i) => `  - {from: a${i}/1, to: b${i}/1}\n`)}`,
  'ports in VLANs that are not declared': (size) =>
    `devices:\n  core: {kind: switch, ports: {${times(size, (i) => `p${i}: {vlan: unknown-${i}}`, ', ')}}}\n`,
  'items without a value in one pair of brackets': (size) =>
    `vlans: {${times(size, (i) => `of-a-name-that-is-long-${i}:,`)}}\n`,
  'keys that are misspelled in one pair of brackets': (size) =>
    `devices: {${times(size, (i) => `c${i}: {kind: camera, adress: 10.0.0.1}`, ', ')}}\n`,
  'receivers of one group that have no cable': (size) =>
    'vlans: {video: {id: 20, subnet: 10.0.0.0/8}}\ndevices:\n  core: {kind: switch, ports: {1: {vlan: video}}}\n' +
    `  cam: {kind: camera}\n${times(size, (i) => `  d${i}: {kind: display}\n`)}cables: [{from: core/1, to: cam}]\n` +
    `streams:\n  live: {source: cam, transport: rtp, group: 239.192.20.1, port: 5004, receivers: [${times(size, (i) => `d${i}`, ', ')}]}\n`,
  'cables to ports that there are not': (size) =>
    `devices:\n  core: {kind: switch, ports: {1-2: {}}}\n${times(size, (i) => `  cam-${i}: {kind: camera}\n`)}` +
    `cables:\n${times(size, (i) => `  - {from: core/1${i}, to: cam-${i}}\n`)}`,
  'a quote that is never closed': (size) => `vlans:\n  video: {id: "${times(size, () => 'x\n   ')}\n`,
};

const counts: Record<string, readonly [number, number, number]> = {};
for (const [title, text] of Object.entries(SITES)) {
  let found: readonly Diagnostic[] = [];
  const cost = (size: number): Promise<number> =>
    operations(() => {
      found = check(folderOf({ 'a.site.yaml': text(size) })).diagnostics;
      if (found.length === 0) throw new Error(`${title} is right`);
    });
  counts[title] = [
    await cost(250),
    await cost(2000),
    await operations(() => {
      for (const { fixes } of found) fixes?.();
    }),
  ];
}
console.log(JSON.stringify(counts));
