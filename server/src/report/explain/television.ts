/** Levels, noise and rates of television, line by line. */

import type { Plan } from '../../plan.ts';
import { type Connector, type Device, connectorName } from '../../site/model.ts';
import type { Multiplex, Service } from '../../site/television/facts.ts';
import { bitRate } from '../../text/words.ts';
import { computedRate, netRateOf, skyFrequency, coaxFrequency } from '../../site/television/channel.ts';
import type { Point } from '../../television/reception.ts';
import type { SignalStep } from '../../television/signals.ts';
import { decibels, level, megahertz } from '../../text/radio-words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { multiplexAnswer, serviceAnswer, weakestWords } from '../answer/television.ts';

/** A table of the multiplexes that arrive at a connector. */
export function connectorExplained(plan: Plan, connector: Connector): Explanation {
  const points = plan.television.reception.pointsAt(connector);
  const answer = weakestWords(plan, [connector]);
  if (points.length === 0)
    return {
      answer,
      title: connectorName(connector),
      columns: [],
      lines: [],
      sentences: ['No multiplex arrives here.'],
    };
  return {
    answer,
    title: connectorName(connector),
    columns: ['level', 'window', 'C/N', 'needed', 'margin'],
    lines: points.map((point) => ({
      label: point.signal.multiplex.name,
      cells: cellsOf(point),
      formula: `${megahertz(point.signal.frequency)}, noise figure ${decibels(point.noiseFigure)}`,
    })),
  };
}

function cellsOf({ signal, window, carrierToNoise, needed, margin }: Point): string[] {
  return [
    level(signal.level),
    window === undefined ? '–' : `${window.min}–${window.max}`,
    carrierToNoise === undefined ? '?' : decibels(carrierToNoise),
    needed === undefined ? '?' : decibels(needed),
    margin === undefined ? '?' : decibels(margin),
  ];
}

/** How hard an amplifier works; nothing for any other device. */
export function amplifierExplained({ television }: Plan, device: Device): Explanation[] {
  const load = television.amplifier(device);
  if (load === undefined) return [];
  const { strongest, carriers, limit, headroom } = load;
  const gain = strongest.steps.at(-1)?.gain ?? 0;
  return [
    {
      title: `${device.name} as an amplifier`,
      columns: [],
      lines: [
        { label: 'strongest in', cells: [level(strongest.level - gain)], formula: strongest.multiplex.name },
        { label: 'strongest out', cells: [level(strongest.level)], formula: `+ ${decibels(gain)}` },
        {
          label: 'limit',
          cells: [limit === undefined ? '?' : level(limit)],
          formula: carriers > 2 ? `largest output − 7.5 · lg(${carriers} − 1)` : 'largest output',
          source: 'common practice',
        },
      ],
      total: { label: 'headroom', cells: [headroom === undefined ? '?' : decibels(headroom)] },
    },
  ];
}

/** How the level of a multiplex at a connector comes about. */
export function levelExplained({
  signal,
  carrierToNoise,
  needed,
  margin,
  noiseFloor,
  noiseFigure,
}: Point): Explanation {
  const atSource = signal.level - signal.steps.reduce((sum, { gain }) => sum + gain, 0);
  const known = (value: number | undefined): string => (value === undefined ? '?' : decibels(value));
  return {
    title: `${signal.multiplex.name} at ${connectorName(signal.at)}, ${megahertz(signal.frequency)}`,
    columns: [],
    lines: [
      { label: connectorName(signal.source), cells: [level(atSource)], formula: 'as received' },
      ...signal.steps.map((step) => stepLine(step)),
    ],
    total: { label: 'level', cells: [level(signal.level)] },
    after: [
      {
        label: 'noise figure',
        cells: [decibels(noiseFigure)],
        formula: 'of all from the aerial to here',
        source: 'Friis',
      },
      ...(noiseFloor === undefined
        ? []
        : [{ label: 'thermal noise', cells: [level(noiseFloor)], formula: 'k · 290 K · bandwidth at 75 Ω' }]),
      {
        label: 'carrier to noise',
        cells: [known(carrierToNoise)],
        formula: 'level at the aerial − noise − noise figure',
      },
      { label: 'needed', cells: [known(needed)] },
      { label: 'margin', cells: [known(margin)] },
    ],
  };
}

function stepLine({ by, gain, assumed }: SignalStep): ExplanationLine {
  const label = 'cable' in by ? [by.cable.type ?? 'coax', by.cable.name].join(' ') : by.device.name;
  return {
    label,
    cells: [`${gain < 0 ? '−' : '+'}${Math.abs(gain).toFixed(1)} dB`],
    formula: assumed ? 'typical, as it gives none' : '',
  };
}

export function multiplexExplained(plan: Plan, multiplex: Multiplex): Explanation {
  const { site, television } = plan;
  const sky = skyFrequency(site, multiplex);
  const coax = coaxFrequency(site, multiplex);
  const rate = netRateOf(site, multiplex);
  const computed = computedRate(site, multiplex);
  const services = site.services.filter(({ multiplexes }) => multiplexes.includes(multiplex.name));
  const sum = (of: (service: Service) => number | undefined): number =>
    services.reduce((total, service) => total + (of(service) ?? 0), 0);
  const received = television.signals.all.filter(
    (signal) => signal.multiplex === multiplex && signal.steps.length === 0,
  );
  return {
    answer: multiplexAnswer(plan, multiplex),
    title: multiplex.name,
    sentences:
      received.length === 0
        ? ['No aerial or LNB receives it.']
        : [
            `Received by ${received.map(({ source, level: at }) => `${source.device.name} at ${level(at)}`).join(', ')}.`,
          ],
    columns: [],
    lines: [
      ...(sky === undefined ? [] : [{ label: 'frequency', cells: [megahertz(sky)] }]),
      ...(coax === undefined || coax === sky ? [] : [{ label: 'on the coax', cells: [megahertz(coax)] }]),
      { label: 'net rate', cells: [rate === undefined ? '?' : bitRate(rate.rate)], formula: rate?.formula ?? '' },
      ...(multiplex.netRate === undefined || computed === undefined
        ? []
        : [{ label: 'by formula', cells: [bitRate(computed.rate)], formula: computed.formula }]),
      ...(services.length === 0
        ? []
        : [
            {
              label: 'services',
              cells: [bitRate(sum(({ rate: own }) => own))],
              formula: services.map(({ name }) => name).join(', '),
            },
          ]),
    ],
  };
}

export function serviceExplained(plan: Plan, service: Service): Explanation {
  return {
    answer: serviceAnswer(service),
    title: service.name,
    columns: [],
    lines: [
      ...(service.rate === undefined ? [] : [{ label: 'rate', cells: [bitRate(service.rate)] }]),
      ...(service.peakRate === undefined ? [] : [{ label: 'peak rate', cells: [bitRate(service.peakRate)] }]),
      ...service.multiplexes.map((name) => ({
        label: 'in',
        cells: [name],
        formula: plan.site.multiplexByName.get(name)?.system ?? 'not declared',
      })),
    ],
  };
}
