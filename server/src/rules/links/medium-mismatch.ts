/** Ports, modules and cables that do not meet. Long by its cases, each with a message and a fix of its own, and its examples. */

import { grouped } from '../../grouped.ts';
import { type MemberLink, cablesOf } from '../../network/link.ts';
import { type CableType, isEthernetCable } from '../../standards/cabling.ts';
import {
  MODULE_NAMES,
  type Medium,
  type Module,
  meet,
  mediumOf,
  moduleNamed,
  reachOf,
} from '../../standards/modules.ts';
import { type Fix, fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import { mediumAt } from '../../site/cable.ts';
import { acceptAtPorts } from '../../site/accept-at.ts';
import { placeOfPort } from '../../site/places.ts';
import { bitRate } from '../../text/words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const mediumMismatch: Rule = {
  id: 'medium-mismatch',
  severity: 'error',
  showAfter: 'item',
  summary: 'Ports, modules and cable do not match.',
  why: `Copper does not plug into an optical cage, multimode modules do not light single-mode fibre, and two ends hear each
other only if each sends what the other receives: over two fibres the same kind of module at both ends, over one fibre
a pair whose wavelengths are crossed, one -d and one -u. Modules that do not match have no link at all. Look into no module, no
plug and no fibre end, lit or not: the light cannot be seen and can harm the eye. Cap what is not plugged in.`,
  source:
    'IEEE 802.3: clauses 26 (100BASE-FX), 38 (1000BASE-SX, LX), 52 (10GBASE-R), 58 and 59 (-LX10, -BX10), 68 (LRM), 86, ' +
    '87, 112, 114, 158; in part secondary, the rest from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const { ports } of site.devices) {
      const reported = new Set<string>();
      for (const port of ports) {
        const key = port.keyPath.join(' ');
        const why = port.module === undefined || reported.has(key) ? undefined : atPort(port);
        reported.add(key);
        if (why !== undefined)
          report({ at: placeOfPort(port, 'module'), message: why, acceptAt: acceptAtPorts(port), fixes: () => [] });
      }
    }
    const deaf: MemberLink[] = [];
    for (const link of network.topology.links) {
      for (const member of cablesOf(link)) {
        if (apart(member) !== undefined) {
          deaf.push(member);
          continue;
        }
        const found = unfit(member);
        if (found !== undefined) report({ acceptAt: acceptAtPorts(member.a, member.b), ...found });
      }
    }
    const reported = new Set<MemberLink>();
    for (const range of rangesOf(deaf)) {
      report(atRange(range));
      for (const { member } of range) reported.add(member);
    }
    for (const member of deaf) {
      const why = reported.has(member) ? undefined : apart(member);
      if (why !== undefined) report({ ...why, ...placesOf(member), acceptAt: acceptAtPorts(member.a, member.b) });
    }
  },
};

/** A cable whose ends cannot communicate, and the end that is in a range of ports with one module. */
interface InRange {
  readonly member: MemberLink;
  readonly own: Port;
  readonly far: Port;
}

/** Ranges whose module fits none of several far ends, so that the range is to be corrected. */
function rangesOf(deaf: readonly MemberLink[]): InRange[][] {
  const ends = deaf.flatMap((member): InRange[] => [
    { member, own: member.a, far: member.b },
    { member, own: member.b, far: member.a },
  ]);
  const alike = grouped(ends, ({ own: { device, keyPath, name, module } }) =>
    module === undefined || keyPath.length === 0 || keyPath[1] === name ? {} : [device.name, ...keyPath].join(' '),
  );
  return [...alike.values()].filter(
    (range) => range.length > 1 && new Set(range.map(({ far }) => far.module)).size === 1,
  );
}

function atRange(range: readonly InRange[]): Finding {
  const [first] = range;
  if (first === undefined) throw new RangeError('a range of no ports');
  const { own, far } = first;
  const name = `${own.device.name}/${own.keyPath[1] ?? own.name}`;
  const heard = moduleAt(far);
  const right = heard === undefined ? undefined : counterpart(far.module ?? '', heard);
  return {
    at: placeOfPort(own, 'module'),
    message:
      `${name} has ${title(own.module)}, and what it is cabled to has ${title(far.module)}, so they do not hear each ` +
      `other. Use ${right ?? 'modules that match'} at ${name}, or correct the others.`,
    acceptAt: [...new Set(range.flatMap((end) => acceptAtPorts(end.own, end.far)))],
    related: range.map((end) => ({
      at: placeOfPort(end.far, end.far.module === undefined ? 'medium' : 'module'),
      message: `${portName(end.far)}: ${title(end.far.module)}`,
    })),
    fixes: () =>
      right === undefined
        ? []
        : fixOf(`Take ${right} at ${name}`, setValue(own.device.item, [...own.keyPath, 'module'], right)),
  };
}

/** `10GBASE-LR`, as the standard writes it. */
function title(name: string | undefined): string {
  return (name ?? '').toUpperCase();
}

function moduleAt({ module }: Port): Module | undefined {
  return module === undefined ? undefined : moduleNamed(module);
}

/** A contradiction between a module and its own port. */
function atPort(port: Port): string | undefined {
  const module = moduleAt(port);
  if (module === undefined) return undefined;
  const { medium, speed } = port;
  if (medium !== undefined && !takes(module, medium))
    return `${portName(port)} takes ${medium}, and ${title(port.module)} is for ${module.medium}. Correct one of them.`;
  if (speed !== undefined && module.speed > speed)
    return (
      `${title(port.module)} runs at ${bitRate(module.speed)}, and ${portName(port)} at ${bitRate(speed)} at most: ` +
      'there is no link. Take a module of that speed.'
    );
  return undefined;
}

function takes(module: Module, medium: Medium): boolean {
  return module.medium === medium || Object.keys(module.reach).some((type) => mediumOf(type as CableType) === medium);
}

type Found = Omit<Finding, 'acceptAt'>;

function placesOf({ a, b, cable }: MemberLink): Pick<Finding, 'at' | 'related'> {
  const related = [a, b].map((port) => ({
    at: placeOfPort(port, port.module === undefined ? 'medium' : 'module'),
    message: `${portName(port)}: ${port.module === undefined ? (port.medium ?? '') : title(port.module)}`,
  }));
  return { at: placeOf(cable.item, ['to']), related };
}

/** A finding for two ends that cannot communicate over any cable. */
function apart({ a, b, cable }: MemberLink): Pick<Finding, 'message' | 'fixes'> | undefined {
  const [first, second] = [moduleAt(a), moduleAt(b)];
  if (first !== undefined && second !== undefined) {
    if (meet(first, second)) return undefined;
    // Over declared fibre port-speed-mismatch reports the speeds.
    if (first.speed !== second.speed && isGlass(cable.type)) return undefined;
    const other = counterpart(a.module ?? '', first);
    return {
      message:
        `${portName(a)} has ${title(a.module)}, ${portName(b)} ${title(b.module)}: ${difference(first, second)}. ` +
        (other === undefined
          ? 'Use modules that match.'
          : `Use ${other} at ${portName(b)}, or its counterpart at ${portName(a)}.`),
      fixes: () => (other === undefined ? [] : moduleFix(b, other)),
    };
  }
  const [one, two] = [mediumAt(a), mediumAt(b)];
  if (one === undefined || two === undefined || one === two) return undefined;
  if ((first !== undefined && takes(first, two)) || (second !== undefined && takes(second, one))) return undefined;
  const message = `${portName(a)} takes ${one}, and ${portName(b)} ${two}: no cable joins them. Take a module or a converter.`;
  return { message };
}

function difference(a: Module, b: Module): string {
  if ((a.medium === 'copper') !== (b.medium === 'copper')) return 'one is for copper, the other for glass';
  if (a.speed !== b.speed) return `one runs at ${bitRate(a.speed)}, the other at ${bitRate(b.speed)}`;
  if (a.fibres !== b.fibres) return `one needs ${fibres(a.fibres)}, the other ${fibres(b.fibres)}`;
  const sends = `${a.sends ?? ''} nm`;
  return a.sends === b.sends
    ? `both send at ${sends}, and neither hears that`
    : `one sends at ${sends}, and the other does not hear that`;
}

function fibres(count: number | undefined): string {
  return count === 1 ? 'one fibre' : `${count ?? 0} fibres`;
}

/** The module for the far end of a module: the other one of a pair, else the same. */
function counterpart(name: string, module: Module): string | undefined {
  if (meet(module, module)) return name;
  return MODULE_NAMES.find((other) => {
    const known = moduleNamed(other);
    return known !== undefined && meet(module, known);
  });
}

function moduleFix({ device, keyPath, name }: Port, module: string): Fix[] {
  if (keyPath.length > 0 && keyPath[1] !== name) return [];
  return fixOf(`Take ${module} at ${device.name}/${name}`, setValue(device.item, [...keyPath, 'module'], module));
}

function isGlass(type: string | undefined): boolean {
  return type !== undefined && (type.startsWith('om') || type.startsWith('os'));
}

/** A finding for a cable that does not fit the ports. */
function unfit(member: MemberLink): Found | undefined {
  const { a, b, cable } = member;
  const { type, item, fibres: laid } = cable;
  if (laid !== undefined && type !== undefined && !isGlass(type))
    return {
      at: placeOf(item, ['fibres']),
      message: `${type} has no fibres. Take \`fibres\` out, or correct the type.`,
    };
  for (const port of [a, b]) {
    const module = moduleAt(port);
    const medium = mediumAt(port);
    if (type !== undefined && isEthernetCable(type) && medium !== undefined) {
      const isFit =
        module === undefined || module.medium === 'copper'
          ? mediumOf(type) === medium
          : reachOf(port.module ?? '', module, type) !== undefined;
      if (!isFit) return wrongType(member, port, type);
    }
    if (module?.fibres !== undefined && laid !== undefined && laid < module.fibres)
      return {
        at: placeOf(item, ['fibres']),
        message:
          `${title(port.module)} at ${portName(port)} needs ${fibres(module.fibres)}, and the link has ${laid}. ` +
          'Give it more, or take modules for a single fibre at both ends.',
      };
  }
  return undefined;
}

function wrongType({ a, b, cable }: MemberLink, port: Port, type: CableType): Found {
  const { item } = cable;
  const module = moduleAt(port);
  const takesWords =
    module === undefined ? (port.medium ?? '') : `${title(port.module)}, which is for ${module.medium}`;
  const better = [...BETTER]
    .sort((one, other) => Number(mediumOf(other) === module?.medium) - Number(mediumOf(one) === module?.medium))
    .find((other) => [a, b].every((end) => fitsEnd(end, other)));
  return {
    at: placeOf(item, ['type']),
    message:
      `${portName(port)} takes ${takesWords}, and this cable is ${type} (${mediumOf(type)})` +
      (better === undefined ? '. Correct one of them.' : `: take ${better}, or what fits the cable at both ends.`),
    // Its length and buildings matter only once it is the right type.
    entails: [cable],
    fixes: () => (better === undefined ? [] : fixOf(`Take ${better}`, setValue(item, ['type'], better))),
  };
}

/** The usual cable of each medium today; common practice. */
const BETTER: readonly CableType[] = ['cat6a', 'om4', 'os2', 'dac'];

function fitsEnd(port: Port, type: CableType): boolean {
  const module = moduleAt(port);
  const medium = mediumAt(port);
  if (module !== undefined && module.medium !== 'copper') return module.reach[type] !== undefined;
  return medium === undefined || mediumOf(type) === medium;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-bx10-u}}}
  stable: {kind: switch, ports: {9: {module: 1000base-bx10-u}}}
cables:
  - {from: core/16, to: stable/9, type: os2, fibres: 1, length: 180 m}
#                       ^^^^^^^^ core/16 has 1000BASE-BX10-U, stable/9 1000BASE-BX10-U: both send at 1310 nm, and neither hears that. Use 1000base-bx10-d at stable/9
`,
    fixed: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-bx10-u}}}
  stable: {kind: switch, ports: {9: {module: 1000base-bx10-d}}}
cables:
  - {from: core/16, to: stable/9, type: os2, fibres: 1, length: 180 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {module: 10gbase-lr}}}
  stable: {kind: switch, ports: {9: {module: 10gbase-lr}}}
cables:
  - {from: core/16, to: stable/9, type: om3, length: 180 m}
#                                       ^^^ core/16 takes 10GBASE-LR, which is for single-mode, and this cable is om3 (multimode): take os2
`,
    fixed: `
devices:
  core: {kind: switch, ports: {16: {module: 10gbase-lr}}}
  stable: {kind: switch, ports: {9: {module: 10gbase-lr}}}
cables:
  - {from: core/16, to: stable/9, type: os2, length: 180 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {medium: copper, speed: 1 Gb/s}}}
  stable: {kind: switch, ports: {9: {module: 1000base-sx}}}
cables:
  - {from: core/16, to: stable/9, type: om3, length: 30 m}
#                       ^^^^^^^^ core/16 takes copper, and stable/9 multimode: no cable joins them
`,
    good: `
devices:
  core: {kind: switch, ports: {16: {medium: copper, speed: 1 Gb/s}}}
  stable: {kind: switch, ports: {9: {module: 1000base-t}}}
cables:
  - {from: core/16, to: stable/9, type: cat6, length: 30 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-lx10}}}
  stable: {kind: switch, ports: {9: {module: 1000base-lx10}}}
cables:
  - {from: core/16, to: stable/9, type: os2, fibres: 1, length: 180 m}
#                                                    ^ 1000BASE-LX10 at core/16 needs 2 fibres, and the link has 1.
`,
    good: `
devices:
  core: {kind: switch, ports: {16: {module: 1000base-lx10}}}
  stable: {kind: switch, ports: {9: {module: 1000base-lx10}}}
cables:
  - {from: core/16, to: stable/9, type: os2, fibres: 2, length: 180 m}
`,
  },
];
