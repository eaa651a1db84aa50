import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { acceptAtPlace } from '../../site/accept-at.ts';
import { networkRefusals } from '../../make/refusals.ts';

export const interfaceName: Rule = {
  id: 'interface-name',
  severity: 'error',
  showAfter: 'value',
  summary: 'The operating system has no interface of that name, or two ports share one.',
  why: `\`interface\` is what the operating system of a host calls a port: up to 15 characters, VLAN tag and dot included
where the port is a trunk, and each port has its own. With a wrong name nothing is set up, and the host cannot be
reached. \`ip link\` lists the names.`,
  source: 'Linux, dev_valid_name in net/core/dev.c and IFNAMSIZ, from memory; systemd.network(5)',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rule, at, message } of networkRefusals(plan))
      if (rule === 'interface-name') report({ at, message, acceptAt: acceptAtPlace(at) });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder:
    kind: server
    ports:
      lan: {address: 192.168.10.5, interface: enp3s0}
      cams: {address: 192.168.20.5, interface: enp3s0}
#                                              ^^^^^^ recorder/cams cannot be set up as enp3s0: recorder/lan has that name already
`,
    good: `
devices:
  recorder:
    kind: server
    ports:
      lan: {address: 192.168.10.5, interface: enp3s0}
      cams: {address: 192.168.20.5, interface: enp4s0}
`,
  },
];
