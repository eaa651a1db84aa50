import { placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import { isDatagrams, nextFreePortFix } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const portClash: Rule = {
  id: 'port-clash',
  severity: 'warning',
  showAfter: 'value',
  summary: 'Two streams are sent to the same port of one receiver.',
  why: `A receiver tells streams that arrive in datagrams apart by their port. With two at one port most show a mixture, or
whichever came first. Give each its own pair of ports, even and odd.`,
  source: 'RFC 3550 §11 (a session is known by its pair of ports), read',
  check({ site }: RuleContext, report: Report): void {
    const first = new Map<string, Stream>();
    for (const stream of site.streams) {
      const { item, name, port, group } = stream;
      if (port === undefined || group !== undefined || !isDatagrams(stream)) continue;
      const shared = stream.receivers.filter((receiver) => first.has(`${receiver}:${port}`));
      for (const receiver of stream.receivers)
        if (!first.has(`${receiver}:${port}`)) first.set(`${receiver}:${port}`, stream);
      const other = first.get(`${shared[0]}:${port}`);
      if (other === undefined) continue;
      report({
        at: placeOf(item, ['port']),
        message:
          `${asName(other.name)} is also sent to port ${port} of ${few(shared)}, which cannot tell them apart. Use another ` +
          'pair.',
        acceptAt: [name],
        related: [{ at: placeOf(other.item, ['port']), message: `the port of ${asName(other.name)}` }],
        fixes: () => nextFreePortFix(site, stream),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5004, receivers: [recorder]}
#                                                ^^^^ paddock is also sent to port 5004 of recorder
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5006, receivers: [recorder]}
  stable: {source: stable-cam, transport: rtsp, port: 554, receivers: [recorder]}
  glasshouse: {source: glasshouse-cam, transport: rtsp, port: 554, receivers: [recorder]}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5006, receivers: [recorder]}
`,
  },
];
