/** The cables of a site as they are plugged: which port each end is in, and what the cable passes on its way. */

import type { Link } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import { type Cable, type CableEnd, type Port, type Site, portAt, portName } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { metres } from '../../text/words.ts';
import { naturally } from '../tables/natural-order.ts';
import { textAt } from '../../text/syntax.ts';

/** A cable seen from one of its ends. */
export interface Laid {
  readonly cable: Cable;
  /** There where the two ports make a link of the plan. */
  readonly link: Link | undefined;
  readonly here: Plug;
  readonly there: Plug;
  /** Ports of patch panels, from here to there. */
  readonly through: readonly string[];
  readonly label: string;
}

export interface Plug {
  /** `core/1`, or the device alone where it has one port; as it is written where there is no such port. */
  readonly text: string;
  readonly port: Port | undefined;
  readonly location: string;
}

/** From its `from`. */
export function laid(plan: Plan, cable: Cable): Laid {
  const {
    site,
    network: { topology },
  } = plan;
  const here = plug(site, cable.from);
  const there = plug(site, cable.to);
  const link = here.port === undefined ? undefined : topology.linkAt(here.port);
  return {
    cable,
    link: link?.cable === cable ? link : undefined,
    here,
    there,
    through: cable.through.map((end) => plug(site, end).text),
    label: visible(textAt(cable.item.data, ['label']) ?? '', 200),
  };
}

export function turned({ here, there, through, ...rest }: Laid): Laid {
  return { ...rest, here: there, there: here, through: [...through].reverse() };
}

function plug(site: Site, end: CableEnd | undefined): Plug {
  if (end === undefined) return { text: '?', port: undefined, location: '' };
  const port = portAt(site, end);
  const device = site.deviceByName.get(end.device);
  const said = end.port === undefined ? end.device : `${end.device}/${end.port}`;
  const text = port === undefined ? said : port.device.ports.length === 1 ? port.device.name : portName(port);
  return {
    text: visible(text, 200),
    port,
    location: device === undefined ? '' : visible(textAt(device.item.data, ['location']) ?? '', 200),
  };
}

/** `cat6, 84 m` */
export function cableText({ type, length }: Cable): string {
  return [type, length === undefined ? undefined : metres(length)].filter((part) => part !== undefined).join(', ');
}

/** Of cables alike in what they are sorted by, in an order that does not depend on where they stand. */
export function laidOrder(a: Laid, b: Laid): number {
  return naturally(whole(a), whole(b));
}

function whole({ label, here, there, through, cable }: Laid): string {
  return [
    label,
    here.text,
    there.text,
    ...through,
    cable.type ?? '',
    String(cable.length ?? ''),
    textAt(cable.item.data, ['description']) ?? '',
  ].join('\n');
}
