import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { aboutPlace } from '../../site/about.ts';
import { itemAt } from '../../site/item.ts';
import { refusalsOf } from '../../make/refusals.ts';

export const notMade: Rule = {
  id: 'not-made',
  severity: 'hint',
  summary: 'Something cannot be made for the equipment: the site does not say enough, or FFmpeg cannot do it.',
  why: `The plan itself is fine, but \`plumbline make\` leaves something out: a session description without the codec, a unit for
what FFmpeg cannot do, a network without the names that the operating system has. Add what is missing, or set that part
up by hand. \`make\` makes everything else, lists what it leaves out with its place, and exits with 1.`,
  check({ plan, site, network }: RuleContext, report: Report): void {
    for (const { rule, at, message } of refusalsOf(plan)) {
      // What is written wrong is said to be so, and not also to be missing.
      if (rule !== 'not-made' || itemAt(at)?.faulty === true) continue;
      const about = aboutPlace(at);
      // Of a stream that does not get there, or whose source has no address, that is told.
      const effects = about.flatMap((name): readonly object[] => {
        const stream = site.streamByName.get(name);
        if (stream === undefined) return [];
        const { unreached, source } = network.delivery(stream);
        const isKnown = source === undefined || network.addressUses.some(({ device }) => device === source);
        return isKnown ? unreached : [...unreached, source];
      });
      report({ at, message, about, effects });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.255.20.31, video: {bitrate: 6 Mb/s}}
#                                                                                           ^^^^^^^^^^^^^^^^^ paddock-live does not say the codec of its video
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.255.20.31, video: {codec: h264, bitrate: 6 Mb/s}}
`,
  },
];
