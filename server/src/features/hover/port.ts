/** A port by its name: what its link carries in each direction. */

import type { Plan } from '../../plan.ts';
import { portExplained, portRangeExplained } from '../../report/explain/device.ts';
import { type Explanation, explanationsMarkdown } from '../../report/explain/explanation.ts';
import { connectorExplained, levelExplained } from '../../report/explain/television.ts';
import {
  type CableEnd,
  type Connector,
  type Device,
  type Port,
  connectorAt,
  portAt,
  portName,
} from '../../site/model.ts';
import { portNames } from '../../site/port-names.ts';
import { readEnd } from '../../site/read.ts';
import { count } from '../../text/words.ts';
import { growthOnLink } from './growth.ts';
import { lossOfCable } from './loss.ts';
import { thing } from './thing.ts';

/** The most streams that a hover lists in each direction. */
const MAX_LISTED = 12;

/** `core/16`, or a device alone. */
export function portEnd(plan: Plan, text: string): string[] {
  const end = readEnd(text, []);
  const port = portAt(plan.site, end);
  if (end !== undefined && port === undefined && end.port === undefined && connectorAt(plan.site, end) === undefined)
    return thing(plan, 'devices', end.device);
  const connector = connectorAt(plan.site, end);
  if (connector !== undefined) return connectorText(plan, connector);
  if (port === undefined) return [];
  return port.device.kind === 'patch-panel' ? explanationsMarkdown(passing(plan, port)) : explained(plan, port);
}

/** The signals that arrive at a connector, and how the level of the weakest comes about. */
function connectorText(plan: Plan, connector: Connector): string[] {
  const points = plan.television.reception.pointsAt(connector);
  const [weakest] = [...points].sort((a, b) => (a.margin ?? Infinity) - (b.margin ?? Infinity));
  return explanationsMarkdown([
    connectorExplained(plan, connector),
    ...(weakest === undefined ? [] : [levelExplained(weakest)]),
  ]);
}

/** A port of the device that the item is. */
export function ownPort(plan: Plan, device: string, name: string): string[] {
  const port = plan.site.deviceByName.get(device)?.portByName.get(name);
  return port === undefined ? [] : explained(plan, port);
}

function explained(plan: Plan, port: Port): string[] {
  return [
    ...explanationsMarkdown(portExplained(plan, port, MAX_LISTED)),
    ...growthOnLink(plan, port),
    ...lossOfCable(plan, port),
  ];
}

/** The ports that a key of `ports` declares. */
export function portKey(plan: Plan, device: Device, key: string): Explanation[] {
  const ports = portNames(key).flatMap((name) => device.portByName.get(name) ?? []);
  const [only, ...others] = ports;
  if (only === undefined) return [];
  if (device.kind === 'patch-panel') return ports.flatMap((port) => passing(plan, port));
  return others.length === 0 ? portExplained(plan, only, MAX_LISTED) : [portRangeExplained(plan, device, key, ports)];
}

/** The cables that run through a port of a patch panel, or end in it. */
function passing({ site }: Plan, port: Port): Explanation[] {
  const isHere = (end: CableEnd | undefined): boolean => end?.device === port.device.name && end.port === port.name;
  const cables = site.cables.filter(({ from, through, to }) => [from, ...through, to].some(isHere));
  return [
    {
      answer: cables.length === 0 ? 'free' : `passes ${count(cables.length, 'cable')}`,
      title: portName(port),
      columns: [],
      lines: cables.map(({ name, type }) => ({ label: name, cells: [type ?? 'cable'] })),
    },
  ];
}
