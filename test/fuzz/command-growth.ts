/**
 * Run by named.test.ts: prints, as JSON, how many operations each thing takes that is made of a plan, of large sites and
 * of such that are four times as large.
 */

// First, so that the code of all others has counters.
import { operations } from '../operations.ts';
import { lineDiff } from '../../server/src/cli/line-diff.ts';
import { check } from '../../server/src/check.ts';
import { compare } from '../../server/src/compare/compare.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { elementsOf } from '../../server/src/failure/element.ts';
import { rankedOf } from '../../server/src/failure/ranking.ts';
import { portTable } from '../../server/src/make/wiring/port-table.ts';
import type { Plan } from '../../server/src/plan.ts';
import { purchasesOf } from '../../server/src/purchases/purchases.ts';
import { folderOf } from '../site.ts';

const times = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join('');
const address = (index: number): string => `10.0.${index >> 8}.${index & 255}`;

const SITES: Readonly<Record<string, (size: number) => string>> = {
  'cameras alone': (size) =>
    `devices:\n${times(size, (i) => `  c${i}: {kind: camera, address: ${address(i + 1)}, speed: 100 Mb/s}\n`)}`,
  'switches with a camera each at one switch': (size) =>
    `vlans: {v: {id: 20, subnet: 10.0.0.0/8, querier: core}}
devices:
  core: {kind: switch, igmp-snooping: true, address: 10.255.0.1, ports: {1-${size + 1}: {speed: 1 Gb/s, vlan: v}}}
  rec: {kind: server, address: 10.255.0.2, speed: 1 Gb/s}
${times(
  size,
  (i) => `  s${i}: {kind: switch, rack: {name: r${i}, unit: 1}, poe-budget: 60 W, ports: {1-2: {vlan: v, poe: at}}}
  c${i}: {kind: camera, address: ${address(i + 1)}, speed: 100 Mb/s, poe: {class: 3}}\n`,
)}cables:
  - {from: core/1, to: rec}
${times(
  size,
  (i) => `  - {from: core/${i + 2}, to: s${i}/1, type: cat6, length: 20 m, label: L${i}, duct: d${i}}
  - {from: s${i}/2, to: c${i}, type: cat6, length: 20 m, label: M${i}, duct: d${i}}\n`,
)}streams:
${times(size, (i) => `  t${i}: {source: c${i}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 Mb/s}, receivers: [rec]}\n`)}`,
};

const ASKED: Readonly<Record<string, (plan: Plan) => unknown>> = {
  'the elements that may fail': elementsOf,
  'what is lost with a camera': (plan) =>
    elementsOf(plan)
      .filter(({ name }) => /^c\d+$/.test(name))
      .map((one) => rankedOf(plan, one)),
  'what is to be bought': purchasesOf,
  'the tables of ports': (plan) => portTable.make(plan, undefined),
  'the picture of the network': (plan) => networkPicture.draw(plan, '', { rate: 'peak' }),
};

const SIZE = 40;
const counts: Record<string, [number, number]> = {};
for (const [title, text] of Object.entries(SITES)) {
  const checkedOf = (size: number): ReturnType<typeof check> => {
    const checked = check(folderOf({ 'a.site.yaml': text(size) }));
    // What is kept of a plan once it is asked for is not what is counted.
    void checked.diagnostics;
    return checked;
  };
  const [small, large] = [checkedOf(SIZE), checkedOf(4 * SIZE)];
  for (const [what, of] of Object.entries(ASKED))
    counts[`${what} of ${title}`] = [
      await operations(() => void of(small.plan)),
      await operations(() => void of(large.plan)),
    ];
  const renamed = (size: number): ReturnType<typeof check> =>
    check(folderOf({ 'a.site.yaml': text(size).replaceAll(/\bc(?=\d)/g, 'k') }));
  const [before, after] = [renamed(SIZE), renamed(4 * SIZE)];
  counts[`the comparison of ${title}`] = [
    await operations(() => void compare(before, small)),
    await operations(() => void compare(after, large)),
  ];
}
const changed = (size: number): Promise<number> => {
  const lines = times(4 * size, (i) => `  c${i}: {kind: camera, adress: ${address(i + 1)}}\n`);
  return operations(() => void lineDiff('a', lines, lines.replaceAll('adress', 'address')));
};
counts['the diff of lines that all change'] = [await changed(SIZE), await changed(4 * SIZE)];
console.log(JSON.stringify(counts));
