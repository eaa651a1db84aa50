import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { namePlace } from '../../site/item.ts';
import { placeOfPower } from '../../site/places.ts';
import { darkAtOnce } from '../../supply/dark.ts';
import { few, runtime, aboutWatts, asName } from '../../text/words.ts';

export const powerUndeclared: Rule = {
  id: 'power-undeclared',
  severity: 'hint',
  showAfter: 'item',
  summary: 'How long a UPS lasts is not known, as something on it or on the way says too little.',
  why: `The runtime of a UPS is what its battery holds over what hangs on it. A device without watts is left out,
so the figure is too good; a device without \`from\` counts as being on the mains, and goes dark at once.
Give the device \`power\`, with the watts as measured or from its label.`,
  source: 'common practice',
  check({ plan, site }: RuleContext, report: Report): void {
    if (!site.devices.some(({ ups }) => ups !== undefined)) return;
    const supply = plan.supply();
    const wanted = site.policies.runtime.cameras;
    for (const { device, load, runtime: time, undeclared } of supply.upses) {
      for (const one of undeclared) {
        const lasts = time === undefined ? '' : ` and its ${runtime(time)}`;
        report({
          at: placeOfPower(one),
          message:
            `${asName(one.name)} hangs on ${asName(device.name)} and does not say what it draws: the ${aboutWatts(load)} of ` +
            `${asName(device.name)}${lasts} are without it. Give it \`power\`, such as {at-most: 45 W, from: ${device.name}}.`,
          acceptAt: [one.name, device.name],
        });
      }
      if (wanted !== undefined && device.ups?.battery === undefined && load > 0)
        report({
          at: namePlace(device.item),
          message:
            `${asName(device.name)} does not say what its battery holds, so nobody knows whether it lasts the ` +
            `${runtime(wanted)} that policy asks for. Give it \`battery\`, such as 216 Wh.`,
          acceptAt: [device.name],
        });
    }
    if (wanted !== undefined) return;
    for (const [device, lives] of darkAtOnce(supply, plan.cameraRuntimes())) {
      if (device.ownPower !== undefined) continue;
      const cameras = lives.map(({ camera }) => camera.name);
      report({
        at: namePlace(device.item),
        message:
          `A UPS feeds ${few(cameras)}, and nothing says what feeds ${asName(device.name)}, which ${cameras.length === 1 ? 'its' : 'their'} pictures need: it is ` +
          'counted as on the mains, and dark at once when that fails. Give it `power`.',
        acceptAt: [device.name, ...cameras],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  core: {kind: switch, poe-budget: 65 W, power: {at-most: 18 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
  recorder: {kind: server, address: 192.168.20.5}
# want 3-11 A UPS feeds gate-cam, and nothing says what feeds recorder, which its pictures need
  gate-cam: {kind: camera, address: 192.168.20.31, poe: {class: 3, power: 12 W}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: recorder}
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  core: {kind: switch, poe-budget: 65 W, power: {at-most: 18 W, from: ups-1}, ports: {1: {poe: af}, 2: {}}}
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
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  router: {kind: router, power: {at-most: 8 W, from: ups-1}}
  recorder: {kind: server, power: {from: ups-1}}
#                                 ^^^^^^^^^^^^^ recorder hangs on ups-1 and does not say what it draws: the 8 W of ups-1 and its
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh}
  router: {kind: router, power: {at-most: 8 W, from: ups-1}}
  recorder: {kind: server, power: {at-most: 75 W, from: ups-1}}
`,
  },
];
