/** Another switch port for a device that the present one cannot feed. */

import { portTypes } from '../../standards/poe.ts';
import { type Fix, fixOf, scalarText, setValue } from '../edit.ts';
import { type Port, type Site, portName } from '../model.ts';
import { type Cabled, endAt } from '../places.ts';
import { nextFreeSwitchPort } from './switch-port.ts';

/** Moves the cable's plug at `from` to a free port of the same switch that feeds the class. */
export function toFeedingPort(site: Site, cabled: Cabled, from: Port, wantedClass: number): Fix[] {
  const free = nextFreeSwitchPort(site, from, ({ pse }) => pse !== undefined && portTypes[pse].maxClass >= wantedClass);
  const end = endAt(cabled, from);
  if (free?.pse === undefined || end === undefined) return [];
  const fed = from === cabled.a ? cabled.b : cabled.a;
  const title = `Move ${fed.device.name} to ${portName(free)}, which feeds ${free.pse}`;
  return fixOf(title, setValue(cabled.cable.item, end.keyPath, scalarText(portName(free), true)));
}
