import { grouped } from '../../grouped.ts';
import { perObject } from '../../memo.ts';
import type { Delivery } from '../../network/delivery.ts';
import { type Direction, oppositePort } from '../../network/link.ts';
import { uplinksOf } from '../../network/uplinks.ts';
import type { Plan } from '../../plan.ts';
import type { Device, Port } from '../../site/model.ts';
import { bitRate, count, few, percent, watts } from '../../text/words.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { partWords, portsAnswer } from './port.ts';
import { circuitAnswer, upsAnswer } from './supply.ts';
import { weakestWords } from './television.ts';
import { answer, isLoadKnown, rateWords } from './words.ts';

/**
 * The answer depends on the purpose of the device: for a switch its ports and power, for a camera what it sends, for an
 * outlet the weakest level.
 */
export function deviceAnswer(plan: Plan, device: Device): string {
  switch (device.kind) {
    case 'switch':
    case 'router':
    case 'access-point':
    case 'media-converter':
      return (
        answer(
          device.ports.length > 1 ? portsAnswer(plan, device, device.ports) : undefined,
          poeWords(plan, device),
          airWords(plan, device),
          fullest(plan, device),
        ) || portsAnswer(plan, device, device.ports)
      );
    case 'patch-panel':
      return portsAnswer(plan, device, device.ports);
    case 'camera':
      return answer(crossing(plan, device, 'sends'), toWords(plan, device));
    case 'internet':
      return answer(
        ...uplinksOf([device], plan.network).flatMap(({ down, up }) => [lineWords(plan, down), lineWords(plan, up)]),
      );
    case 'server':
    case 'computer':
      return answer(
        crossing(plan, device, 'receives'),
        crossing(plan, device, 'sends'),
        fullest(plan, device),
        onCoax(plan, device),
      );
    case 'display':
      return answer(
        // A screen may have only an aerial.
        isCabled(plan, device) || device.connectorByName.size === 0 ? crossing(plan, device, 'receives') : undefined,
        fullest(plan, device),
        onCoax(plan, device),
      );
    case 'ups':
      return upsAnswer(plan, device);
    case 'circuit':
      return circuitAnswer(plan, device);
    // Parts that coax runs through need no answer.
    case 'power-inserter':
    case 'isolator':
    case 'earth-block':
      return '';
    default:
      return answer(tunerWords(device), amplifierWords(plan, device), onCoax(plan, device));
  }
}

function isCabled({ network }: Plan, { ports }: Device): boolean {
  return ports.some((port) => network.topology.linkAt(port) !== undefined);
}

function onCoax(plan: Plan, { connectorByName }: Device): string | undefined {
  return connectorByName.size === 0 ? undefined : weakestWords(plan, [...connectorByName.values()]);
}

/** `PoE 62 W of 130 W` */
function poeWords({ poe }: Plan, device: Device): string | undefined {
  const source = poe.find((figures) => figures.device === device);
  if (source === undefined) return undefined;
  return `PoE ${watts(source.allotted)} of ${source.budget === undefined ? '?' : watts(source.budget)}`;
}

function airWords({ air }: Plan, device: Device): string | undefined {
  const cell = air.find((candidate) => candidate.device === device);
  return cell === undefined ? undefined : `groups take ${percent(cell.share.peak, 1)} of its air`;
}

/** A direction of the link at a port of a device. */
interface AtPort extends Direction {
  readonly own: Port;
}

function directionsOf({ network }: Plan, device: Device): AtPort[] {
  return device.ports.flatMap((own) => {
    const link = network.topology.linkAt(own);
    // Aggregated cables make one link.
    if (link === undefined || (link.a !== own && link.b !== own)) return [];
    return [own, oppositePort(link, own)].map((out) => ({ link, own, out }));
  });
}

/** `fullest: port 16 out, 94.8 Mb/s (95 %)`; of a device with one port `95 % of 100 Mb/s`. */
function fullest(plan: Plan, device: Device): string | undefined {
  let found: AtPort | undefined;
  let most = 0;
  for (const one of directionsOf(plan, device)) {
    const { capacity } = one.link;
    const share =
      capacity === undefined || capacity === 0 ? 0 : plan.network.load(one.link, one.out).line.peak / capacity;
    if (share > most) [found, most] = [one, share];
  }
  if (found === undefined) return undefined;
  const { link, own, out } = found;
  if (device.ports.length === 1 && link.capacity !== undefined)
    return `${percent(most, 1)} of ${bitRate(link.capacity)}`;
  return `fullest: port ${own.name} ${own === out ? 'out' : 'in'}, ${partWords(plan, link, out)}`;
}

/** `sends 6.45 Mb/s, at most 9.67` over all its ports. */
function crossing(plan: Plan, device: Device, which: 'sends' | 'receives'): string {
  const ways = directionsOf(plan, device).filter(({ own, out }) => (own === out) === (which === 'sends'));
  const sum = (part: 'nominal' | 'peak'): number =>
    ways.reduce((total, { link, out }) => total + plan.network.load(link, out).line[part], 0);
  const load = { nominal: sum('nominal'), peak: sum('peak') };
  const isKnown = ways.every(({ link, out }) => isLoadKnown(plan, link, out));
  return load.peak === 0 && isKnown ? `${which} nothing` : `${which} ${rateWords(load, isKnown)}`;
}

const bySource = perObject((deliveries: readonly Delivery[]) => grouped(deliveries, ({ stream }) => stream.source));

/** The receivers that the streams of a camera reach. */
function toWords({ network }: Plan, device: Device): string | undefined {
  const reached = (bySource(network.deliveries).get(device.name) ?? []).flatMap(({ reaches }) => reaches);
  return reached.length === 0 ? undefined : `reaches ${few([...new Set(reached)])}`;
}

function lineWords(plan: Plan, { way, rate, load, link, out }: ReturnType<typeof uplinksOf>[number]['up']): string {
  const share = rate === undefined || rate === 0 ? '' : ` (${percent(load.peak, rate)})`;
  return `${way} ${rateWords(load, isLoadKnown(plan, link, out))}${share}`;
}

function tunerWords({ tuners }: Device): string | undefined {
  return tuners.length === 0 ? undefined : count(tuners.length, 'tuner');
}

/** `5.3 dB of headroom, 88 dBµV out` */
function amplifierWords({ television }: Plan, device: Device): string | undefined {
  const load = television.amplifier(device);
  if (load === undefined) return undefined;
  const { headroom, strongest } = load;
  const spare = headroom === undefined ? 'headroom ?' : `${decibels(headroom)} of headroom`;
  return `${spare}, ${strongest.multiplex.name} leaves at ${level(strongest.level)}`;
}
