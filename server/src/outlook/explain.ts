/** Headroom and failures explained, line by line. */

import { closest } from 'fastest-levenshtein';
import { elementNamed, elementWords, noElementWords } from '../failure/element.ts';
import { failureOf } from '../failure/failure.ts';
import { reasonOf, remedyWords } from '../failure/reasons.ts';
import { failureWords } from '../failure/words.ts';
import { switchOf } from '../headroom/family.ts';
import { type Headroom, type Limit, headroomOf } from '../headroom/headroom.ts';
import { ALLOTTED, headroomWords, nextWords, panelWords } from '../headroom/words.ts';
import type { Plan } from '../plan.ts';
import type { Explained } from '../report/explain.ts';
import type { Explanation, ExplanationLine } from '../report/explain/explanation.ts';
import type { Figure } from '../report/explain/figure.ts';
import type { Device } from '../site/model.ts';
import { SECOND } from '../standards/time-units.ts';
import { duration } from '../text/words.ts';

/** The paths, for a usage text. */
export const OUTLOOK_PATHS: readonly string[] = ['headroom CAMERA [SWITCH]', 'failures NAME'];

/** The explanations for one of these paths; `undefined` for any other path. */
export function explainOutlook(plan: Plan, [kind, ...rest]: readonly string[]): Explained | undefined {
  if (kind === 'headroom') return explainHeadroom(plan, rest);
  return kind === 'failures' || kind === 'failure' ? explainFailure(plan, rest) : undefined;
}

function explainHeadroom(plan: Plan, [cameraName = '', switchName, ...more]: readonly string[]): Explained {
  const { devices } = plan.site;
  const cameras = devices.filter(({ kind }) => kind === 'camera');
  const camera = cameras.find(({ name }) => name === cameraName);
  if (camera === undefined) return { problem: notThereWords('camera', cameraName, cameras) };
  const switches = devices.filter(({ kind }) => kind === 'switch' || kind === 'router');
  const at = switchName === undefined ? switchOf(plan, camera) : switches.find((device) => device.name === switchName);
  if (at === undefined)
    return {
      problem:
        switchName === undefined
          ? `${camera.name} is at no switch; name one.`
          : notThereWords('switch', switchName, switches),
    };
  if (more.length > 0) return { problem: `Nothing follows there; ${more.join(' ')} is too much.` };
  return { explanations: [headroomExplained(headroomOf(plan, camera, at))] };
}

function headroomExplained(headroom: Headroom): Explanation {
  const { camera, at, limits } = headroom;
  const next = nextWords(headroom);
  return {
    title: `${at.name}: room for more like ${camera.name}`,
    answer: headroomWords(headroom),
    sentences: [
      ...(next === '' ? [] : [next]),
      'Each row takes one limit alone. The answer comes from the whole plan, checked with that many more and with one more than that.',
      ...panelWords(headroom),
      ...(limits.some(({ limit, at: where }) => limit === 'power' && where === at.name) ? [ALLOTTED] : []),
    ],
    columns: ['now', 'each more', 'at most', 'bears'],
    lines: limits.map(limitLine),
  };
}

function limitLine(limit: Limit): ExplanationLine {
  const { sum, more, words } = limit;
  const label = `${limit.limit} ${limit.at}`;
  const bears = more === undefined ? '?' : String(more);
  if (sum === undefined) return { label, cells: ['', '', '', bears], formula: words };
  const figure = (amount: number): Figure | string => figureOf(limit.limit, amount, sum.isAir === true);
  return { label, cells: [figure(sum.now), figure(sum.each), sum.most === undefined ? '?' : figure(sum.most), bears] };
}

function figureOf(limit: Limit['limit'], amount: number, isAir: boolean): Figure | string {
  if (isAir) return { value: amount * 100, unit: '%' };
  switch (limit) {
    case 'power':
      return { value: amount / 1000, unit: 'W' };
    case 'volume':
      return { value: amount, unit: 'B' };
    case 'groups':
      return String(amount);
    case 'write':
      return { value: amount, unit: 'B/s' };
    default:
      return { value: amount, unit: 'b/s' };
  }
}

function explainFailure(plan: Plan, [name = '', ...more]: readonly string[]): Explained {
  const element = elementNamed(plan, name);
  if (element === undefined) return { problem: noElementWords(plan, name) };
  if (more.length > 0) return { problem: `Nothing follows there; ${more.join(' ')} is too much.` };
  const failure = failureOf(plan, element);
  const { site } = plan;
  const remedy = remedyWords(plan, failure);
  const recorded = failure.recordings.map((recording): ExplanationLine => {
    const stream = site.streamByName.get(recording.stream ?? '');
    const volume = site.volumeByName.get(recording.volume ?? '');
    const isOff = failure.footage.some((one) => one.volume === volume && one.fate === 'lost');
    const why = isOff
      ? `${volume?.name ?? ''} is lost`
      : stream === undefined
        ? ''
        : reasonOf(plan, failure, stream, volume?.host ?? '');
    return { label: recording.name, cells: ['recording'], formula: why };
  });
  const shown = failure.pictures.map(({ stream, receiver, after }): ExplanationLine => ({
    label: stream.name,
    cells: [after === 0 ? `on ${receiver}` : `on ${receiver}, after ${duration(after * SECOND)}`],
    formula: reasonOf(plan, failure, stream, receiver),
  }));
  return {
    explanations: [
      {
        title: `If ${elementWords(element)} fails`,
        answer: failureWords(failure),
        ...(remedy !== '' && { sentences: [remedy] }),
        columns: [],
        lines: [...recorded, ...shown],
      },
    ],
  };
}

/** The message for a camera or a switch that the site does not have. */
export function notThereWords(what: string, name: string, all: readonly Device[]): string {
  const names = all.map((device) => device.name);
  if (names.length === 0) return `The site has no ${what}.`;
  if (name === '') return `Say which ${what}: ${names.slice(0, 20).join(', ')}${names.length > 20 ? ' …' : ''}.`;
  return `There is no ${what} ${name}. The nearest is ${closest(name, names)}.`;
}
