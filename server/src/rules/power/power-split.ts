import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Device } from '../../site/model.ts';
import { nodeAt } from '../../site/edit.ts';
import { placeOfPower } from '../../site/places.ts';
import { darkAtOnce } from '../../supply/dark.ts';
import { few, asName } from '../../text/words.ts';

export const powerSplit: Rule = {
  id: 'power-split',
  severity: 'warning',
  summary: 'A UPS feeds a camera, and what its pictures need is dark at once without mains.',
  why: `The battery behind the camera is of no use: its pictures end at the first device on their way that has no power.
Feed that device from a UPS too, or do without the one at the camera. Where policy asks for a runtime, the rule
\`runtime-too-short\` says so instead. Batteries and all that is behind a socket are for licensed practice under local codes.`,
  source: 'common practice',
  check({ plan, site }: RuleContext, report: Report): void {
    if (site.policies.runtime.cameras !== undefined || !site.devices.some(({ ups }) => ups !== undefined)) return;
    // Nothing is known of the load on a UPS whose battery cannot be read.
    if (site.devices.some(hasUnreadBattery)) return;
    for (const [device, lives] of darkAtOnce(plan.supply(), plan.cameraRuntimes())) {
      if (device.ownPower === undefined) continue;
      const cameras = lives.map(({ camera }) => camera.name);
      const isRecorded = lives.every((life) => life.isRecorded);
      report({
        at: placeOfPower(device),
        message:
          `A UPS feeds ${few(cameras)}, but ${asName(device.name)}, which ${cameras.length === 1 ? 'its' : 'their'} pictures need, is fed from the ` +
          'mains alone: ' +
          `when that fails, none of them is ${isRecorded ? 'recorded' : 'seen'}. Feed ${asName(device.name)} from a UPS too.`,
        acceptAt: [device.name, ...cameras],
      });
    }
  },
};

function hasUnreadBattery({ ups, item }: Device): boolean {
  return ups !== undefined && ups.battery === undefined && nodeAt(item, ['battery']) !== undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  barn: {kind: switch, poe-budget: 65 W, power: {at-most: 12 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  core: {kind: switch, power: {at-most: 18 W}, ports: {1-8: {}}}
#                             ^^^^^^^^^^^^^^^ A UPS feeds gate-cam, but core, which its pictures need, is fed from the mains alone: when that fails, none of them is seen
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: barn/1, to: gate-cam}
  - {from: barn/2, to: core/1}
  - {from: core/2, to: recorder}
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  barn: {kind: switch, poe-budget: 65 W, power: {at-most: 12 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  core: {kind: switch, power: {at-most: 18 W, from: ups-1}, ports: {1-8: {}}}
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: barn/1, to: gate-cam}
  - {from: barn/2, to: core/1}
  - {from: core/2, to: recorder}
`,
  },
];
