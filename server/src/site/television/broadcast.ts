/** The rate of a stream that a tuner sends on as it comes from the air. */

import { TABLES_OF_SERVICE } from '../../standards/television/net-rate.ts';
import type { MediaRate, Site, Stream } from '../model.ts';
import { netRateOf } from './channel.ts';

type Facts = Pick<Site, 'channelPlan' | 'multiplexByName' | 'serviceByName'>;

/** `undefined` for a stream without television, or one that declares too little. A programme adds its own tables. */
export function broadcastRate(site: Facts, { service, multiplex }: Stream): MediaRate | undefined {
  if (service !== undefined) {
    const { rate, peakRate } = site.serviceByName.get(service) ?? {};
    const nominal = rate ?? peakRate;
    if (nominal === undefined) return undefined;
    return {
      nominal: nominal + TABLES_OF_SERVICE,
      peak: (peakRate ?? nominal) + TABLES_OF_SERVICE,
      peakDeclared: peakRate !== undefined,
    };
  }
  const whole = multiplex === undefined ? undefined : site.multiplexByName.get(multiplex);
  const rate = whole === undefined ? undefined : netRateOf(site, whole)?.rate;
  return rate === undefined ? undefined : { nominal: rate, peak: rate, peakDeclared: true };
}
