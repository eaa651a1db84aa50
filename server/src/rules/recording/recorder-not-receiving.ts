import { obstacleWords } from '../../network/obstacle-words.ts';
import { fixOf, nameText, putElement } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const recorderNotReceiving: Rule = {
  id: 'recorder-not-receiving',
  severity: 'error',
  due: 'item',
  summary: 'A device is to record a stream that it does not receive.',
  why: `The device that a volume is in must send the stream itself, or be among its receivers and be reached: a
multicast group goes only where somebody has joined it. Nothing would be recorded, which is commonly noticed when it
is needed. Add the device to the stream's \`receivers\`.`,
  source: 'Joining a group: RFC 3376 §1, RFC 4541 §2.1',
  check({ site, network }: RuleContext, report: Report): void {
    for (const recording of site.recordings) {
      const { item, name, stream: streamName, volume: volumeName } = recording;
      const stream = streamName === undefined ? undefined : site.streamByName.get(streamName);
      const volume = volumeName === undefined ? undefined : site.volumeByName.get(volumeName);
      const host = volume?.host === undefined ? undefined : site.deviceByName.get(volume.host);
      const delivery = stream === undefined ? undefined : network.delivery(stream);
      if (stream === undefined || volume === undefined || host === undefined || delivery?.source === undefined)
        continue;
      if (delivery.source === host || delivery.reaches.includes(host.name)) continue;
      const unreached = delivery.unreached.find(({ receiver }) => receiver === host.name);
      // Before the first cable is written, no path is known.
      if (unreached !== undefined && site.cables.length === 0) continue;
      const words = unreached === undefined ? undefined : obstacleWords(unreached.why, host.name, stream);
      report({
        at: placeOf(item, ['stream']),
        message:
          words === undefined
            ? `${volume.name} is in ${host.name}, which does not receive ${stream.name}, so nothing is recorded. Add ` +
              `${host.name} to the receivers of ${stream.name}.`
            : `${volume.name} is in ${host.name}, which gets nothing of ${stream.name}: ${words.what}. To record it, ` +
              `${words.remedy}.`,
        about: [name, stream.name, host.name],
        // Why it does not get there is told at the cause; that it is to record is told there is no receiver.
        effects: [unreached ?? recording],
        related: [{ at: placeOf(stream.item, ['receivers']), message: `the receivers of ${stream.name}` }],
        fixes: () =>
          words === undefined
            ? fixOf(
                `Let ${host.name} receive ${stream.name}`,
                putElement(stream.item, 'receivers', nameText(host.name)),
              )
            : [],
      });
    }
  },
};

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
