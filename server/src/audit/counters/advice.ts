/** The words for a blamed stream. */

import { bitRate, list } from '../../text/words.ts';
import type { Blame, Suspect } from './blame.ts';

/** Whether the stream comes, but at another rate. */
export function isChange({ alternatives }: Blame): boolean {
  return alternatives.flat().every(({ happening }) => happening === 'changed');
}

/** A sentence on what to check. */
export function advice(blamed: Blame | undefined, less: boolean, atTimes: boolean): string {
  if (blamed === undefined)
    return less
      ? 'No one stream or two of that rate: the pictures may be quieter than declared, or the declared rates too high.'
      : 'No one stream or two of that rate: look what else is sent there.';
  const [first = []] = blamed.alternatives;
  const times = atTimes ? ' at times' : '';
  if (blamed.all) {
    const sum = bitRate(first.reduce((total, { rate }) => total + rate, 0));
    return less
      ? `That is${times} as much as all ${first.length} streams together (${sum}): look whether anything arrives.`
      : `That is${times} as much as all ${first.length} groups that are not planned there (${sum}): does a switch on ` +
          'the way flood, without IGMP snooping?';
  }
  const named = list(
    blamed.alternatives.map((suspects) =>
      list(suspects.map(({ stream, rate }) => `${stream.name} (${bitRate(rate)})`)),
    ),
    'or',
  );
  return `That is${times} as much as ${named}: ${question(blamed.alternatives.flat())}`;
}

function question(suspects: readonly Suspect[]): string {
  const happenings = new Set(suspects.map(({ happening }) => happening));
  if (happenings.has('changed')) return 'is its bit rate other than declared?';
  if (happenings.has('missing')) return 'look whether it is sent, and arrives.';
  const strays = suspects.filter(({ happening }) => happening === 'stray');
  if (strays.length === 0) return 'is it sent twice, or at twice its rate?';
  if (happenings.has('again')) return 'is it sent twice, at twice its rate, or where it is not planned?';
  return strays.some(({ stream }) => stream.group !== undefined)
    ? 'not planned there, so is it flooded, or has somebody joined it?'
    : 'not planned there, so who asks for it?';
}
