/** The use of tuners on each occasion, and their load on USB. */

import type { Plan } from '../../plan.ts';
import { type Device, connectorName } from '../../site/model.ts';
import type { Occasion } from '../../site/television/facts.ts';
import { bitRate, count, few, list, percent } from '../../text/words.ts';
import type { Short, Tuned } from '../../television/occasions.ts';
import type { Unit } from '../../television/units.ts';
import type { BusLoad } from '../../television/usb.ts';
import type { Asked } from '../../television/wishes.ts';
import { type Explanation, RATES } from './explanation.ts';
import { rates } from './figure.ts';
import { occasionAnswer } from '../answer/television.ts';

/** Which tuner takes what, and which multiplexes are short of tuners. */
export function occasionExplained(plan: Plan, occasion: Occasion): Explanation {
  const tuned = plan.television.tuning.of(occasion);
  const { asked, assigned, unmet, short, contested } = tuned;
  const multiplexes = count(asked.length, 'multiplex', 'multiplexes');
  return {
    answer: occasionAnswer(plan, occasion),
    title: occasion.name,
    sentences: [
      unmet.length === 0
        ? `It needs ${multiplexes} at once, each with a tuner of its own.`
        : `It needs ${multiplexes} at once, and ${asked.length - unmet.length} of them can be had.`,
      ...short.map(shortWords),
      ...contested.map(
        ({ from, units }) =>
          `${namesOf(units)} share the cable from ${connectorName(from)}, which carries one polarisation and band at a time.`,
      ),
    ],
    columns: ['tuner', 'for'],
    lines: asked.map((one) => ({
      label: one.multiplex.name,
      cells: [
        assigned.get(one)?.name ?? 'none',
        list(one.wishes.map(({ name }) => (name === one.multiplex.name ? 'all of it' : name))),
      ],
      formula: standingWords(one),
    })),
  };
}

/** Names in a sentence. */
const MOST_NAMED = 8;

function shortWords({ asked, units, missing }: Short): string {
  const names = few(
    asked.map(({ multiplex }) => multiplex.name),
    MOST_NAMED,
  );
  if (units.length === 0) return `No tuner gets enough of ${names}.`;
  return `Only ${namesOf(units)} can take ${names}: ${count(missing, 'tuner')} too few.`;
}

function namesOf(units: readonly Unit[]): string {
  return few(
    units.map(({ name }) => name),
    MOST_NAMED,
  );
}

/** What needs a multiplex at all times, whatever is watched. */
function standingWords({ wishes }: Asked): string {
  const streams = wishes.flatMap(({ stream }) => stream ?? []);
  return streams.length === 0 ? '' : `${list(streams.map(({ name }) => name))} at all times`;
}

/** Tuners that are listed; of more the first. */
const MOST_LISTED = 32;

/** A line for each tuner of a device; none where it declares none. */
export function tunersExplained({ site, television: { tuning } }: Plan, device: Device): Explanation[] {
  const units = tuning.units.filter((unit) => unit.device === device);
  if (units.length === 0) return [];
  const occasions = site.occasions.map((occasion) => ({ name: occasion.name, tuned: tuning.of(occasion) }));
  const others = units.length - MOST_LISTED;
  return [
    {
      title: `${device.name}: its ${count(units.length, 'tuner')}`,
      sentences: [
        'Each takes one multiplex at a time.',
        ...(others > 0 ? [`${others} more are not listed.`] : []),
        ...(occasions.length === 0 ? ['The site has no occasions that say what is wanted at once.'] : []),
      ],
      columns: occasions.map(({ name }) => name),
      lines: units.slice(0, MOST_LISTED).map((unit) => ({
        label: unit.tuner.name,
        cells: occasions.map(({ tuned }) => takenBy(tuned, unit)),
        formula: [list(unit.tuner.systems), unit.tuner.input ?? ''].filter((part) => part !== '').join(' at '),
      })),
    },
  ];
}

function takenBy({ assigned }: Tuned, unit: Unit): string {
  for (const [{ multiplex }, taker] of assigned) if (taker === unit) return multiplex.name;
  return '–';
}

/** What tuners put onto the USB controllers of a device. */
export function busesExplained({ television: { buses } }: Plan, device: Device): Explanation[] {
  return buses.filter(({ host }) => host === device).map(busExplained);
}

function busExplained({ host, bus, usable, nominal, peak, shares }: BusLoad): Explanation {
  return {
    title: `${host.name}: USB controller ${bus.name}`,
    columns: RATES,
    lines: shares.map(({ tuner, streams, ...share }) => ({
      label: tuner.name,
      cells: rates(share),
      formula: list(streams.map(({ name }) => name)),
    })),
    total: {
      label: 'together',
      cells: rates({ nominal, peak }),
      formula: `${percent(peak, usable)} of ${bitRate(usable)} at peak`,
      source: bus.usable === undefined ? 'USB 2.0 §5.8.4 and common practice' : 'as declared',
    },
  };
}
