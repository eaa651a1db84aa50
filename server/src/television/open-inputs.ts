/** Inputs of tuners without a coax, although a received multiplex is wanted from them. */

import { type Connector, type Device, type Site, connectorAt, portAt } from '../site/model.ts';
import type { Multiplex } from '../site/television/facts.ts';
import { grouped } from '../grouped.ts';
import { type Short, isOf } from './occasions.ts';
import type { Television } from './television.ts';
import { doesSystem } from './units.ts';
import { multiplexesOf } from './wishes.ts';

export interface OpenInputs {
  readonly device: Device;
  readonly inputs: readonly Connector[];
  readonly wanted: readonly Multiplex[];
  /** The shortages, on occasions or at all times, that a coax there might end. */
  readonly shorts: readonly Short[];
}

/** The open inputs by device, in their order. */
export function openInputs(site: Site, { signals, tuning }: Television): OpenInputs[] {
  if (tuning.units.length === 0 || site.cables.length === 0) return [];
  const ends = site.cables.flatMap(({ from, to }) => [from, to]);
  const cabled = new Set(ends.map((end) => connectorAt(site, end)));
  const open = tuning.units.filter(({ inputs }) => inputs.length > 0 && inputs.every((input) => !cabled.has(input)));
  if (open.length === 0) return [];
  const received = new Set(signals.all.map(({ multiplex }) => multiplex));
  const tooFew = [tuning.standing, ...tuning.occasions].flatMap((tuned) => tuned.tooFew);
  return [...grouped(open, ({ device }) => device)].flatMap(([device, units]): OpenInputs[] => {
    // A coax that names none of its inputs is meant for one of them.
    if (ends.some((end) => end?.device === device.name && connectorAt(site, end) === undefined && !portAt(site, end)))
      return [];
    const isTaken = (multiplex: Multiplex): boolean =>
      received.has(multiplex) && units.some((unit) => doesSystem(unit, multiplex));
    const isTakenElsewhere = (multiplex: Multiplex, source: Device): boolean =>
      tuning.units.some((unit) => !units.includes(unit) && isOf(unit, source) && doesSystem(unit, multiplex));
    const sent = site.streams.flatMap((stream) => {
      const source = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
      if (source === undefined || !units.some((unit) => isOf(unit, source))) return [];
      const multiplexes = multiplexesOf(site, stream);
      return multiplexes.some((multiplex) => isTakenElsewhere(multiplex, source)) ? [] : multiplexes.filter(isTaken);
    });
    const shorts = tooFew.filter(({ asked }) =>
      asked.some(
        ({ multiplex, source }) =>
          isTaken(multiplex) && (source === undefined || units.some((own) => isOf(own, source))),
      ),
    );
    const short = shorts.flatMap(({ asked }) => asked.map(({ multiplex }) => multiplex).filter(isTaken));
    const wanted = [...new Set([...sent, ...short])];
    const able = units.filter((unit) => wanted.some((multiplex) => doesSystem(unit, multiplex)));
    const inputs = [...new Set(able.flatMap((unit) => unit.inputs))];
    return wanted.length === 0 ? [] : [{ device, inputs, wanted, shorts }];
  });
}
