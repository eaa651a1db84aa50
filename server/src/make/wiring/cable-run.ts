/** A cable with the ports at its ends and the patch panels between them. */

import type { Link } from '../../network/link.ts';
import type { Plan } from '../../plan.ts';
import {
  type Cable,
  type CableEnd,
  type Port,
  type Site,
  connectorAt,
  connectorName,
  portAt,
  portName,
} from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { metres } from '../../text/words.ts';
import { naturally } from '../../text/natural-order.ts';
import { textAt } from '../../text/syntax.ts';

/** A cable seen from one of its ends. */
export interface CableRun {
  readonly cable: Cable;
  /** `undefined` where the two ports make no link of the plan. */
  readonly link: Link | undefined;
  readonly here: PlugEnd;
  readonly there: PlugEnd;
  /** Ports of patch panels, in order from `here` to `there`. */
  readonly through: readonly string[];
  readonly label: string;
}

export interface PlugEnd {
  /** `core/1`, or the device alone where it has one port; as in the site where there is no such port. */
  readonly text: string;
  readonly port: Port | undefined;
  readonly location: string;
}

/** The cable seen from its `from`. */
export function cableRun(plan: Plan, cable: Cable): CableRun {
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

export function reversed({ here, there, through, ...rest }: CableRun): CableRun {
  return { ...rest, here: there, there: here, through: [...through].reverse() };
}

function plug(site: Site, end: CableEnd | undefined): PlugEnd {
  if (end === undefined) return { text: '?', port: undefined, location: '' };
  const port = portAt(site, end);
  const device = site.deviceByName.get(end.device);
  const said = end.port === undefined ? end.device : `${end.device}/${end.port}`;
  const connector = connectorAt(site, end);
  const text =
    connector !== undefined && port === undefined
      ? connectorName(connector)
      : port === undefined
        ? said
        : port.device.ports.length === 1
          ? port.device.name
          : portName(port);
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

/** The last criterion for sorting cables, so that their order in the site makes no difference. */
export function byRun(a: CableRun, b: CableRun): number {
  return naturally(allText(a), allText(b));
}

function allText({ label, here, there, through, cable }: CableRun): string {
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
