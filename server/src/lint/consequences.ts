/** The consequences of a fault, for the finding that reports it. */

import type { Cause, Causes } from '../network/causes.ts';
import { placeOf } from '../site/item.ts';
import { receiverKeyPath } from '../site/receiver.ts';
import type { Finding, Related } from './rule.ts';
import { asName } from '../text/words.ts';

/** The places of the fault itself come first, then the receivers that get nothing because of it. */
export function consequencesOf(
  causes: Causes,
  faults: readonly (Cause | undefined)[],
  own: readonly Related[] = [],
): Required<Pick<Finding, 'related' | 'entails'>> {
  const known = faults.filter((fault) => fault !== undefined);
  const cutOff = new Set(known.flatMap((fault) => causes.cutOffBy(fault)));
  // A receiver that several faults cut off is named once.
  const related = new Map(
    [...cutOff].map(({ stream, unreached }) => [
      unreached,
      {
        at: placeOf(stream.item, receiverKeyPath(stream, unreached.receiver)),
        message: `${asName(unreached.receiver)} gets nothing of ${asName(stream.name)}`,
      },
    ]),
  );
  return { related: [...own, ...related.values()], entails: known.flatMap((fault) => causes.entailedBy(fault)) };
}
