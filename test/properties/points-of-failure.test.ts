// What parts a network alone is held against a library of graphs.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { deviceElement, elementNamed } from '../../server/src/failure/element.ts';
import { failureOf } from '../../server/src/failure/failure.ts';
import type { Plan } from '../../server/src/plan.ts';
import { needs, unavailable } from '../availability.ts';
import { planFrom } from './small-site.ts';

/** Switches with a camera and a screen each; every screen pulls every camera, so whatever parts them loses a picture. */
interface Mesh {
  readonly count: number;
  readonly joints: readonly (readonly [number, number])[];
}

const mesh: fc.Arbitrary<Mesh> = fc.integer({ min: 2, max: 7 }).chain((count) =>
  fc
    .tuple(
      fc.tuple(...Array.from({ length: count - 1 }, (_, i) => fc.nat({ max: i }))),
      fc.array(fc.tuple(fc.nat({ max: count - 1 }), fc.nat({ max: count - 1 })), { maxLength: 4 }),
    )
    .map(([parents, more]) => ({
      count,
      joints: [
        ...parents.map((parent, i): [number, number] => [parent, i + 1]),
        ...more.filter(([a, b]) => a !== b).map(([a, b]): [number, number] => [a, b]),
      ],
    })),
);

function meshText({ count, joints }: Mesh): string {
  const all = Array.from({ length: count }, (_, i) => i);
  const screens = JSON.stringify(all.map((i) => `screen-${i}`));
  const port = new Map<number, number>();
  const next = (at: number): string => {
    port.set(at, (port.get(at) ?? 2) + 1);
    return `s-${at}/${port.get(at)}`;
  };
  return `devices:
${all.map((i) => `  s-${i}: {kind: switch, spanning-tree: true, spanning-tree-priority: ${4096 * (i + 1)}, ports: {1-20: {speed: 1 Gb/s}}}\n  cam-${i}: {kind: camera, speed: 100 Mb/s}\n  screen-${i}: {kind: display, speed: 1 Gb/s}\n`).join('')}cables:
${joints.map(([a, b], i) => `  - {from: ${next(a)}, to: ${next(b)}, label: J-${i}}\n`).join('')}${all
    .map((i) => `  - {from: s-${i}/1, to: cam-${i}}\n  - {from: s-${i}/2, to: screen-${i}}\n`)
    .join('')}streams:
${all.map((i) => `  cam-${i}: {source: cam-${i}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 1 Mb/s}, receivers: ${screens}}\n`).join('')}`;
}

/** NetworkX, a graph library of general purpose, as the judge. */
const JUDGE = `
import json, sys
import networkx as nx
found = []
for count, joints in json.load(sys.stdin):
    graph = nx.Graph()
    graph.add_nodes_from(range(count))
    for a, b in joints:
        key = (a, b) if a < b else (b, a)
        if graph.has_edge(*key): graph.edges[key]['parallel'] = True
        else: graph.add_edge(*key, parallel=False)
    bridges = {tuple(sorted(e)) for e in nx.bridges(graph) if not graph.edges[e]['parallel']}
    found.append([[tuple(sorted(j)) in bridges for j in joints], [i in set(nx.articulation_points(graph)) for i in range(count)]])
json.dump(found, sys.stdout)
`;

describe('single points of failure', () => {
  it('are the bridges and the articulation points of the graph', function () {
    needs(this, 'python3');
    const meshes = fc.sample(mesh, { numRuns: 40, seed: 7 });
    const given = JSON.stringify(meshes.map(({ count, joints }) => [count, joints]));
    const judged = spawnSync('python3', ['-c', JUDGE], { input: given, encoding: 'utf8' });
    if (judged.stderr.includes('No module named'))
      unavailable(this, 'networkx is not installed (apt-get install python3-networkx)');
    assert.equal(judged.status, 0, judged.stderr);
    const expected = JSON.parse(judged.stdout) as [boolean[], boolean[]][];
    meshes.forEach((one, index) => {
      const plan = planFrom(meshText(one));
      const [bridges, points] = expected[index] ?? [];
      assert.deepEqual(
        one.joints.map((_, i) => lost(plan, `J-${i}`) > 0),
        bridges,
        meshText(one),
      );
      // A switch takes its own camera and screen with it; what others lose besides tells that it joins them.
      assert.deepEqual(
        Array.from({ length: one.count }, (_, i) => partsOthers(plan, i)),
        points,
        meshText(one),
      );
    });
    assert.ok(expected.some(([bridges]) => bridges.includes(true) && bridges.includes(false)));
  });
});

function lost(plan: Plan, name: string): number {
  const element = elementNamed(plan, name);
  assert.ok(element !== undefined);
  return failureOf(plan, element).pictures.length;
}

function partsOthers(plan: Plan, index: number): boolean {
  const device = plan.site.deviceByName.get(`s-${index}`);
  assert.ok(device !== undefined);
  const own = [`cam-${index}`, `screen-${index}`];
  return failureOf(plan, deviceElement(device)).pictures.some(
    ({ stream, receiver }) => !own.includes(stream.name) && !own.includes(receiver),
  );
}
