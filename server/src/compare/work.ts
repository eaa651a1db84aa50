/** The work on site: cables to lay, remove, move, replace and relabel, devices, ports to configure. */

import type { Plan } from '../plan.ts';
import { type Cable, type Device, type Port, portName } from '../site/model.ts';
import { bitRate, metres } from '../text/words.ts';
import { type Match, endName, labelOf } from './match.ts';
import { type MatchedPairs, matchedByName } from './pairing.ts';

export const WORKS = ['install', 'remove', 'rename', 'lay', 'pull', 'move', 'replace', 'relabel', 'configure'] as const;

export type WorkKind = (typeof WORKS)[number];

export interface Work {
  readonly work: WorkKind;
  /** In words; null where it is added or removed. */
  readonly before: string | null;
  readonly after: string | null;
}

export function workOf(before: Plan, after: Plan, match: Match): Work[] {
  return [
    ...match.devices.flatMap(ofDevice),
    ...match.cables.flatMap((pair) => ofCable(before, after, pair, match)),
    ...match.devices.flatMap((pair) => ofPorts(pair, match)),
  ];
}

function ofDevice({ before, after }: MatchedPairs<Device>): Work[] {
  if (before === undefined) return [{ work: 'install', before: null, after: deviceText(after) }];
  if (after === undefined) return [{ work: 'remove', before: deviceText(before), after: null }];
  return before.name === after.name ? [] : [{ work: 'rename', before: before.name, after: after.name }];
}

function deviceText(device: Device | undefined): string | null {
  if (device === undefined) return null;
  return device.kind === undefined ? device.name : `${device.name}, ${device.kind.replaceAll('-', ' ')}`;
}

function ofCable(before: Plan, after: Plan, pair: MatchedPairs<Cable>, match: Match): Work[] {
  const { before: old, after: current } = pair;
  if (old === undefined) return [{ work: 'lay', before: null, after: cableText(after, current) }];
  if (current === undefined) return [{ work: 'pull', before: cableText(before, old), after: null }];
  const found: Work[] = [];
  const [then, now] = [wayOf(before, old), wayOf(after, current)];
  const sorted = (ends: readonly string[], side: 'before' | 'after'): string =>
    ends
      .map((end) => match.id(end, side))
      .sort()
      .join(' ');
  const isMoved =
    sorted(then.ends, 'before') !== sorted(now.ends, 'after') ||
    sorted(then.through, 'before') !== sorted(now.through, 'after');
  if (isMoved) found.push({ work: 'move', before: wayText(then), after: wayText(now) });
  if (madeOf(old) !== madeOf(current))
    found.push({ work: 'replace', before: cableText(before, old), after: cableText(after, current) });
  const isRenamed = String(then.ends.slice().sort()) !== String(now.ends.slice().sort());
  if (labelOf(old) !== labelOf(current) || isRenamed)
    found.push({ work: 'relabel', before: labelText(old, then), after: labelText(current, now) });
  return found;
}

interface CableWay {
  readonly ends: readonly string[];
  readonly through: readonly string[];
}

function wayOf({ site }: Plan, { from, to, through }: Cable): CableWay {
  const text = (end: Cable['from']): string => (end === undefined ? '?' : endName(site, end));
  return { ends: [text(from), text(to)], through: through.map(text) };
}

/** The way of a cable, from the end whose name sorts first, as a cable has no direction. */
function wayText({ ends, through }: CableWay): string {
  const way = [...ends].sort().join(' – ');
  return through.length === 0 ? way : `${way} through ${[...through].sort().join(', ')}`;
}

function labelText(cable: Cable, way: CableWay): string {
  const label = labelOf(cable);
  return label === undefined ? wayText({ ...way, through: [] }) : `${label}: ${wayText({ ...way, through: [] })}`;
}

function madeOf({ type, length, fibres }: Cable): string {
  return [type ?? '', length ?? '', fibres ?? ''].join(' ');
}

function cableText(plan: Plan, cable: Cable | undefined): string | null {
  if (cable === undefined) return null;
  const { type, length, fibres } = cable;
  const made = [
    type,
    length === undefined ? undefined : metres(length),
    fibres === undefined ? undefined : `fibres: ${fibres}`,
    labelOf(cable),
  ].filter((part) => part !== undefined);
  return [wayText(wayOf(plan, cable)), ...made].join(', ');
}

function ofPorts({ before, after }: MatchedPairs<Device>, { id }: Match): Work[] {
  if (before === undefined || after === undefined || before.item.data === after.item.data) return [];
  return matchedByName(before.ports, after.ports).flatMap(({ before: old, after: current }): Work[] => {
    const isSame = portText(old, (vlan) => id(vlan, 'before')) === portText(current, (vlan) => id(vlan, 'after'));
    return isSame ? [] : [{ work: 'configure', before: portWords(old), after: portWords(current) }];
  });
}

function portWords(port: Port | undefined): string | null {
  return port === undefined ? null : `${portName(port)}: ${portText(port, (vlan) => vlan) ?? ''}`;
}

function portText(port: Port | undefined, nameOf: (vlan: string) => string): string | null {
  if (port === undefined) return null;
  const { speed, module, medium, vlan, trunk, native, pse, lag, lacp } = port;
  const words = [
    speed === undefined ? undefined : bitRate(speed),
    module ?? medium,
    vlan === undefined ? undefined : `VLAN ${nameOf(vlan)}`,
    trunk === undefined ? undefined : `trunk of ${trunk.map(nameOf).sort().join(', ')}`,
    native === undefined ? undefined : `${nameOf(native)} untagged`,
    pse === undefined ? undefined : `PoE ${pse}`,
    lag === undefined ? undefined : `group ${lag}${lacp === 'active' ? '' : `, LACP ${lacp}`}`,
  ].filter((word) => word !== undefined);
  return words.length === 0 ? 'nothing set' : words.join(', ');
}
