/**
 * Run by memory.test.ts with --expose-gc: prints the heap in bytes after each hundred of twelve hundred edits, as JSON.
 */

import { check } from '../../server/src/check.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { hover } from '../../server/src/features/hover/hover.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { putIn } from './mutate.ts';
import { Random } from './random.ts';

const EDITS = 1200;
const random = new Random(1);
const folder = new SiteFolder();
const begin: readonly (readonly [string, string])[] = [
  [
    'devices.site.yaml',
    `
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1-4: {speed: 1 Gb/s, vlan: video}, 5: {speed: 1 Gb/s, vlan: house}}}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: gate-cam}
  - {from: core/3, to: recorder, type: cat6, length: 3 m}
`,
  ],
  [
    'streams.site.yaml',
    `
site: {name: Harrow Lane, timezone: Europe/London}
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
  house: {id: 10, subnet: 192.168.10.0/24, querier: cor}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
  gate: {source: gate-cam, transport: rtp, group: 239.192.20.32, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "%Y-%m-%d_%H-%M-%S.mp4"}
`,
  ],
];
let checked: Checked | undefined;
const heaps: number[] = [];

for (let edit = 0; edit < EDITS; edit++) {
  const [uri, text] = random.pick(begin) ?? ['', ''];
  // Every other edit undoes the one before, so that the site is the same at each measurement.
  const at = random.below(text.length);
  folder.set(uri, putIn(text, at, `word-${edit}`));
  checked = check(folder, checked);
  for (const { fixes } of checked.diagnostics.slice(0, 2)) fixes?.();
  const file = folder.get(uri);
  if (file !== undefined) hover(checked, file, at);
  for (const [name, own] of begin) folder.set(name, own);
  checked = check(folder, checked);
  if (edit % 100 === 99) heaps.push(heapAfterCollection());
}
console.log(JSON.stringify(heaps));

function heapAfterCollection(): number {
  if (globalThis.gc === undefined) throw new Error('run with --expose-gc');
  globalThis.gc();
  globalThis.gc();
  return process.memoryUsage().heapUsed;
}
