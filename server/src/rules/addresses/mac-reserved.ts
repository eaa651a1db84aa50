import { macHolder, macUses } from '../../network/mac-uses.ts';
import { placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const macReserved: Rule = {
  id: 'mac-reserved',
  severity: 'error',
  showAfter: 'value',
  summary: 'A port has a hardware address that no port can have.',
  why: `The lowest bit of the first octet marks an address of a group; with it set, as in 01:00:5e:… of
multicast or ff:ff:ff:ff:ff:ff of broadcast, an address belongs to no single port, and switches drop frames that come from it.
A card without an address shows 00:00:00:00:00:00. Read it off the label of the device.`,
  source: 'IEEE 802 clause 8 (individual/group bit), from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const use of macUses(site)) {
      const { mac, device, keyPath } = use;
      const isGroup = (parseInt(mac.slice(0, 2), 16) & 1) === 1;
      if (!isGroup && mac !== '00:00:00:00:00:00') continue;
      const what = isGroup ? 'is the address of a group' : 'stands for no address';
      report({
        at: placeOf(device.item, keyPath),
        message: `${mac} ${what}, so ${macHolder(use)} cannot have it. Read it off the label of the device.`,
        acceptAt: [device.name, macHolder(use), mac],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, mac: "01:00:5e:40:14:29"}
#                                  ^^^^^^^^^^^^^^^^^^^ 01:00:5e:40:14:29 is the address of a group
  stable-cam: {kind: camera, mac: "00:00:00:00:00:00"}
#                                 ^^^^^^^^^^^^^^^^^^^ 00:00:00:00:00:00 stands for no address
`,
    good: `
devices:
  paddock-cam: {kind: camera, mac: "02:00:5e:40:14:29"}
  stable-cam: {kind: camera, mac: "00:00:5e:00:53:01"}
`,
  },
];
