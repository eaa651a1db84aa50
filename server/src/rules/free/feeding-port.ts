/** Another port for a device that its own does not feed. */

import { type Link, far } from '../../network/link.ts';
import { portTypes } from '../../standards/poe.ts';
import { scalarText, setValue } from '../../site/edit.ts';
import { type Port, type Site, portName } from '../../site/model.ts';
import type { Fix } from '../rule.ts';
import { nextFreeSwitchPort } from './switch-port.ts';

/** Moves the link's plug at `from` to a free port of the same switch that feeds the class. */
export function toFeedingPort(site: Site, link: Link, from: Port, wantedClass: number): Fix[] {
  const free = nextFreeSwitchPort(
    site,
    from,
    ({ feeds }) => feeds !== undefined && portTypes[feeds].maxClass >= wantedClass,
  );
  const end = from === link.a ? link.cable.from : link.cable.to;
  if (free?.feeds === undefined || end === undefined) return [];
  const title = `Move ${far(link, from).device.name} to ${portName(free)}, which feeds ${free.feeds}`;
  return [{ title, safe: false, edits: [setValue(link.cable.item, end.route, scalarText(portName(free), true))] }];
}
