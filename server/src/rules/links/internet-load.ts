import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { heaviestFlowWords } from '../../network/heaviest.ts';
import { uplinksOf } from '../../network/uplinks.ts';
import { placeOf } from '../../site/item.ts';
import { bitRate, percentOver, threshold } from '../../text/words.ts';

export const internetLoad: Rule = {
  id: 'internet-load',
  severity: 'error',
  summary: 'More is to cross the line to the Internet than it carries.',
  why: `A home's line gives much less up than down, and viewing from away goes up: two cameras may fill it, and then calls
and everything else in the house stall too. The bounds are those of \`link-load\`. Send a smaller stream away, fewer at a
time, or take another line.`,
  source: 'common practice; the thresholds are those of link-load',
  check({ site, network }: RuleContext, report: Report): void {
    const { warn, limit } = site.policies.linkLoad;
    for (const { device, up, down } of uplinksOf(site.devices, network)) {
      for (const { way, rate, load, link, out } of [up, down]) {
        if (rate === undefined || load.peak * 10_000 <= Math.min(warn, limit) * rate) continue;
        const isOver = load.peak * 10_000 > limit * rate;
        const share = rate === 0 ? '' : `, ${percentOver(load.peak, rate, isOver ? limit : warn)} of ${bitRate(rate)}`;
        const bound = isOver
          ? `more than the limit of ${threshold(limit)}`
          : `more than the ${threshold(warn)} that policy warns at`;
        report({
          at: placeOf(device.item, [way]),
          severity: isOver ? 'error' : 'warning',
          message:
            `${bitRate(load.peak)} ${way === 'up' ? 'leave for' : 'come from'} ${device.name}${share}; ` +
            `${heaviestFlowWords(network, link, out)}. That is ${bound}: send less of it, or a smaller stream.`,
          acceptAt: [device.name],
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
devices:
  provider: {kind: internet, down: 100 Mb/s, up: 10 Mb/s}
#                                                ^^^^^^^ 12.6 Mb/s leave for provider, 126 % of 10 Mb/s; viewing. That is more than the limit of 90 %
  router: {kind: router, ports: {wan: {speed: 1 Gb/s}, lan: {speed: 1 Gb/s, address: 192.168.10.1}}}
  recorder: {kind: server, address: 192.168.10.5, speed: 1 Gb/s}
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s, vlan: house}}}
cables:
  - {from: router/wan, to: provider}
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
traffic:
  viewing: {from: recorder, to: provider, rate: 12 Mb/s}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
devices:
  provider: {kind: internet, down: 100 Mb/s, up: 10 Mb/s}
  router: {kind: router, ports: {wan: {speed: 1 Gb/s}, lan: {speed: 1 Gb/s, address: 192.168.10.1}}}
  recorder: {kind: server, address: 192.168.10.5, speed: 1 Gb/s}
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s, vlan: house}}}
cables:
  - {from: router/wan, to: provider}
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
traffic:
  viewing: {from: recorder, to: provider, rate: 4 Mb/s}
`,
  },
];
