import { portName } from '../../site/model.ts';
import { bitRate } from '../../text/words.ts';
import { aboutPorts } from '../../site/about.ts';
import { placeOfEnd, placeOfPort } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const portSpeedMismatch: Rule = {
  id: 'port-speed-mismatch',
  severity: 'warning',
  summary: 'The two ends of a cable differ in speed.',
  why: `The slower end decides: over copper the two agree on its speed, and loads are counted against that. Over fibre
and direct attach both ends need modules of one speed, or there is no link at all. Correct the speed, take a faster
port, or accept it where the device has no faster one. At a host on copper it is only a hint: many cameras have a
100 Mb/s port.`,
  source: 'Auto-negotiation: IEEE 802.3 clause 28 (from memory). Modules: common practice, no source.',
  check({ network }: RuleContext, report: Report): void {
    for (const link of network.topology.links) {
      const { a, b, cable } = link;
      if (a.speed === undefined || b.speed === undefined || a.speed === b.speed) continue;
      const [slower, faster] = a.speed < b.speed ? [a, b] : [b, a];
      const [low, high] = [a.speed, b.speed].sort((x, y) => x - y).map(bitRate);
      const isCopper = cable.type === undefined || cable.type.startsWith('cat');
      // Between switches every stream behind them meets the slower end.
      const isUsual = isCopper && !slower.device.bridging;
      report({
        at: placeOfEnd(link, slower),
        ...(isUsual && { severity: 'hint' as const }),
        message:
          `${portName(slower)} runs at ${low}, ${portName(faster)} at ${high}: ` +
          (isCopper
            ? `the link runs at ${low}. Correct a speed, or accept it where ${slower.device.name} has no faster port.`
            : `over ${cable.type ?? ''} there is no link unless both have modules of ${low}.`),
        about: aboutPorts(slower, faster),
        related: [
          { at: placeOfPort(slower, 'speed'), message: `${portName(slower)}: ${low}` },
          { at: placeOfPort(faster, 'speed'), message: `${portName(faster)}: ${high}` },
        ],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: core/1, to: paddock-cam}
#                      ^^^^^^^^^^^ paddock-cam/eth runs at 100 Mb/s, core/1 at 1 Gb/s
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: core/1, to: paddock-cam}
lint:
  accept:
    - {rule: port-speed-mismatch, at: paddock-cam, because: the camera has a 100 Mb/s port}
`,
  },
];
