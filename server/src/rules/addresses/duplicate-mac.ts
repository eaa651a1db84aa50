import { type MacUse, macHolder, macUses } from '../../network/mac-uses.ts';
import { placeOf } from '../../site/item.ts';
import { portName } from '../../site/model.ts';
import { few } from '../../text/words.ts';
import { firstOthers, grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const duplicateMac: Rule = {
  id: 'duplicate-mac',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two ports have the same hardware address.',
  why: `A switch learns which of its ports leads to a hardware address. With two devices that share one it relearns with every
frame, and each gets what is meant for the other; a DHCP server gives both the same address. Every port has its
own from the factory, so one of the two was copied from the wrong label.`,
  source: 'IEEE 802 clause 8 and IEEE 802.1Q §8.7, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const [mac, uses] of grouped(macUses(site), (use) => use.mac)) {
      for (const use of uses) {
        const others = firstOthers(uses, use, RELATED);
        const message = messageOf(mac, use, few(others.map(macHolder), 2, uses.length - 1));
        if (message === undefined) continue;
        report({
          at: placeOf(use.device.item, use.keyPath),
          message,
          acceptAt: [use.device.name, macHolder(use), mac],
          related: others.map((other) => ({
            at: placeOf(other.device.item, other.keyPath),
            message: `${macHolder(other)} has it here`,
          })),
        });
      }
    }
  },
};

/** The most related places that are listed. */
const RELATED = 5;

function messageOf(mac: string, use: MacUse, others: string): string | undefined {
  if (others !== '') return `${mac} is also the hardware address of ${others}. Read the labels again.`;
  const [first] = use.ports;
  const last = use.ports.at(-1);
  if (first === undefined || last === undefined || first === last) return undefined;
  return (
    `${mac} would be the address of every port from ${portName(first)} to ${portName(last)}. Give each port its own, or ` +
    'leave it out.'
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, mac: "02:00:00:00:20:41"}
#                                  ^^^^^^^^^^^^^^^^^^^ 02:00:00:00:20:41 is also the hardware address of stable-cam
  stable-cam: {kind: camera, mac: 02-00-00-00-20-41}
#                                 ^^^^^^^^^^^^^^^^^ 02:00:00:00:20:41 is also the hardware address of paddock-cam
  yard-cam: {kind: camera, mac: "02:00:00:00:20:43"}
`,
    good: `
devices:
  paddock-cam: {kind: camera, mac: "02:00:00:00:20:41"}
  stable-cam: {kind: camera, mac: 02-00-00-00-20-42}
`,
  },
  {
    bad: `
devices:
  core:
    kind: switch
    mac: "02:00:00:00:20:02"
#        ^^^^^^^^^^^^^^^^^^^ is also the hardware address of recorder/cams
    ports: {1-4: {mac: "02:00:00:00:20:10"}}
#                      ^^^^^^^^^^^^^^^^^^^ would be the address of every port from core/1 to core/4
  recorder:
    kind: server
    ports: {lan: {mac: "02:00:00:00:10:05"}, cams: {mac: "02:00:00:00:20:02"}}
#                                                        ^^^^^^^^^^^^^^^^^^^ is also the hardware address of core
`,
    good: `
devices:
  core: {kind: switch, mac: "02:00:00:00:20:02", ports: {1-4: {}}}
  recorder:
    kind: server
    ports: {lan: {mac: "02:00:00:00:10:05"}, cams: {mac: "02:00:00:00:20:05"}}
`,
  },
];
