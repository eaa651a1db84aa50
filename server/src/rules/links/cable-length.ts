import { type MemberLink, cablesOf } from '../../network/link.ts';
import {
  CHANNEL,
  type CableType,
  type Reach,
  isEthernetCable,
  leastCableType,
  reach,
} from '../../standards/cabling.ts';
import { moduleNamed, reachOf } from '../../standards/modules.ts';
import type { Port } from '../../site/model.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { bitRate, metres } from '../../text/words.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** The speed for copper where neither end has one: up to 1 Gb/s the reach is the same. */
const SLOWEST = 100_000_000;

/** mm. Common practice, no source: the shortest leads that are sold have 150 mm. */
const SHORTEST = 100;

export const cableLength: Rule = {
  id: 'cable-length',
  severity: 'error',
  showAfter: 'value',
  summary: 'A cable is too long for the speed of its link, or has a length that no cable can have.',
  why: `Beyond its reach a link comes up at a lower speed, drops packets, or stays down. Of the 100 m of a copper
channel at most 90 m may be installed cable and the other 10 m patch cords; bundles that carry power get warm and reach less
far. Shorten the run, take a better cable or fibre, or put a switch in between. Never look into a fibre or a
connector: the light is invisible and may harm the eye. Cables in walls, on roofs and between buildings: follow
local codes, and leave to licensed people what these leave to them.`,
  source: 'TIA-568 (channel of 100 m; secondary), IEEE 802.3 (reach over fibre and of 10GBASE-T; from memory)',
  check({ site, network }: RuleContext, report: Report): void {
    for (const { item, name, length } of site.cables) {
      if (length === undefined || length <= 0 || length >= SHORTEST) continue;
      report({
        at: placeOf(item, ['length']),
        severity: 'warning',
        acceptAt: [name],
        message: `This cable is ${length} mm long, shorter than any lead. Correct its length, or the unit.`,
        fixes: () => fixOf(`Set ${length} m`, setValue(item, ['length'], `${length} m`)),
      });
    }
    for (const { a, b, cable, capacity } of network.topology.links.flatMap(cablesOf)) {
      const { item, length, type } = cable;
      if (length === undefined) continue;
      // A module shows the medium of its cable.
      if (type === undefined && length > CHANNEL * 1000 && a.module === undefined && b.module === undefined)
        report(untyped({ a, b, cable }, length));
      if (!isEthernetCable(type)) continue;
      const isCopper = type.startsWith('cat');
      const speed = capacity ?? (isCopper ? SLOWEST : undefined);
      const far = nearestReach([a, b], type) ?? (speed === undefined ? undefined : reach(type, speed));
      if (speed === undefined || far === undefined) continue;
      if (length > far.metres * 1000) {
        const least = leastCableType(type, speed, length);
        const beyond = least === undefined ? undefined : nearestReach([a, b], least);
        const better = beyond === undefined || beyond.metres * 1000 >= length ? least : undefined;
        const remedy = better === undefined ? otherwise(type) : `Take ${better}, or shorten it`;
        report({
          at: placeOf(item, ['length']),
          acceptAt: acceptAtPorts(a, b),
          effects: [cable],
          message:
            `This cable is ${metres(length)} long; ${type} carries ${bitRate(speed)} for ${far.metres} m (${far.basis}). ` +
            `${remedy}.`,
          fixes: () => (better === undefined ? [] : fixOf(`Take ${better}`, setValue(item, ['type'], better))),
        });
      }
    }
  },
};

/** The shorter reach of the modules at the ends over the cable; `undefined` where none is known. */
function nearestReach(ends: readonly Port[], type: CableType): Reach | undefined {
  const far = ends.flatMap(({ module = '' }) => {
    const known = moduleNamed(module);
    return (known === undefined ? undefined : reachOf(module, known, type)) ?? [];
  });
  return far.sort((a, b) => a.metres - b.metres)[0];
}

/** The advice where no cable for the same plugs reaches so far. */
function otherwise(type: CableType): string {
  if (type.startsWith('cat') || type === 'dac') return 'Take fibre, or put a switch in between';
  return type.startsWith('om') ? 'Take single-mode fibre, and modules for it' : 'Take modules that reach further';
}

/** A long cable without a type is likely copper, as fibre is usually declared; with PoE it is copper for certain. */
function untyped({ a, b, cable: { item } }: Pick<MemberLink, 'a' | 'b' | 'cable'>, length: number): Finding {
  const isPowered = [a, b].some(({ pd }) => pd !== undefined);
  return {
    at: placeOf(item, ['length']),
    severity: isPowered ? 'error' : 'warning',
    message:
      `This cable is ${metres(length)} long, and copper carries Ethernet for ${CHANNEL} m. ` +
      (isPowered
        ? 'Take fibre, with a supply at the far end, or put a switch in between.'
        : 'If it is fibre, give its `type`; otherwise use fibre.'),
    acceptAt: acceptAtPorts(a, b),
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-sx}}}
  stable: {kind: switch, ports: {9: {module: 1000base-sx}}}
cables:
  - {from: core/16, to: stable/9, type: om1, length: 400 m}
#                                                    ^^^^^ This cable is 400 m long; om1 carries 1 Gb/s for 275 m (1000BASE-SX). Take
`,
    fixed: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-sx}}}
  stable: {kind: switch, ports: {9: {module: 1000base-sx}}}
cables:
  - {from: core/16, to: stable/9, type: om2, length: 400 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
cables:
  - {from: core/1, to: barn/1, type: cat6, length: 70 m}
#                                                  ^^^^ This cable is 70 m long; cat6 carries 10 Gb/s for
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
  barn: {kind: switch, ports: {1: {speed: 10 Gb/s}}}
cables:
  - {from: core/1, to: barn/1, type: cat6a, length: 70 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 100 Mb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 140 m}
#                                                       ^^^^^ This cable is 140 m long; cat6 carries 100 Mb/s for
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {}}}
  barn: {kind: switch, ports: {1-4: {}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: barn/1, length: 180 m}
#                                      ^^^^^ This cable is 180 m long, and copper carries Ethernet for 100 m. If it is fibre, give its \`type\`
  - {from: core/2, to: paddock-cam, length: 120 m}
#                                           ^^^^^ This cable is 120 m long, and copper carries Ethernet for 100 m. Take fibre, with a
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {}}}
  barn: {kind: switch, ports: {1-4: {}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: barn/1, type: os2, length: 180 m}
  - {from: core/2, to: paddock-cam, length: 90 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 mm}
#                                                       ^^^^^ This cable is 38 mm long, shorter than any lead. Correct its length, or the unit
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
`,
  },
];
