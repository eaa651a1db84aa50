import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { acceptAtPlace } from '../../site/accept-at.ts';
import { refusedHostNames } from '../../make/addresses/host-names.ts';

export const hostNameClash: Rule = {
  id: 'host-name-clash',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two devices have the same host name.',
  why: `Host names ignore capitals and have no underscores: to DNS, \`Gate_cam\` and \`gate-cam\` are one, and whoever asks
for it gets one of the two addresses. Rename one.`,
  source: 'RFC 1035 §2.3.1 and RFC 4343 §3, from memory',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rule, at, message } of refusedHostNames(plan))
      if (rule === 'host-name-clash') report({ at, message, acceptAt: acceptAtPlace(at) });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31}
# ^^^^^^^^ gate-cam would be called gate-cam.home.arpa, as gate_cam would
  gate_cam: {kind: camera, address: 192.168.20.32}
# ^^^^^^^^ gate_cam would be called gate-cam.home.arpa, as gate-cam would
`,
    good: `
devices:
  gate-cam: {kind: camera, address: 192.168.20.31}
  lane-cam: {kind: camera, address: 192.168.20.32}
`,
  },
];
