// An aggregated link of a real switch, cable by cable: each stream takes one of them, and the bounds that are told
// hold.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { before, describe, it } from 'mocha';
import { sharesOf } from '../../server/src/network/shares.ts';
import { unavailable } from '../availability.ts';
import { planFrom } from './family.ts';
import { Lab } from './lab.ts';
import { scaleOf } from './pace.ts';
import { whyNoLab } from './probe.ts';

const SECONDS = 3;
/** Of a cable's bytes: acknowledgements of TCP differ by more, so only the way out of the first switch is looked at. */
const PART = 0.02;
/** Bytes that are no stream's: ARP, LACP, membership reports and queries. */
const OTHER = 2000;

const SITE = readFileSync(new URL('./sites/aggregated.site.yaml', import.meta.url), 'utf8');

describe('an aggregated link of the lab', function () {
  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  it('carries each stream on one cable, and on the fullest no less and no more than the bounds', async () => {
    // By datagrams alone: what is sent is what is counted.
    const plan = planFrom({ 'a.site.yaml': SITE.replace(/^ {2}gate: .*\n/m, '') });
    const { network } = plan;
    const link = network.topology.links.find(({ members }) => members.length > 1);
    assert.ok(link !== undefined);
    for (const [out, position] of [
      [link.a, 0],
      [link.b, 1],
    ] as const) {
      const lab = new Lab(plan);
      try {
        await lab.build();
        const scale = scaleOf(plan);
        const earlier = await lab.countCables(link, position);
        await lab.measure(SECONDS, scale);
        const counted = (await lab.countCables(link, position)).map((bytes, cable) => bytes - (earlier[cable] ?? 0));
        const bytes = (rate: number): number => (rate * SECONDS * scale) / 8;
        const streams = network.copies(link, out).flatMap((copies) => {
          const rates = network.rates(copies.stream).tagged.frame.nominal;
          return Array.from({ length: copies.untagged + copies.tagged }, () => bytes(rates));
        });
        console.log(
          `      ${counted.join(', ')} bytes on the cables; streams of ${streams.map(Math.round).join(', ')}`,
        );
        const near = (a: number, b: number): boolean => Math.abs(a - b) <= Math.max(OTHER, PART * b);
        const isSpread = spreads(streams, counted.length).some((sums) =>
          sums.every((sum, cable) => near(counted[cable] ?? 0, sum)),
        );
        assert.ok(isSpread, 'the bytes of the cables are sums of whole streams');
        // The bounds are of the line and at peak; here peaks are as usual.
        const shares = sharesOf(network, link, out);
        const line = network.load(link, out).line.nominal / network.load(link, out).frame.nominal;
        const fullest = Math.max(...counted) * line;
        assert.ok(shares !== undefined);
        assert.ok(fullest >= bytes(shares.least) * (1 - PART) && fullest <= bytes(shares.all) * (1 + PART) + OTHER);
      } finally {
        lab.end();
      }
    }
  });
});

/** The sums on each cable, for every way to put the streams on so many. */
function spreads(streams: readonly number[], cables: number): number[][] {
  const [first, ...others] = streams;
  if (first === undefined) return [Array.from({ length: cables }, () => 0)];
  return spreads(others, cables).flatMap((sums) =>
    sums.map((_, cable) => sums.map((sum, at) => (at === cable ? sum + first : sum))),
  );
}
