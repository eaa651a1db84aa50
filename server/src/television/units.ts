/** Tuners one by one, and which multiplexes each can take. */

import type { Connector, Device, Site } from '../site/model.ts';
import { skyFrequency } from '../site/television/channel.ts';
import type { Multiplex, TunerUnit } from '../site/television/facts.ts';
import { type Plane, planeOf } from '../standards/television/satellite.ts';
import { type System, isSatellite } from '../standards/television/system.ts';
import type { LnbCable } from './lnb-cable.ts';
import type { Reception } from './reception.ts';

/** One tuner of a device: it takes one multiplex at a time. */
export interface Unit {
  /** `tv-tuner/1` */
  readonly name: string;
  readonly device: Device;
  readonly tuner: TunerUnit;
  /** The connectors that it may listen at; none where the site declares none. */
  readonly inputs: readonly Connector[];
  /** The cable to an LNB or a multiswitch that it listens at, where there is one. */
  readonly lnbCable: LnbCable | undefined;
}

/**
 * How a unit fits a multiplex. It may lack, in this order: the system; the signal at its input; enough signal, or an
 * LNB that can be switched to it.
 */
export type Fit = 'other-system' | 'not-here' | 'poor' | 'fits';

export function tunerUnits(devices: readonly Device[], cables: ReadonlyMap<Connector, LnbCable>): Unit[] {
  return devices.flatMap((device) =>
    device.tuners.map((tuner): Unit => {
      const own = tuner.input === undefined ? undefined : device.connectorByName.get(tuner.input);
      const inputs = own === undefined ? [...device.connectorByName.values()] : [own];
      const [cable, ...others] = inputs.map((input) => cables.get(input));
      return {
        name: `${device.name}/${tuner.name}`,
        device,
        tuner,
        inputs,
        // A tuner with several connectors may listen at another cable.
        lnbCable: others.every((other) => other?.from === cable?.from) ? cable : undefined,
      };
    }),
  );
}

/** Whether a unit takes the system of a multiplex, as far as the site declares. */
export function doesSystem({ tuner, inputs, device }: Unit, { system }: Multiplex): boolean {
  if (system === undefined) return true;
  if (tuner.systems.length > 0 && !tuner.systems.includes(system)) return false;
  return inputs.length === 0 || inputs.some(({ name }) => takes(device.coaxInputs.get(name)?.systems, system));
}

function takes(systems: readonly System[] | undefined, system: System): boolean {
  return systems?.includes(system) ?? true;
}

/** How units fit multiplexes. */
export function fittingTuners(
  site: Pick<Site, 'devices' | 'channelPlan'>,
  reception: Reception,
): (unit: Unit, multiplex: Multiplex) => Fit {
  const isKnown = knownReception(site.devices);
  const receivers = new Map(reception.receivers.map((receiver) => [receiver.at, receiver]));
  const at = (input: Connector, multiplex: Multiplex): Fit => {
    const receiver = receivers.get(input);
    const point = receiver?.points.find(({ signal }) => signal.multiplex === multiplex);
    if (receiver === undefined || point === undefined) return 'not-here';
    const most = input.device.coaxInputs.get(input.name)?.maxInput;
    const isTooStrong = most !== undefined && receiver.composite > most;
    return (point.margin ?? 0) < 0 || isTooStrong ? 'poor' : 'fits';
  };
  return (unit, multiplex) => {
    if (!doesSystem(unit, multiplex)) return 'other-system';
    if (unit.inputs.length === 0 || !isKnown(multiplex)) return 'fits';
    const found = unit.inputs.map((input) => at(input, multiplex));
    if (!found.includes('fits')) return found.includes('poor') ? 'poor' : 'not-here';
    return unit.lnbCable?.blockedBy !== undefined && !isUnasked(planeOfMultiplex(site, multiplex)) ? 'poor' : 'fits';
  };
}

/** Whether an LNB gives the plane without being asked: vertical, low band. */
export function isUnasked(plane: Plane | undefined): boolean {
  return plane === undefined || (plane.volts === 13 && !plane.tone);
}

/** The plane of a satellite multiplex; `undefined` where its polarisation or frequency is undeclared. */
export function planeOfMultiplex(site: Pick<Site, 'channelPlan'>, multiplex: Multiplex): Plane | undefined {
  const { system, polarisation } = multiplex;
  const sky = skyFrequency(site, multiplex);
  if (system === undefined || !isSatellite(system) || polarisation === undefined || sky === undefined) return undefined;
  return planeOf(polarisation, sky);
}

/** Whether the site declares where multiplexes like this one are received: aerials and LNBs list them. */
export function knownReception(devices: readonly Device[]): (multiplex: Multiplex) => boolean {
  const listed = (kind: 'aerial' | 'lnb'): ReadonlySet<string> =>
    new Set(
      devices.flatMap((device) =>
        device.kind === kind && device.aerial !== undefined
          ? [...device.aerial.receives.keys(), ...device.aerial.field.keys()]
          : [],
      ),
    );
  const [byAerials, byLnbs] = [listed('aerial'), listed('lnb')];
  return ({ name, system }) => {
    if (byAerials.has(name) || byLnbs.has(name)) return true;
    // Cable television comes from no aerial.
    if (system === undefined || system === 'dvb-c' || system === 'j83b') return false;
    return (isSatellite(system) ? byLnbs : byAerials).size > 0;
  };
}
