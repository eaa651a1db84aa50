import { placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { isUncabled } from '../../network/delivery.ts';
import { lossesAt } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import { consequencesOf } from '../../lint/consequences.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const cableToItself: Rule = {
  id: 'cable-to-itself',
  severity: 'error',
  showAfter: 'line',
  summary: 'Both ends of a cable are at the same device.',
  why: `On a switch such a cable is a loop: broadcasts circulate in it until nothing else gets through. On any
other device it joins nothing. Name the device at the far end.`,
  source: 'A bridge forwards out of every other port: IEEE 802.1D-2004 §7 (from memory)',
  check({ site, network }: RuleContext, report: Report): void {
    for (const { item, from, to } of site.cables) {
      if (from === undefined || to === undefined || from.device !== to.device) continue;
      const device = site.deviceByName.get(from.device);
      if (device === undefined || device.kind === 'patch-panel') continue;
      const followed = consequencesOf(network.causes, [item]);
      report({
        at: placeOf(item, to.keyPath),
        message: `Both ends of this cable are at ${asName(device.name)}${effectOf(device)}. Name the device at its far end.`,
        acceptAt: [device.name],
        ...followed,
        // Without another cable the device is in no network.
        entails: [
          ...followed.entails,
          ...lossesAt(network, [device]).obstacles.filter(isUncabled),
          // The parts that it should join are separate.
          ...apartFrom(network),
        ],
      });
    }
  },
};

/** Deliveries that fail across the only place where a cable is missing. */
function apartFrom({ causes, deliveries }: Network): object[] {
  const apart = deliveries.flatMap(({ unreached: all }) =>
    all.flatMap((unreached) => {
      const gap = causes.gapBefore(unreached);
      return gap === undefined ? [] : [{ gap, unreached }];
    }),
  );
  const [only, another] = new Set(apart.map(({ gap }) => gap));
  if (only === undefined || another !== undefined) return [];
  return [...causes.entailedBy(only), ...apart.flatMap(({ unreached }) => [unreached, unreached.why])];
}

function effectOf({ bridging, spanningTree }: Device): string {
  if (!bridging) return '';
  return spanningTree ? ', which spanning tree blocks' : ', which makes a loop';
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/1, to: core/2}
#                      ^^^^^^ Both ends of this cable are at core, which makes a loop
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  barn: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
cables:
  - {from: core/1, to: barn/2}
`,
  },
];
