import { obstacleWords } from '../../network/obstacle-words.ts';
import { fixOf, nameText, putElement, scalarText, setValue } from '../../site/edit.ts';
import { type Device, type Recording, type Site, type Volume, isRtsp } from '../../site/model.ts';
import { few } from '../../text/words.ts';
import { placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const recorderNotReceiving: Rule = {
  id: 'recorder-not-receiving',
  severity: 'error',
  showAfter: 'item',
  summary: 'A device is to record a stream that it does not receive.',
  why: `The device that a volume is in must send the stream itself, or be among its receivers and be reached: a
multicast group goes only where somebody has joined it. Nothing would be recorded, which is commonly noticed when it
is needed. Add the device to the stream's \`receivers\`.`,
  source: 'Joining a group: RFC 3376 §1, RFC 4541 §2.1',
  check({ site, network, plan }: RuleContext, report: Report): void {
    const elsewhere = volumesElsewhere(site);
    for (const [volume, { host, recordings, receiver }] of elsewhere)
      report({
        at: placeOf(volume.item, ['host']),
        message:
          `${volume.name} is in ${host}, which receives nothing of what is recorded there, ` +
          `${few(recordings.map(({ name }) => name))}; ${receiver} does. Correct the host, or the receivers.`,
        acceptAt: [volume.name, host, ...recordings.map(({ name }) => name)],
        related: recordings.map((one) => ({
          at: placeOf(one.item, ['stream']),
          message: `${one.name} is recorded there`,
        })),
        entails: recordings,
        fixes: () =>
          fixOf(
            `Say that ${volume.name} is in ${receiver}`,
            setValue(volume.item, ['host'], scalarText(receiver, true)),
          ),
      });
    for (const recording of site.recordings) {
      const { item, name, stream: streamName, volume: volumeName } = recording;
      const stream = streamName === undefined ? undefined : site.streamByName.get(streamName);
      const volume = volumeName === undefined ? undefined : site.volumeByName.get(volumeName);
      const host = volume?.host === undefined ? undefined : site.deviceByName.get(volume.host);
      const delivery = stream === undefined ? undefined : network.delivery(stream);
      const source = delivery?.source;
      if (stream === undefined || volume === undefined || host === undefined) continue;
      if (delivery === undefined || source === undefined) continue;
      if (source === host || delivery.reaches.includes(host.name)) continue;
      const unreached = delivery.unreached.find(({ receiver }) => receiver === host.name);
      // Before the first cable is written, no path is known.
      if (unreached !== undefined && site.cables.length === 0) continue;
      const words = unreached === undefined ? undefined : obstacleWords(unreached.why, host.name, stream);
      report({
        at: placeOf(item, ['stream']),
        message:
          words === undefined
            ? `${asName(volume.name)} is in ${asName(host.name)}, which does not receive ${asName(stream.name)}, so nothing is recorded. Add ` +
              `${asName(host.name)} to the receivers of ${asName(stream.name)}.`
            : `${asName(volume.name)} is in ${asName(host.name)}, which gets nothing of ${asName(stream.name)}: ${words.what}. To record it, ` +
              `${words.remedy}.`,
        acceptAt: [name, stream.name, host.name],
        // The reason why it does not arrive is reported at its cause.
        effects: [unreached ?? recording],
        entails: filledBy(site, plan, recording),
        related: [{ at: placeOf(stream.item, ['receivers']), message: `the receivers of ${asName(stream.name)}` }],
        fixes: () =>
          words === undefined && !isBusy(site, source)
            ? fixOf(
                `Let ${asName(host.name)} receive ${asName(stream.name)}`,
                putElement(stream.item, 'receivers', nameText(host.name)),
              )
            : [],
      });
    }
  },
};

/** Whether a camera has no session left for another receiver. */
function isBusy({ streams }: Site, { name, sessions }: Device): boolean {
  if (sessions === undefined) return false;
  const pulled = streams.filter(({ source, transport }) => source === name && isRtsp(transport));
  return pulled.flatMap(({ receivers }) => receivers.filter((receiver) => receiver !== name)).length >= sessions;
}

/** Its volume, where it is too small only by recordings that are not received. */
function filledBy(
  { policies: { volumeFill } }: Site,
  { storage }: RuleContext['plan'],
  recording: Recording,
): object[] {
  const bound = Math.min(volumeFill.warn ?? volumeFill.limit, volumeFill.limit);
  return storage.volumes.filter(({ usableBytes = 0, bytesKept, recordings }) => {
    const own = recordings.find((one) => one.recording === recording)?.bytesKept ?? 0;
    return bytesKept - own <= (usableBytes / 10_000) * bound;
  });
}

interface Elsewhere {
  readonly host: string;
  readonly recordings: readonly Recording[];
  /** The device that receives all streams recorded on the volume. */
  readonly receiver: string;
}

/** Volumes of several recordings whose host receives none of their streams, where one other device receives all. */
function volumesElsewhere({ volumes, recordings, streamByName, deviceByName }: Site): Map<Volume, Elsewhere> {
  const found = new Map<Volume, Elsewhere>();
  for (const volume of volumes) {
    const { host } = volume;
    const own = recordings.filter((one) => one.volume === volume.name);
    if (host === undefined || own.length < 2 || !deviceByName.has(host)) continue;
    const takers = own.map(({ stream }) => {
      const declared = streamByName.get(stream ?? '');
      return declared === undefined ? [] : [...declared.receivers, declared.source ?? ''];
    });
    const [first = [], ...others] = takers;
    const all = [...new Set(first)].filter((name) => others.every((names) => names.includes(name)));
    const [receiver, another] = all.filter((name) => deviceByName.get(name)?.kind === 'server');
    if (receiver === undefined || another !== undefined || takers.some((names) => names.includes(host))) continue;
    found.set(volume, { host, recordings: own, receiver });
  }
  return found;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera}
  recorder: {kind: server}
  kitchen-screen: {kind: display}
streams:
  paddock: {source: paddock-cam, group: 239.192.20.31, receivers: [kitchen-screen]}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive}
#                   ^^^^^^^ archive is in recorder, which does not receive paddock
`,
    good: `
devices:
  core: {kind: switch, ports: {1-3: {}}}
  paddock-cam: {kind: camera}
  recorder: {kind: server}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: kitchen-screen}
streams:
  paddock: {source: paddock-cam, group: 239.192.20.31, receivers: [kitchen-screen, recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive}
`,
  },
];
