import { namePlace, placeOf } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { grouped } from '../../grouped.ts';
import { few } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const sentTwice: Rule = {
  id: 'sent-twice',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A device sends on one stream twice to the same receiver.',
  why: `The receiver gets the same pictures twice and each link on the way carries them twice. Often another stream was
meant and is not sent at all, as happens to an entry that is copied. Name the other stream, or take one out.`,
  source: 'common practice, no source',
  check({ site, network }: RuleContext, report: Report): void {
    const reached = (stream: Stream): readonly string[] => network.delivery(stream).reaches;
    const carrying = site.streams.filter(isAsItCame);
    const alike = grouped(carrying, ({ source, carries, transport }) => `${source} ${carries} ${transport}`);
    servicesTwice(site, reached, report);
    for (const streams of alike.values())
      for (const [index, stream] of streams.entries()) {
        const twice = streams
          .slice(0, index)
          .map((other) => ({ other, both: reached(other).filter((name) => reached(stream).includes(name)) }))
          .find(({ both }) => both.length > 0);
        if (twice === undefined) continue;
        const { other, both } = twice;
        // Where it re-sends all streams that it receives, both are intended.
        const forgotten = forgottenBy(site, stream);
        if (forgotten.length === 0) continue;
        const names = forgotten.map(({ name }) => name);
        report({
          at: placeOf(stream.item, ['carries']),
          message:
            `${other.name} sends ${stream.carries} to ${few(both)} already, so it comes twice, and nothing sends ` +
            `${few(names)} on. Name the stream that ${stream.name} is to carry, or take ${stream.name} out.`,
          acceptAt: [stream.name, other.name],
          related: [{ at: namePlace(other.item), message: `${other.name} carries it too` }],
          fixes: () =>
            names
              .slice(0, OFFERED)
              .flatMap((name) =>
                fixOf(`Let ${stream.name} carry ${name}`, setValue(stream.item, ['carries'], scalarText(name, true))),
              ),
        });
      }
  },
};

/** Reports a copied stream whose `service` was not changed: the intended service is sent by nobody. */
function servicesTwice(site: Site, reached: (stream: Stream) => readonly string[], report: Report): void {
  const sent = new Set(site.streams.map(({ service }) => service));
  const left = [...site.serviceByName.keys()].filter((name) => !sent.has(name));
  if (left.length === 0) return;
  const first = new Map<string, Stream[]>();
  for (const stream of site.streams) {
    const { source, service, transport } = stream;
    if (service === undefined) continue;
    const key = `${source} ${service} ${transport}`;
    const others = first.get(key) ?? [];
    first.set(key, [...others, stream]);
    const other = others.find((one) => reached(one).some((name) => reached(stream).includes(name)));
    if (other === undefined) continue;
    report({
      at: placeOf(stream.item, ['service']),
      message:
        `${other.name} sends ${service} to ${few(reached(stream))} already, so it comes twice, and nothing sends ` +
        `${few(left)}. Name the service that ${stream.name} is to send, or take ${stream.name} out.`,
      acceptAt: [stream.name, other.name],
      related: [{ at: namePlace(other.item), message: `${other.name} sends it too` }],
      fixes: () =>
        left
          .slice(0, OFFERED)
          .flatMap((name) =>
            fixOf(`Let ${stream.name} send ${name}`, setValue(stream.item, ['service'], scalarText(name, true))),
          ),
    });
  }
}

const OFFERED = 3;

/** Streams that the source receives and does not re-send, nearest in name first. */
function forgottenBy({ streams }: Site, { source, name }: Stream): Stream[] {
  const carried = new Set(streams.flatMap(({ source: by, carries }) => (by === source ? [carries] : [])));
  const left = streams.filter(
    (one) => one.source !== source && !carried.has(one.name) && one.receivers.includes(source ?? ''),
  );
  const shared = (one: Stream): number => [...one.name].findIndex((letter, index) => letter !== name[index]);
  const rank = (one: Stream): number => (shared(one) < 0 ? one.name.length : shared(one));
  return left.sort((a, b) => rank(b) - rank(a));
}

/** Whether the stream passes another one on without encoding it again. */
function isAsItCame({ carries, source, video, audio }: Stream): boolean {
  return carries !== undefined && source !== undefined && video === undefined && audio === undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-5: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  yard-cam: {kind: camera, address: 192.168.20.32}
  recorder: {kind: server, address: 192.168.20.5}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: recorder}
  - {from: core/4, to: screen}
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
  yard: {source: yard-cam, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.255.20.1, port: 5004, receivers: [screen]}
  yard-live: {source: recorder, carries: paddock, transport: rtp, group: 239.255.20.2, port: 5004, receivers: [screen]}
#                                        ^^^^^^^ paddock-live sends paddock to screen already, so it comes twice, and nothing sends yard on. Name the stream that yard-live is to carry
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-5: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  yard-cam: {kind: camera, address: 192.168.20.32}
  recorder: {kind: server, address: 192.168.20.5}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: recorder}
  - {from: core/4, to: screen}
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
  yard: {source: yard-cam, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.255.20.1, port: 5004, receivers: [screen]}
  yard-live: {source: recorder, carries: yard, transport: rtp, group: 239.255.20.2, port: 5004, receivers: [screen]}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-5: {}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  yard-cam: {kind: camera, address: 192.168.20.32}
  recorder: {kind: server, address: 192.168.20.5}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: recorder}
  - {from: core/4, to: screen}
streams:
  paddock: {source: paddock-cam, receivers: [recorder]}
  yard: {source: yard-cam, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, group: 239.255.20.1, port: 5004, receivers: [screen]}
  yard-live: {source: recorder, carries: yard, transport: rtp, group: 239.255.20.2, port: 5004, receivers: [screen]}
  paddock-desk: {source: recorder, carries: paddock, transport: rtsp, port: 8554, receivers: [desk]}
`,
  },
];
