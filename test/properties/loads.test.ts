// What must hold of the loads of any site.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { StreamCopies } from '../../server/src/network/routes.ts';
import { oppositePort } from '../../server/src/network/link.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { DirectionReport, Report } from '../../server/src/report/report.ts';
import type { Device } from '../../server/src/site/model.ts';
import { entriesOf, planFrom, reportFrom, smallSite, textOf } from './small-site.ts';

const RUNS = { numRuns: 100 };

function sent({ untagged, tagged }: StreamCopies): number {
  return untagged + tagged;
}

function replied({ repliesUntagged, repliesTagged }: StreamCopies): number {
  return repliesUntagged + repliesTagged;
}

/** Copies of a stream that come into a device, and that leave it. What a port discards does not come in. */
function through(
  { network }: Plan,
  device: Device,
  stream: string,
  copies: (crossing: StreamCopies) => number,
): { into: number; outOf: number } {
  const counted = { into: 0, outOf: 0 };
  for (const link of network.topology.links) {
    for (const out of [link.a, link.b]) {
      const crossing = network.copies(link, out).find((each) => each.stream.name === stream);
      if (crossing === undefined) continue;
      if (out.device === device) counted.outOf += copies(crossing);
      if (oppositePort(link, out).device === device && oppositePort(link, out) !== link.blocked)
        counted.into += copies(crossing);
    }
  }
  return counted;
}

function directions({ links }: Report): [string, DirectionReport][] {
  return links.flatMap(({ from, to, forward, backward }): [string, DirectionReport][] => [
    [`${from} → ${to}`, forward],
    [`${to} → ${from}`, backward],
  ]);
}

describe('loads of sites at random', () => {
  it('neither appear nor vanish at a switch: each copy of a unicast stream that comes in goes out', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const plan = planFrom(textOf(entriesOf(site)));
        for (const device of plan.site.devices.filter(({ bridging }) => bridging)) {
          for (const { name, group } of plan.site.streams) {
            if (group !== undefined) continue;
            for (const copies of [sent, replied]) {
              const { into, outOf: out } = through(plan, device, name, copies);
              assert.equal(into, out, `${name} at ${device.name}`);
            }
          }
        }
      }),
      RUNS,
    );
  });

  it('neither appear nor vanish at a switch: a group comes in once in each VLAN, and only then goes out', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const plan = planFrom(textOf(entriesOf(site)));
        for (const device of plan.site.devices.filter(({ bridging }) => bridging)) {
          for (const stream of plan.site.streams) {
            const { name, group } = stream;
            if (group === undefined) continue;
            const { into, outOf: out } = through(plan, device, name, sent);
            const networks = plan.network.delivery(stream).domains.length;
            assert.ok(into <= networks, `${name} comes into ${device.name} ${into} times in ${networks} networks`);
            assert.ok(out === 0 || into > 0, `${name} leaves ${device.name} and never came in`);
          }
        }
      }),
      RUNS,
    );
  });

  it('never leave by a port that spanning tree has discard', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const { network } = planFrom(textOf(entriesOf(site)));
        for (const link of network.topology.links) {
          if (link.blocked !== undefined) assert.deepEqual(network.copies(link, link.blocked), []);
        }
      }),
      RUNS,
    );
  });

  it('come to each receiver that is said to be reached, and no unicast to another', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const plan = planFrom(textOf(entriesOf(site)));
        for (const { stream, reaches, source } of plan.network.deliveries) {
          for (const device of plan.site.devices) {
            if (device.bridging || device === source || device.kind === 'router') continue;
            const { into } = through(plan, device, stream.name, sent);
            if (reaches.includes(device.name)) assert.equal(into, 1, `${stream.name} at ${device.name}`);
            else if (stream.group === undefined) assert.equal(into, 0, `${stream.name} at ${device.name}`);
          }
        }
      }),
      RUNS,
    );
  });

  it("of a link are the sums of its streams'", () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        for (const [name, direction] of directions(reportFrom(textOf(entriesOf(site))))) {
          for (const wire of ['line', 'frame', 'frameWithFcs', 'payload'] as const) {
            for (const part of ['nominal', 'peak'] as const) {
              const sum = Object.values(direction.streams).reduce((all, share) => all + share[wire][part], 0);
              assert.equal(direction[wire][part], sum, `${name} ${wire} ${part}`);
            }
          }
        }
      }),
      RUNS,
    );
  });

  it('grow from payload to frame to line, and from nominal to peak', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        for (const { payload, frame, frameWithFcs, line } of reportFrom(textOf(entriesOf(site))).streams) {
          for (const part of ['nominal', 'peak'] as const)
            assert.ok(
              payload[part] <= frame[part] && frame[part] <= frameWithFcs[part] && frameWithFcs[part] <= line[part],
            );
          for (const wire of [payload, frame, frameWithFcs, line]) assert.ok(wire.nominal <= wire.peak);
        }
      }),
      RUNS,
    );
  });

  // Where groups that nobody joined are flooded, the first receiver makes a snooping switch prune, as the measured
  // switch does; so only sites that drop them are asked.
  it('of no link get less when a receiver is added', () => {
    fc.assert(
      fc.property(smallSite({ flooding: false }), fc.nat(), fc.nat(), (site, which, whom) => {
        const entries = entriesOf(site);
        const streams = entries.filter(({ section }) => section === 'streams');
        const chosen = streams[which % streams.length];
        const receiver = `screen-${whom % site.screens.length}`;
        const more = entries.map((entry) => {
          if (entry !== chosen) return entry;
          const data = entry.data as { readonly receivers: readonly string[] };
          return { ...entry, data: { ...data, receivers: [...new Set([...data.receivers, receiver])] } };
        });
        const before = new Map(directions(reportFrom(textOf(entries))));
        for (const [name, { line }] of directions(reportFrom(textOf(more)))) {
          const was = before.get(name)?.line;
          assert.ok(was !== undefined && line.nominal >= was.nominal && line.peak >= was.peak, name);
        }
      }),
      RUNS,
    );
  });
});
