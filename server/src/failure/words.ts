/** What a failure loses, in words. */

import { MINUTE, SECOND } from '../standards/time-units.ts';
import { bytes, count, duration, few, list, asName } from '../text/words.ts';
import { type Element, elementWords } from './element.ts';
import type { Failure, Losses, Picture } from './failure.ts';
import type { Footage } from './footage.ts';

/** `6 recordings, 6 cameras and 10 pictures`; empty where nothing is lost. */
export function lossWords({ recordings, cameras, pictures }: Losses): string {
  return list(
    [
      [recordings.length, 'recording'],
      [cameras.length, 'camera'],
      [pictures.length, 'picture'],
    ].flatMap(([number, noun]) => (number === 0 ? [] : [count(Number(number), String(noun))])),
  );
}

/** `If stable fails, 6 recordings, 6 cameras and 10 pictures are lost.` */
export function failureWords(failure: Failure): string {
  const { element, recovery } = failure;
  const words = lossWords(failure);
  const lost = failure.recordings.length + failure.cameras.length + failure.pictures.length;
  const first = `If ${elementWords(element)} fails, ${words === '' ? 'no picture and no recording' : words} ${lost === 1 || words === '' ? 'is' : 'are'} lost.`;
  const rest = [
    ...failure.footage.map(footageWords),
    ...(recovery === undefined ? [] : [recoveryWords(recovery)]),
    ...overWords(failure),
  ];
  return [first, ...rest].join(' ');
}

/** What takes over and does not fit. */
function overWords({ takeovers }: Failure): string[] {
  const over = takeovers.filter(({ fits }) => fits === false).map(({ at }) => at);
  return over.length === 0 ? [] : [`What takes over is then too much for ${few(over)}.`];
}

export function recoveryWords({ frames, groups, streams }: NonNullable<Failure['recovery']>): string {
  const what = streams.length === 1 ? 'What goes another way is' : `${streams.length} streams go another way and are`;
  if (frames === 0) return `${what} not interrupted for long.`;
  const groupsToo = groups === 0 ? '' : `, groups at most ${duration((frames + groups) * SECOND)}`;
  return `${what} back after at most ${duration(frames * SECOND)}${groupsToo}.`;
}

export function footageWords({ volume: { name, host }, fate, bytes: amount, rebuild }: Footage): string {
  switch (fate) {
    case 'lost':
      return `The footage on ${asName(name)} is lost, ${bytes(amount)}.`;
    case 'out-of-reach':
      return `The footage on ${asName(name)} is out of reach until ${host ?? 'its host'} is back.`;
    case 'unprotected':
      return `The footage on ${asName(name)} stays, and the next disk may take it along until that one is replaced${rebuildWords(rebuild)}.`;
    case 'kept':
      return `The footage on ${asName(name)} stays, and another disk may fail${rebuildWords(rebuild)}.`;
  }
}

function rebuildWords(seconds: number | undefined): string {
  return seconds === undefined
    ? ''
    : ` and filled, which takes ${duration(Math.round(seconds / 60) * MINUTE)} at least`;
}

/** `paddock-live on kitchen-screen and stable-screen`, each stream once. */
export function picturesWords(pictures: readonly Picture[]): string[] {
  const screens = new Map<string, string[]>();
  for (const { stream, receiver } of pictures)
    screens.set(stream.name, [...(screens.get(stream.name) ?? []), receiver]);
  return [...screens].map(([stream, names]) => `${stream} on ${list(names)}`);
}

/** `any of 12 cables`, or the one by its name. */
export function groupWords(elements: readonly Element[]): string {
  const [first] = elements;
  if (first === undefined) return '';
  if (elements.length === 1) return elementWords(first);
  const noun = { cable: 'cables', device: 'devices', volume: 'disks', duct: 'ducts', rack: 'racks' }[first.kind];
  return `any of ${elements.length} ${noun}: ${few(
    elements.map(({ name }) => name),
    4,
  )}`;
}
