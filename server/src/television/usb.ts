/** The load of tuners on the USB controllers that they are plugged into. */

import type { Device, MediaRate, Site, Stream } from '../site/model.ts';
import { netRateOf } from '../site/television/channel.ts';
import type { Bus } from '../site/television/facts.ts';
import { USABLE } from '../standards/television/usb.ts';
import { grouped } from '../grouped.ts';
import { multiplexesOf } from './wishes.ts';

/** bit/s */
export interface BusLoad {
  readonly host: Device;
  readonly bus: Bus;
  readonly usable: number;
  readonly nominal: number;
  readonly peak: number;
  /** The shares of the tuners that send something. */
  readonly shares: readonly BusShare[];
}

export interface BusShare {
  readonly tuner: Device;
  readonly streams: readonly Stream[];
  readonly nominal: number;
  readonly peak: number;
}

type Facts = Pick<
  Site,
  'devices' | 'deviceByName' | 'streams' | 'media' | 'multiplexByName' | 'serviceByName' | 'channelPlan'
>;

/** The load of each controller that a tuner is plugged into, in the order of their hosts. */
export function busLoads(site: Facts): BusLoad[] {
  const plugged = grouped(
    site.devices.filter(({ kind, host, bus }) => kind === 'tuner' && host !== undefined && bus !== undefined),
    ({ host = '', bus = '' }) => `${host} ${bus}`,
  );
  if (plugged.size === 0) return [];
  const sent = grouped(site.streams, ({ source }) => source);
  return site.devices.flatMap((host) =>
    host.buses.flatMap((bus): BusLoad[] => {
      const tuners = plugged.get(`${host.name} ${bus.name}`) ?? [];
      const shares = tuners.flatMap((tuner) => shareOf(site, tuner, sent.get(tuner.name) ?? []) ?? []);
      return tuners.length === 0
        ? []
        : [{ host, bus, usable: bus.usable ?? USABLE[bus.kind], ...sumOf(shares), shares }];
    }),
  );
}

function sumOf(rates: readonly Rate[]): Rate {
  const sum = (of: (rate: Rate) => number): number => rates.reduce((total, rate) => total + of(rate), 0);
  return { nominal: sum(({ nominal }) => nominal), peak: sum(({ peak }) => peak) };
}

type Rate = Pick<MediaRate, 'nominal' | 'peak'>;

/** A device takes as many multiplexes at a time as it has tuners: the largest of them count. */
function shareOf(site: Facts, tuner: Device, streams: readonly Stream[]): BusShare | undefined {
  const own = streams.filter((stream) => site.media(stream).broadcast !== undefined);
  if (own.length === 0) return undefined;
  const carriers = grouped(own, (stream) =>
    multiplexesOf(site, stream)
      .map(({ name }) => name)
      .sort()
      .join(' '),
  );
  const rates = [...carriers.values()].map((together) => rateOf(site, together));
  const atOnce = tuner.tuners.length === 0 ? rates.length : tuner.tuners.length;
  const largest = (of: (rate: Rate) => number): number =>
    rates
      .map(of)
      .sort((a, b) => b - a)
      .slice(0, atOnce)
      .reduce((sum, rate) => sum + rate, 0);
  return { tuner, streams: own, nominal: largest(({ nominal }) => nominal), peak: largest(({ peak }) => peak) };
}

/** The rate of streams from one multiplex: each service once, and no more than the multiplex has. */
function rateOf(site: Facts, streams: readonly Stream[]): Rate {
  const [first] = streams;
  const [multiplex, ...others] = first === undefined ? [] : multiplexesOf(site, first);
  const most = multiplex === undefined || others.length > 0 ? undefined : netRateOf(site, multiplex)?.rate;
  const byService = [
    ...grouped(streams, ({ service, multiplex: whole }) => service ?? `all of ${whole ?? ''}`).values(),
  ];
  const sum = sumOf(
    byService.flatMap(([stream]) => (stream === undefined ? [] : (site.media(stream).broadcast ?? []))),
  );
  return {
    nominal: Math.min(sum.nominal, most ?? Infinity),
    peak: Math.min(sum.peak, most ?? Infinity),
  };
}
