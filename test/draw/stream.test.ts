// The way of a stream: every figure is the report's, every link that carries it is there once, and where it ends it says why.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { streamWay } from '../../server/src/draw/stream.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { bitRate } from '../../server/src/text/words.ts';
import { houses } from '../houses/read.ts';
import { planFrom } from '../report/paddock.ts';
import { faults, merged } from './geometry.ts';
import { type Picture, picture } from './picture.ts';

interface Drawn {
  readonly from: string;
  readonly to: string;
  readonly stream: string;
  readonly copies: number;
  readonly rate: string;
  /** It crosses only while a screen shows it instead of another: the report counts the largest that are shown together. */
  readonly waits: boolean;
}

/** The links of a picture, by what a screen reader says of them. */
function linksIn({ things }: Picture): Drawn[] {
  return things.flatMap(({ label }) => {
    const match = /^(\S+) to (\S+): (\S+), (?:(\d+) × )?([\d.]+ \w+\/s), /.exec(label);
    const [, some = '0'] = /(\d+) of \d+ while it is shown$/.exec(label) ?? [];
    if (match === null) return [];
    const [, from = '', to = '', stream = '', copies = '1', rate = ''] = match;
    return [
      {
        from,
        to,
        stream,
        copies: Number(copies) - Number(some),
        rate,
        waits: label.endsWith(' while it is shown') && some === '0',
      },
    ];
  });
}

function draw(plan: Plan, subject: string): Picture {
  return picture(svgFile(streamWay.draw(plan, subject, USUAL_OPTIONS)));
}

/** bit/s at peak that a stream takes from port to port. */
function inReport({ links }: Report, from: string, to: string, stream: string): number | undefined {
  for (const link of links) {
    if (link.from === from && link.to === to) return link.forward.streams[stream]?.line.peak;
    if (link.to === from && link.from === to) return link.backward.streams[stream]?.line.peak;
  }
  return undefined;
}

const PLANS = new Map([
  ...['harrow-lane', 'first-draft', 'cottages'].map(
    (sample) => [sample, planOf(readSite(`samples/${sample}`).folder.site())] as const,
  ),
  ...[...houses].map(([name, text]) => [name, planFrom(text)] as const),
]);

for (const [sample, plan] of PLANS)
  describe(`ways of streams of ${sample}`, () => {
    const report = reportOf(plan);

    it('have the figures of the report at each link', () => {
      for (const subject of streamWay.subjects(plan)) {
        const links = linksIn(draw(plan, subject));
        for (const { from, to, stream, copies, rate, waits } of links) {
          const peak = inReport(report, from, to, stream);
          assert.equal(peak === undefined, waits);
          if (waits) continue;
          assert.ok(peak !== undefined, `${subject}: ${from} → ${to} does not carry ${stream}`);
          // Where a router has it come back by the same link, the replies of the one way are counted with the other.
          if (links.some((one) => one.stream === stream && one.from === to && one.to === from)) continue;
          assert.equal(rate, bitRate(peak / copies), `${subject}: ${stream} on ${from} → ${to}`);
        }
      }
    });

    it('have each link that carries the stream to a group, once', () => {
      for (const { name, group } of plan.site.streams) {
        if (group === undefined) continue;
        const drawn = linksIn(draw(plan, name)).filter(({ stream, waits }) => stream === name && !waits);
        const ends = drawn.map(({ from, to }) => `${from} ${to}`);
        const carrying = report.links.flatMap(({ from, to, forward, backward }) => [
          ...(forward.streams[name] === undefined ? [] : [`${from} ${to}`]),
          ...(backward.streams[name] === undefined ? [] : [`${to} ${from}`]),
        ]);
        assert.deepEqual(ends.sort(), carrying.sort(), name);
      }
    });

    it('say of each receiver that gets nothing why', () => {
      for (const { name, unreached, reasons } of report.streams) {
        const said = draw(plan, name).things.filter(({ texts }) => texts.includes('▲ gets nothing:'));
        for (const receiver of unreached) {
          const box = said.find(({ at }) => at === receiver);
          assert.ok(box, `${name}: ${receiver}`);
          assert.equal(box.texts.slice(2).join(' '), reasons[receiver]);
        }
      }
    });
  });

const HOUSE = `
vlans: {video: {id: 20, subnet: 192.168.20.0/24, querier: attic}}
devices:
  attic: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, address: 192.168.20.2, ports: {1-4: {speed: 1 Gb/s, vlan: video}}}
  cellar: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, address: 192.168.20.3, ports: {1-4: {speed: 1 Gb/s, vlan: video}}}
  cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  screen: {kind: display, address: 192.168.20.61, speed: 1 Gb/s}
cables:
  - {from: cellar/1, to: cam, type: cat6, length: 5 m}
  - {from: cellar/2, to: screen, type: cat6, length: 5 m}
  - {from: cellar/4, to: attic/4, type: cat6, length: 20 m}
streams:
  door:
    source: cam
    transport: rtp
    group: 239.192.20.31
    port: 5004
    video: {codec: h264, bitrate: 4 Mb/s}
    receivers: [screen]
`;

describe('a picture of the way of a stream', () => {
  it('has the branch to the querier dotted, with the reason', () => {
    const { things } = draw(planFrom(HOUSE), 'door');
    const attic = things.find(({ at, names }) => names === 'devices' && at === 'attic');
    assert.ok(attic?.looks.has('unwanted'));
    assert.equal(attic?.texts.join(' '), 'attic switch gets it unasked: towards the querier, attic, or a router');
    const link = things.find(({ at, names }) => names === 'ports' && at === 'cellar/4');
    assert.ok(link?.looks.has('unwanted'));
    const wanted = things.find(({ at, names }) => names === 'ports' && at === 'cellar/2');
    assert.ok(wanted?.looks.has('main'));
  });

  it('has what a switch floods dotted, with that switch as the reason', () => {
    const flooding = HOUSE.replace('querier: attic', 'querier: cellar').replace(
      'cellar: {kind: switch, igmp-snooping: true, unregistered-multicast: drop,',
      'cellar: {kind: switch,',
    );
    const { things } = draw(planFrom(flooding), 'door');
    const attic = things.find(({ at, names }) => names === 'devices' && at === 'attic');
    assert.equal(attic?.texts.join(' '), 'attic switch gets it unasked: cellar does not snoop');
  });

  it('fits a screen, however many switches it passes', () => {
    const numbers = Array.from({ length: 12 }, (_, at) => at);
    const text = `devices:
${numbers.map((at) => `  s${at}: {kind: switch, ports: {1-9: {speed: 1 Gb/s}}}\n  host-${at}: {kind: display, speed: 1 Gb/s, address: 10.0.0.${at + 1}}`).join('\n')}
cables:
${numbers.map((at) => `  - {from: s${at}/1, to: host-${at}}${at === 0 ? '' : `\n  - {from: s${at}/9, to: s${at - 1}/8}`}`).join('\n')}
streams: {show: {source: host-0, group: 239.192.1.1, port: 5004, transport: rtp, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [host-11, host-4]}}
`;
    const drawn = draw(planFrom(text), 'show');
    assert.ok(drawn.width <= 1280, `${drawn.width} px`);
    assert.deepEqual([...faults(drawn), ...merged(drawn)], []);
    assert.equal(linksIn(drawn).length, 23);
  });

  it('says that it is not known where a rate is not', () => {
    const { things } = draw(planFrom(HOUSE.replace(', bitrate: 4 Mb/s', '')), 'door');
    const link = things.find(({ at, names }) => names === 'ports' && at === 'cellar/2');
    assert.match(link?.texts[0] ?? '', /\?/);
  });
});
