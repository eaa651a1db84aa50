/** Where a multiplex is: its frequency in the air and on the coax, and how it is sent. */

import type { Site } from '../model.ts';
import type { Multiplex } from './facts.ts';
import { channelFrequency } from '../../standards/television/channel-plan.ts';
import { type NetRate, netRate } from '../../standards/television/net-rate.ts';
import { intermediateFrequency } from '../../standards/television/satellite.ts';
import { type Modulation, type Transmission, isSatellite, modulationsOf } from '../../standards/television/system.ts';

type Plan = Pick<Site, 'channelPlan'>;

/** The centre of its channel, or the satellite's frequency, Hz; `undefined` where it declares neither. */
export function skyFrequency({ channelPlan }: Plan, { frequency, channel }: Multiplex): number | undefined {
  return frequency ?? (channel === undefined ? undefined : channelFrequency(channelPlan, channel));
}

/** On the coax, Hz: behind an LNB its first intermediate frequency. */
export function coaxFrequency(site: Plan, multiplex: Multiplex): number | undefined {
  const sky = skyFrequency(site, multiplex);
  if (sky === undefined || multiplex.system === undefined) return sky;
  return isSatellite(multiplex.system) ? intermediateFrequency(sky) : sky;
}

/** How it is sent, with what its system or the channel plan fixes; `undefined` while its system is undeclared. */
export function transmissionOf(site: Plan, multiplex: Multiplex): Transmission | undefined {
  const { system, codeRate, guardInterval, symbolRate, pilots, segments, frame, extended } = multiplex;
  const modulation = multiplex.modulation ?? onlyModulation(multiplex);
  if (system === undefined || modulation === undefined) return undefined;
  const bandwidth = multiplex.bandwidth ?? channelWidth(site, multiplex);
  return {
    system,
    modulation,
    bandwidth,
    codeRate,
    guardInterval,
    symbolRate,
    pilots,
    segments,
    frame,
    extended,
  };
}

/** The modulation of a system that has only one. */
function onlyModulation({ system }: Multiplex): Modulation | undefined {
  const [only, ...others] = system === undefined ? [] : modulationsOf(system);
  return others.length === 0 ? only : undefined;
}

/**
 * The width of the plan's channels, Hz: 7 MHz in Australia and in band III of region 1, 6 MHz in America and Japan,
 * else 8 MHz.
 */
function channelWidth(site: Plan, multiplex: Multiplex): number {
  const frequency = skyFrequency(site, multiplex);
  switch (site.channelPlan) {
    case 'australia':
      return 7e6;
    case 'north-america':
    case 'brazil':
    case 'japan':
      return 6e6;
    case 'region-1':
      // Cable has 8 MHz everywhere.
      return frequency !== undefined && frequency < 300e6 && multiplex.system !== 'dvb-c' ? 7e6 : 8e6;
  }
}

/** The net rate of its transport stream, bit/s: as declared, else by the formula of its system. */
export function netRateOf(site: Plan, multiplex: Multiplex): NetRate | undefined {
  if (multiplex.netRate !== undefined) return { rate: multiplex.netRate, formula: 'as declared' };
  return computedRate(site, multiplex);
}

/** The net rate by the formula of its system, even where one is declared. */
export function computedRate(site: Plan, multiplex: Multiplex): NetRate | undefined {
  const transmission = transmissionOf(site, multiplex);
  return transmission === undefined ? undefined : netRate(transmission);
}
