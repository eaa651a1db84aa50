/** The coax system as trees: from each aerial and LNB on to outlets and receivers. */

import type { Plan } from '../../plan.ts';
import type { Connector, Device } from '../../site/model.ts';
import { waysOn } from '../../television/part.ts';
import { isReceiver } from '../../television/reception.ts';
import { type CoaxRun, runsByConnector } from '../../television/run.ts';

/** A device on the coax. */
export interface Part {
  readonly device: Device;
  /** Where it is reached; `undefined` of what a tree begins with. */
  readonly by: Connector | undefined;
  /** The coax that leads to it. */
  readonly run: CoaxRun | undefined;
  /** What that coax is led through, in order. */
  readonly through: readonly Device[];
  /** It leads on elsewhere in the picture. */
  readonly isAgain: boolean;
  readonly next: readonly Part[];
}

/** What is behind so many parts in a row is not followed, as signals are not. */
const DEEPEST = 200;

/** First what receives from the air, then what nothing leads to. Each device leads on once. */
export function partsOf({ site, television }: Plan): readonly Part[] {
  const runAt = runsByConnector(television.runs);
  const seen = new Set<Device>();
  const reached = new Set<Connector>();

  const onward = (device: Device, names: readonly string[], depth: number): Part[] =>
    names.flatMap((name): Part[] => {
      const connector = device.connectorByName.get(name);
      const run = connector === undefined ? undefined : runAt.get(connector);
      if (connector === undefined || run === undefined || reached.has(connector)) return [];
      reached.add(connector);
      const [through, far] = run.a === connector ? [run.through, run.b] : [run.through.toReversed(), run.a];
      if (reached.has(far)) return [];
      reached.add(far);
      for (const device of through) seen.add(device);
      return [{ ...part(far.device, far, depth + 1), run, through }];
    });

  const part = (device: Device, by: Connector | undefined, depth: number): Part => {
    const isEnd = isReceiver(device);
    const isAgain = !isEnd && seen.has(device);
    seen.add(device);
    const names = by === undefined ? [...device.connectorByName.keys()] : waysOn(device, by.name);
    const next = isEnd || isAgain || depth > DEEPEST ? [] : onward(device, names, depth);
    return { device, by, run: undefined, through: [], isAgain, next };
  };

  const isSource = ({ kind }: Device): boolean => kind === 'aerial' || kind === 'lnb';
  const onCoax = site.devices.filter(({ connectorByName }) => connectorByName.size > 0);
  const roots = onCoax.filter(isSource).map((device) => part(device, undefined, 0));
  const others = onCoax.flatMap((device): Part[] => {
    if (isReceiver(device))
      return [...device.connectorByName.values()]
        .filter((connector) => !reached.has(connector) && !runAt.has(connector))
        .map((by) => ({ device, by, run: undefined, through: [], isAgain: false, next: [] }));
    return seen.has(device) ? [] : [part(device, undefined, 0)];
  });
  return [...roots, ...others];
}
