import { setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Blank, whyBlank } from '../../network/blanks.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const unfilled: Rule = {
  id: 'unfilled',
  severity: 'information',
  summary: 'An address, a group or a port says auto and is not filled in yet.',
  why: `Until then it is left out of everything: a stream without a group counts as unicast, an address clashes with
none. Fill it in: the value is free, and always the same for the same site. It is written into the file, so that it
stays the same when others come and go.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    for (const blank of plan.blanks) {
      const { item, keyPath, value } = blank;
      report({
        at: placeOf(item, keyPath),
        message: message(blank),
        acceptAt: [item.name],
        fixes: () =>
          value === undefined
            ? []
            : [{ title: `Fill in ${value}`, safe: true, edits: [setValue(item, keyPath, value)] }],
      });
    }

    function message(blank: Blank): string {
      const { item, what, value, vlan } = blank;
      const name = `The ${what} of ${asName(item.name)}`;
      if (value === undefined) return `${name} cannot be filled in: ${whyBlank(blank, site)}.`;
      return `${name} is not filled in yet; ${value} is free${vlan === undefined ? '' : ` in ${asName(vlan.name)}`}.`;
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s, vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.1}
  gate-cam: {kind: camera, address: auto}
#                                   ^^^^ The address of gate-cam is not filled in yet; 192.168.20.2 is free in video.
cables:
  - {from: core/1, to: gate-cam}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s, vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.1}
  gate-cam: {kind: camera, address: 192.168.20.2}
cables:
  - {from: core/1, to: gate-cam}
`,
  },
  {
    bad: `
streams:
  paddock: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
  gate: {source: recorder, transport: rtp, group: auto, port: auto}
#                                                 ^^^^ The group of gate is not filled in yet; 239.192.20.32 is free.
#                                                             ^^^^ The port of gate is not filled in yet; 5004 is free.
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  gate-cam: {kind: camera, address: auto}
#                                   ^^^^ The address of gate-cam cannot be filled in: its VLAN is not known; cable it, or write the address yourself.
`,
  },
];
