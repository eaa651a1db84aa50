import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { nodeAt } from '../../site/edit.ts';
import { acceptAtPlace } from '../../site/accept-at.ts';
import { itemAt } from '../../site/item.ts';
import { askedRefusals } from '../../make/refusals.ts';

export const notMade: Rule = {
  id: 'not-made',
  severity: 'hint',
  summary: 'Something that the site asks for cannot be made for the equipment.',
  why: `The site asks for it: by \`credentials\` for a unit that takes a stream in, by a \`dhcp-pool\` for a server that hands
out addresses, by audio for a stream that has some. It cannot be made as it stands. Add what is missing, or set that part up by hand. What nobody asked for is no mistake and is not reported:
\`make\` lists what it leaves out with its place, makes everything else, and exits with 1.`,
  check({ plan, site, network }: RuleContext, report: Report): void {
    for (const { rule, at, message, isAsked } of askedRefusals(plan)) {
      const item = itemAt(at);
      // A faulty value is reported as such, not as missing too.
      if (rule !== 'not-made' || item?.faulty === true) continue;
      if (isAsked !== true && (item === undefined || nodeAt(item, ['credentials']) === undefined)) continue;
      const acceptAt = acceptAtPlace(at);
      // A consequence of a stream that does not arrive, or whose source has no address, which is reported.
      const effects = acceptAt.flatMap((name): readonly object[] => {
        const stream = site.streamByName.get(name);
        if (stream === undefined) return [];
        const { unreached, source } = network.delivery(stream);
        const isKnown = source === undefined || network.addressUses.some(({ device }) => device === source);
        return isKnown ? unreached : [...unreached, source];
      });
      report({ at, message, acceptAt, effects });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, dhcp-pool: 192.168.10.100-192.168.10.199}
#                            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ house has no subnet, so that no address of it can be handed out
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, dhcp-pool: 192.168.10.100-192.168.10.199}
devices:
  recorder: {kind: server, address: 192.168.10.5}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-again: {source: recorder, carries: paddock, transport: rtsp, port: 8554}
`,
  },
];
