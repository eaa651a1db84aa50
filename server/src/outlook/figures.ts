/** Headroom and failures as `plumbline headroom`, `failure` and `report` print them as JSON. */

import type { Element } from '../failure/element.ts';
import type { Failure } from '../failure/failure.ts';
import type { Footage } from '../failure/footage.ts';
import type { Ranked, Ranking } from '../failure/ranking.ts';
import type { Headroom, LimitKind } from '../headroom/headroom.ts';
import type { Device } from '../site/model.ts';
import type { Outlook } from './outlook.ts';

/** The part of `report --format json` about headroom and failures. */
export interface OutlookReport {
  /** The headroom for the camera that sends most at each switch. */
  readonly headroom: readonly HeadroomReport[];
  /** The worst first; null where there are too many elements to try. */
  readonly failures: readonly RankedReport[] | null;
}

export interface HeadroomReport {
  /** Null in the report of a switch that was not tried. */
  readonly camera: string | null;
  readonly switch: string;
  /** The largest number of further cameras that brings no new error; null where it was not tried. */
  readonly more: number | null;
  /** In the order in which they bind; `more` is null where the site declares too little. */
  readonly limits: readonly { readonly limit: LimitKind; readonly at: string; readonly more: number | null }[];
}

export interface ElementReport {
  readonly kind: Element['kind'];
  readonly name: string;
}

/** The numbers of losses; all null where it was not tried. */
export interface RankedReport {
  readonly element: ElementReport;
  readonly recordings: number | null;
  readonly cameras: number | null;
  readonly pictures: number | null;
  readonly losesFootage: boolean | null;
}

/** The names of losses; bit/s, bytes and seconds. */
export interface FailureReport {
  readonly element: ElementReport;
  readonly pictures: readonly { readonly stream: string; readonly receiver: string; readonly after: number }[];
  readonly recordings: readonly string[];
  readonly cameras: readonly string[];
  readonly dark: readonly string[];
  readonly footage: readonly {
    readonly volume: string;
    readonly fate: Footage['fate'];
    readonly bytes: number;
    readonly rebuild: number | null;
  }[];
  readonly gateways: readonly { readonly vlan: string; readonly gateway: string; readonly hosts: readonly string[] }[];
  readonly clocks: readonly { readonly vlan: string; readonly clock: string; readonly hosts: readonly string[] }[];
  readonly withoutQuerier: readonly string[];
  readonly takesOver: readonly {
    readonly at: string;
    readonly before: number;
    readonly after: number;
    readonly capacity: number | null;
    readonly fits: boolean | null;
  }[];
  readonly backAfter: { readonly frames: number; readonly groups: number } | null;
}

export function outlookReport({ headroom, untried, failures }: Outlook): OutlookReport {
  return {
    headroom: [...headroom.map(headroomReport), ...untried.map((at) => untriedHeadroomReport(undefined, at))],
    failures: failures?.map(rankedReport) ?? null,
  };
}

/** Of a switch that was not tried, as there is too much. */
export function untriedHeadroomReport(camera: Device | undefined, at: Device): HeadroomReport {
  return { camera: camera?.name ?? null, switch: at.name, more: null, limits: [] };
}

/** What was tried, the worst first, then what was not. */
export function rankingReport({ ranked, untried }: Ranking): RankedReport[] {
  const nothing = { recordings: null, cameras: null, pictures: null, losesFootage: null };
  return [...ranked.map(rankedReport), ...untried.map((element) => ({ element: elementReport(element), ...nothing }))];
}

export function headroomReport({ camera, at, more, limits }: Headroom): HeadroomReport {
  return {
    camera: camera.name,
    switch: at.name,
    more,
    limits: limits.map((one) => ({ limit: one.limit, at: one.at, more: one.more ?? null })),
  };
}

export function rankedReport({ element, recordings, cameras, pictures, losesFootage }: Ranked): RankedReport {
  return {
    element: elementReport(element),
    recordings: recordings.length,
    cameras: cameras.length,
    pictures: pictures.length,
    losesFootage,
  };
}

export function failureReport(failure: Failure): FailureReport {
  const { element, pictures, recordings, cameras, devices, footage, gateways, takeovers, recovery } = failure;
  return {
    element: elementReport(element),
    pictures: pictures.map(({ stream, receiver, after }) => ({ stream: stream.name, receiver, after })),
    recordings: recordings.map(({ name }) => name),
    cameras: cameras.map(({ name }) => name),
    dark: devices.map(({ name }) => name),
    footage: footage.map(({ volume, fate, bytes, rebuild }) => ({
      volume: volume.name,
      fate,
      bytes,
      rebuild: rebuild === undefined ? null : Math.round(rebuild),
    })),
    gateways: gateways.map(({ vlan, gateway, hosts }) => ({
      vlan: vlan.name,
      gateway: gateway.name,
      hosts: hosts.map(({ name }) => name),
    })),
    clocks: failure.clocks.map(({ vlan, clock, hosts }) => ({
      vlan: vlan.name,
      clock: clock.name,
      hosts: hosts.map(({ name }) => name),
    })),
    withoutQuerier: failure.withoutQuerier,
    takesOver: takeovers.map(({ at, before, after, capacity, fits }) => ({
      at,
      before,
      after,
      capacity: capacity ?? null,
      fits: fits ?? null,
    })),
    backAfter: recovery === undefined ? null : { frames: recovery.frames, groups: recovery.frames + recovery.groups },
  };
}

function elementReport({ kind, name }: Element): ElementReport {
  return { kind, name };
}
