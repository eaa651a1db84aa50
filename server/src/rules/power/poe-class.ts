import { portTypes, powerClasses } from '../../standards/poe.ts';
import { portName } from '../../site/model.ts';
import { watts, asName } from '../../text/words.ts';
import { toFeedingPort } from '../../site/free/feeding-port.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfPort } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const poeClass: Rule = {
  id: 'poe-class',
  severity: 'error',
  summary: 'A device needs a higher power class than its port feeds.',
  why: `A port that feeds less than a device asks for gives it its own highest class. The device stays off, keeps
restarting, or does without what takes most: infrared light, heating, the motor. Where \`power\` says that it draws
no more than that, it is a warning. Take a port of a higher type, or a listed injector in between.`,
  source: "IEEE 802.3 clauses 33 and 145, as in the Ethernet Alliance's overview of 802.3bt, 2018 (secondary)",
  check({ site, network, plan }: RuleContext, report: Report): void {
    const passedOn = new Map(plan.poe.map(({ device, allotted }) => [device, allotted]));
    for (const { feeds } of plan.poe) {
      for (const { from, to, type, class: own } of feeds) {
        const { maxClass } = portTypes[type];
        const link = network.topology.linkAt(from);
        if (own.class <= maxClass || link === undefined) continue;
        const arrives = powerClasses[maxClass]?.pdMilliwatts ?? 0;
        const drawn = to.pd?.milliwatts;
        const isEnough = drawn !== undefined && drawn <= arrives;
        const wants = drawn === undefined ? `may draw ${watts(own.pdMilliwatts)}` : `draws ${watts(drawn)}`;
        report({
          at: placeOfPort(to, 'poe', to.pd?.class === undefined ? 'power' : 'class'),
          severity: isEnough ? 'warning' : 'error',
          message:
            `${asName(to.device.name)} is of class ${own.class} and ${wants}; ${portName(from)} (${type}) feeds class ` +
            `${maxClass} at most, ${watts(arrives)} at the device. ` +
            (isEnough ? 'It may run if it accepts the lower class.' : 'Take a port that feeds more.'),
          acceptAt: acceptAtPorts(to, from),
          // A consequence of a wrong port, which is reported.
          effects: [to],
          // With the right class it would have enough to pass on.
          entails: (passedOn.get(to.device) ?? 0) <= own.pdMilliwatts ? [to] : [],
          related: [
            {
              at: placeOfPort(from, 'poe'),
              message: `${portName(from)} feeds ${watts(portTypes[type].pseMilliwatts)}`,
            },
          ],
          fixes: () => toFeedingPort(site, link, from, own.class),
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-4: {poe: af}, 5-8: {poe: at}}}
  yard-cam: {kind: camera, poe: {class: 4}}
#                                       ^ yard-cam is of class 4 and may draw 25.5 W; core/1 (af) feeds class 3 at most, 13 W at the device
cables:
  - {from: core/1, to: yard-cam}
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-4: {poe: af}, 5-8: {poe: at}}}
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/5, to: yard-cam}
`,
  },
];
