import { type Element, elementWords, elementsOf } from '../../failure/element.ts';
import { Patience } from '../../failure/ranking.ts';
import { lossWords } from '../../failure/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Item, namePlace } from '../../site/item.ts';
import { portAt } from '../../site/model.ts';

const ID = 'single-point-of-failure';

export const singlePointOfFailure: Rule = {
  id: ID,
  severity: 'hint',
  summary: 'If one thing fails, several cameras or recordings are lost.',
  why: `What fails takes all with it that has no other way: a switch its cameras, a recorder every recording, a disk without
redundancy its footage. Most houses have such places and live with them, so this is reported only where \`lint: rules\` sets its
severity. Lead a second way past it, or keep a spare at hand. Of a site of thousands of devices it tries what there is
time for.`,
  source: 'common practice',
  check({ plan, site, network }: RuleContext, report: Report): void {
    if (!site.lint.severities.has(ID)) return;
    const works = { site, network, storage: plan.storage, supply: plan.supply };
    const patience = new Patience(works);
    for (const element of elementsOf(works)) {
      const item = itemOf(element);
      if (item === undefined || isEnd(site, element)) continue;
      const lost = patience.rankedOf(element);
      if (lost === undefined) continue;
      const { recordings, cameras, pictures, losesFootage } = lost;
      if (Math.max(recordings.length, cameras.length, pictures.length) < 2 && !losesFootage) continue;
      const words = lossWords(lost);
      report({
        at: namePlace(item),
        message:
          `If ${elementWords(element)} fails, ${words === '' ? 'no picture is' : `${words} are`} lost` +
          `${losesFootage ? ', and the footage on it' : ''}, and nothing takes over. Lead a second way past it, or ` +
          'keep a spare.',
        acceptAt: [...new Set([element.name, ...element.devices.map(({ name }) => name)])],
      });
    }
  },
};

/** The item of a shared element's first part, as the element itself has none. */
function itemOf({ cables: [cable], devices: [device], volume }: Element): Item | undefined {
  return (cable ?? device ?? volume)?.item;
}

/** Whether the element is a camera or a screen, or its cable. */
function isEnd(site: RuleContext['site'], { cables, devices }: Element): boolean {
  const ends = [
    ...devices,
    ...cables.flatMap(({ from, to }) => [from, to].flatMap((end) => portAt(site, end)?.device ?? [])),
  ];
  return ends.some(({ kind }) => kind === 'camera' || kind === 'display');
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
# ^^^^ If core fails, 2 cameras and 2 pictures are lost
  gate-cam: {kind: camera, speed: 100 Mb/s}
  yard-cam: {kind: camera, speed: 100 Mb/s}
  screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: screen}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
  yard: {source: yard-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
lint:
  rules: {single-point-of-failure: hint}
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  gate-cam: {kind: camera, speed: 100 Mb/s}
  yard-cam: {kind: camera, speed: 100 Mb/s}
  screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: gate-cam}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: screen}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
  yard: {source: yard-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [screen]}
lint:
  accept:
    - {rule: single-point-of-failure, at: core, because: a spare switch is in the cupboard}
  rules: {single-point-of-failure: hint}
`,
  },
];
