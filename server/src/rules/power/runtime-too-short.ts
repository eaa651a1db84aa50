import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { placeOfPower } from '../../site/places.ts';
import { endingBefore } from '../../supply/dark.ts';
import { type UpsFigures, batteryFor } from '../../supply/ups.ts';
import { few, runtime, wattHours, aboutWatts, asName } from '../../text/words.ts';

export const runtimeTooShort: Rule = {
  id: 'runtime-too-short',
  severity: 'warning',
  summary: 'Without mains, cameras end earlier than policy asks for.',
  why: `A camera is recorded without mains only while it has power itself, and every switch on the way, and the recorder,
and what keeps an address for it. The first of them that goes dark ends the recording. Feed that from a UPS, take a larger
battery, or feed less from it. Runtime is energy over power, less what the inverter loses, what must stay in the battery
and what age has taken; batteries lose half of it in three to five years, so try it under load every year. Let the
recorder shut down five minutes before the end, so that its files are whole. Batteries are heavy, give off gas and can
burn; generators, inverters and all that is behind a socket or outdoors are for licensed practice under local codes.`,
  source: 'Energy over power (physics), with shares of common practice where the site does not say them',
  check({ plan, site }: RuleContext, report: Report): void {
    const wanted = site.policies.runtime.cameras;
    if (wanted === undefined || wanted === 0) return;
    const policy = site.sections.policies.find(({ name }) => name === 'runtime');
    const supply = plan.supply();
    for (const [device, lives] of endingBefore(supply, plan.cameraRuntimes(), wanted)) {
      const cameras = few(lives.map(({ camera }) => camera.name));
      const ups = supply.ups(device);
      report({
        at: ups === undefined ? placeOfPower(device) : placeOf(device.item, ['battery']),
        message: ups === undefined ? atMains(device, lives, wanted) : tooSmall(ups, cameras, wanted),
        acceptAt: [device.name, ...lives.map(({ camera }) => camera.name)],
        // A consequence where a device is not fed at all, or its UPS is overloaded, which is reported.
        effects: ups === undefined ? device.ports.filter(({ pd }) => pd !== undefined) : [ups],
        ...(policy !== undefined && {
          related: [{ at: placeOf(policy, ['cameras']), message: `${runtime(wanted)} are wanted` }],
        }),
      });
    }
  },
};

function atMains(device: Device, lives: readonly { readonly camera: Device }[], wanted: number): string {
  const cameras = few(lives.map(({ camera }) => camera.name));
  const one = lives.length === 1;
  const { name, ownPower } = device;
  const how =
    ownPower === undefined
      ? `Nothing says that ${asName(name)} is fed from a UPS`
      : `${asName(name)} is fed from the mains alone`;
  return `${how}: when the mains fails, ${cameras} ${one ? 'ends' : 'end'} at once, and policy asks for ${runtime(wanted)}. Feed it from a UPS.`;
}

function tooSmall(ups: UpsFigures, cameras: string, wanted: number): string {
  const { device, load, runtime: time = 0 } = ups;
  return (
    `${asName(device.name)} lasts ${runtime(time)} at ${aboutWatts(load)}, and policy asks for ${runtime(wanted)} of ` +
    `${cameras}: that takes a battery of ${wattHours(batteryFor(ups, wanted))}. Take a larger battery, or feed less from it.`
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
policies:
  runtime: {cameras: 60 min}
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
#                                                                ^^^^^^ ups-1 lasts 44 min at 159 W, and policy asks for 1 h of gate-cam: that takes a battery of 292 Wh
  core: {kind: switch, poe-budget: 130 W, power: {at-most: 70 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
`,
    good: `
policies:
  runtime: {cameras: 30 min}
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  core: {kind: switch, poe-budget: 130 W, power: {at-most: 70 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
`,
  },
  {
    bad: `
policies:
  runtime: {cameras: 30 min}
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  core: {kind: switch, poe-budget: 130 W, power: {at-most: 18 W}, ports: {1: {poe: af}, 2: {}}}
#                                                ^^^^^^^^^^^^^^^ core is fed from the mains alone: when the mains fails, gate-cam ends at once, and policy asks for 30 min
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
`,
    good: `
policies:
  runtime: {cameras: 30 min}
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  core: {kind: switch, poe-budget: 130 W, power: {at-most: 18 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  recorder: {kind: server, address: 192.168.20.5, power: {at-most: 75 W, from: ups-1}}
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
`,
  },
];
