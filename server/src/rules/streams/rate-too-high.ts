/** Rates that only a slip explains. Long by its examples. */

import { grouped } from '../../grouped.ts';
import type { Example, Finding, Related, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { linePeakOf } from '../../network/loads.ts';
import { nodeAt } from '../../site/edit.ts';
import { WRITE_WARN } from '../../site/limits.ts';
import { type Place, placeOf } from '../../site/item.ts';
import { type Port, type Stream, portName } from '../../site/model.ts';
import { audioRates } from '../../standards/audio-rates.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import { bitRate, few, list, asName } from '../../text/words.ts';

/** A rate so many times that of any other stream looks like a mistyped digit or unit. Common practice, no source. */
const SLIP = 5;

export const rateTooHigh: Rule = {
  id: 'rate-too-high',
  severity: 'error',
  summary: 'A rate is so high that it alone overloads links or disks.',
  why: `A digit too many, or Gb/s for Mb/s, overloads every link and volume that the stream uses, though none of
them is at fault. It is found where a stream is faster than the port that sends it, and where a stream has five times the
rate of any other and nothing would be overloaded without it. Correct the rate, or the speed of the port.`,
  source: 'A port sends no more than its speed: IEEE 802.3. The factor of five is common practice.',
  check(context: RuleContext, report: Report): void {
    const beyond = beyondTheirPort(context);
    if (beyond.length > 0) {
      const overloads = overloadsOf(context);
      const without = new Set(beyond.map(({ stream }) => stream));
      const cured = overloads.filter((one) => one.without(without));
      for (const alike of grouped(beyond, ({ port }) => port).values()) {
        const own = cured.filter((one) => alike.some(({ stream }) => one.uses(stream)));
        if (alike.length > 1) report(slowPort(alike, own));
      }
      for (const { stream, port, speed } of beyond) {
        if (beyond.some((other) => other.stream !== stream && other.port === port)) continue;
        const { peak } = context.network.rates(stream).payload;
        const own = cured.filter((one) => one.uses(stream));
        report({
          at: placeOfRate(stream),
          message:
            `${asName(stream.name)} is ${bitRate(peak)}, and ${portName(port)}, which sends it, does ${bitRate(speed)}. ` +
            'Correct the rate, or the speed of the port.',
          acceptAt: [stream.name, portName(port)],
          effects: unlikeCodec(stream),
          related: [
            {
              at: placeOf(port.device.item, [...port.keyPath, 'speed']),
              message: `${portName(port)}: ${bitRate(speed)}`,
            },
            ...own.flatMap(({ related }) => related),
          ],
          entails: own.flatMap(({ effects }) => effects),
        });
      }
      return;
    }
    const [slip, times] = slipIn(context);
    if (slip === undefined) return;
    const overloads = overloadsOf(context);
    if (!isToldApart(overloads, slip)) return;
    const without = new Set([slip]);
    if (!overloads.every((one) => one.uses(slip) && one.without(without))) return;
    report({
      at: placeOfRate(slip),
      message:
        `${asName(slip.name)} is ${bitRate(context.network.rates(slip).payload.peak)}, ${Math.floor(times)} times as much as ` +
        `any other stream, and without it nothing would be overloaded: ${few(overloads.map(({ name }) => name))}. ` +
        "Correct the rate; if it is right, lower the stream's rate, or take faster links and larger disks.",
      acceptAt: [slip.name],
      effects: unlikeCodec(slip),
      related: overloads.flatMap(({ related }) => related),
      entails: overloads.flatMap(({ effects }) => effects),
    });
  },
};

/** A finding for a port that several streams exceed: its speed is wrong. */
function slowPort(alike: readonly Beyond[], overloads: readonly Overloaded[]): Finding {
  const [first] = alike;
  if (first === undefined) throw new RangeError('a port of no streams');
  const { port, speed } = first;
  const names = alike.map(({ stream }) => stream.name);
  return {
    at: placeOfPort(port, 'speed'),
    message:
      `${portName(port)} does ${bitRate(speed)}, and each of ${list(names.map(asName))}, which it sends, is more. Correct the ` +
      'speed of the port, or the rates.',
    acceptAt: [portName(port), port.device.name, ...names],
    related: [
      ...alike.map(({ stream }) => ({ at: placeOfRate(stream), message: `the rate of ${asName(stream.name)}` })),
      ...overloads.flatMap(({ related }) => related),
    ],
    entails: overloads.flatMap(({ effects }) => effects),
  };
}

interface Beyond {
  readonly stream: Stream;
  readonly port: Port;
  /** bit/s */
  readonly speed: number;
}

/** Streams that are faster than the port by which they leave their source. */
function beyondTheirPort({ site, network }: RuleContext): Beyond[] {
  const found: Beyond[] = [];
  for (const stream of site.streams) {
    if (stream.carries !== undefined) continue;
    const port = sendingPort(network, stream);
    const speed = port?.speed;
    if (port === undefined || speed === undefined || speed === 0 || port.lag !== undefined) continue;
    if (network.rates(stream).payload.peak > speed) found.push({ stream, port, speed });
  }
  return found;
}

/** The port by which a stream leaves its source; where no path is known, the only one with a cable. */
function sendingPort({ delivery, topology }: RuleContext['network'], stream: Stream): Port | undefined {
  const { source, leaves } = delivery(stream);
  if (leaves !== undefined) return leaves.port;
  const cabled = source?.ports.filter((port) => topology.linkAt(port) !== undefined) ?? [];
  return cabled.length === 1 ? cabled[0] : undefined;
}

/** The stream with a far higher rate than all others, and the factor. */
function slipIn({ site, network }: RuleContext): readonly [Stream | undefined, number] {
  const own = site.streams.filter((stream) => stream.carries === undefined);
  if (own.length < 2) return [undefined, 0];
  const peakOf = (stream: Stream): number => network.rates(stream).payload.peak;
  const [first, second] = [...own].sort((a, b) => peakOf(b) - peakOf(a));
  if (first === undefined || second === undefined || peakOf(second) === 0) return [undefined, 0];
  const times = peakOf(first) / peakOf(second);
  return times < SLIP ? [undefined, 0] : [first, times];
}

/** A link, a volume or the air of an access point with a load over the policy's limit. */
interface Overloaded {
  readonly name: string;
  /** The object that its finding is about. */
  readonly toldAt: object;
  readonly related: readonly Related[];
  readonly effects: readonly object[];
  /** Whether the stream, or one that carries it, is part of it. */
  readonly uses: (stream: Stream) => boolean;
  /** Whether it is a link that the stream, with those that carry it, overloads alone. */
  readonly isTooSmallFor: (stream: Stream) => boolean;
  /** Whether it would be within the policy without these streams and those that carry them. */
  readonly without: (streams: ReadonlySet<Stream>) => boolean;
}

/** Whether more than one finding would report it: links that one stream overloads alone share a finding. */
function isToldApart(overloads: readonly Overloaded[], slip: Stream): boolean {
  return new Set(overloads.map((one) => (one.isTooSmallFor(slip) ? slip : one.toldAt))).size > 1;
}

function overloadsOf({ site, network, plan }: RuleContext): Overloaded[] {
  const { linkLoad, volumeFill, airtime } = site.policies;
  const rootOf = (stream: Stream): Stream => {
    let root = stream;
    const seen = new Set([stream]);
    for (;;) {
      const next = root.carries === undefined ? undefined : site.streamByName.get(root.carries);
      if (next === undefined || seen.has(next)) return root;
      seen.add((root = next));
    }
  };
  const found: Overloaded[] = [];
  const least = Math.min(linkLoad.warn, linkLoad.limit);
  for (const link of network.topology.links) {
    const { capacity } = link;
    if (capacity === undefined || capacity === 0) continue;
    for (const out of [link.a, link.b]) {
      const load = network.load(link, out);
      if (load.line.peak * 10_000 <= least * capacity) continue;
      const parts = network
        .copies(link, out)
        .map((one) => ({ root: rootOf(one.stream), peak: linePeakOf(one, network.rates(one.stream)) }));
      found.push({
        name: portName(out),
        toldAt: plan.overloads.some((one) => one.link === link && one.out === out) ? out.device : link,
        isTooSmallFor: (stream) => partsOfStream(parts, stream) > (least / 10_000) * capacity,
        related: [{ at: placeOfEnd(link, out), message: `${portName(out)} carries ${bitRate(load.line.peak)}` }],
        effects: [load],
        ...partsOf(parts, load.line.peak, (least / 10_000) * capacity),
      });
    }
  }
  for (const figures of plan.storage.volumes) {
    const { volume, usableBytes = 0, bytesKept, recordings, writeRate } = figures;
    const recorded = recordings.map(({ recording: { stream = '' }, bytesKept: kept = 0, rate }) => {
      const own = site.streamByName.get(stream);
      return { root: own === undefined ? undefined : rootOf(own), kept, written: rate.peak / 8 };
    });
    const filled = (usableBytes / 10_000) * Math.min(volumeFill.warn ?? volumeFill.limit, volumeFill.limit);
    if (usableBytes > 0 && bytesKept > filled)
      found.push({
        name: volume.name,
        toldAt: figures,
        isTooSmallFor: () => false,
        related: [{ at: placeOf(volume.item, ['capacity']), message: `${asName(volume.name)} is too small for it` }],
        effects: [figures],
        ...partsOf(
          recorded.map(({ root, kept }) => ({ root, peak: kept })),
          bytesKept,
          filled,
        ),
      });
    const sustained = ((volume.sustainedWrite ?? 0) / 10_000) * WRITE_WARN;
    if (sustained > 0 && writeRate.peak > sustained)
      found.push({
        name: volume.name,
        toldAt: writeRate,
        isTooSmallFor: () => false,
        related: [
          { at: placeOf(volume.item, ['sustained-write']), message: `${asName(volume.name)} is too slow for it` },
        ],
        effects: [writeRate],
        ...partsOf(
          recorded.map(({ root, written }) => ({ root, peak: written })),
          writeRate.peak,
          sustained,
        ),
      });
  }
  for (const air of plan.air) {
    const bound = Math.min(airtime.warn, airtime.limit) / 10_000;
    if (air.share.peak <= bound) continue;
    const parts = air.streams.map(({ stream, share }) => ({ root: rootOf(stream), peak: share.peak }));
    found.push({
      name: air.device.name,
      toldAt: air,
      isTooSmallFor: () => false,
      related: [],
      effects: [air],
      ...partsOf(parts, air.share.peak, bound),
    });
  }
  return found;
}

interface Part {
  readonly root: Stream | undefined;
  readonly peak: number;
}

function partsOfStream(parts: readonly Part[], stream: Stream): number {
  return parts.reduce((sum, { root, peak }) => sum + (root === stream ? peak : 0), 0);
}

function partsOf(parts: readonly Part[], sum: number, bound: number): Pick<Overloaded, 'uses' | 'without'> {
  return {
    uses: (stream) => parts.some(({ root }) => root === stream),
    without: (streams) =>
      parts.reduce((left, { root, peak }) => left - (root !== undefined && streams.has(root) ? peak : 0), sum) <= bound,
  };
}

/** Its audio, where most of the rate is one that its codec cannot have, which is reported. */
function unlikeCodec({ video, audio }: Stream): object[] {
  const peak = audio?.rate?.peak ?? 0;
  if (audio === undefined || peak < (video?.rate?.peak ?? 0)) return [];
  const range = audioRates(audio.codec, audio.sampleRate, audio.channels);
  return range !== undefined && peak > range.most ? [audio] : [];
}

/** The place of the greater part of its rate, the peak before the average. */
function placeOfRate({ item, video, audio }: Stream): Place {
  const part = (video?.rate?.peak ?? 0) >= (audio?.rate?.peak ?? 0) ? 'video' : 'audio';
  const keyPaths = [[part, 'peak-bitrate'], [part, 'bitrate'], ['mux-rate'], ['service'], ['multiplex'], [part]];
  return placeOf(item, keyPaths.find((route) => nodeAt(item, route) !== undefined) ?? []);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Gb/s}, receivers: [recorder]}
#                                                                                          ^^^^^^ paddock is 6 Gb/s, and paddock-cam/eth, which sends it, does 100 Mb/s
volumes:
  archive: {host: recorder, capacity: 4 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 4 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
  yard-cam: {kind: camera, speed: 1 Gb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: yard-cam}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 800 Mb/s}, receivers: [recorder]}
#                                                                                          ^^^^^^^^ paddock is 800 Mb/s, 133 times as much as any other stream, and without it nothing would be overloaded
  yard: {source: yard-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 4 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
  yard: {stream: yard, volume: archive, keep: 14 d}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
  yard-cam: {kind: camera, speed: 1 Gb/s}
  recorder: {kind: server, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: yard-cam}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 4 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
  yard: {stream: yard, volume: archive, keep: 14 d}
`,
  },
];
