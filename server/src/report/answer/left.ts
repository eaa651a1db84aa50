/** Values written as `auto` that cannot be filled in, with the reason. */

import { whyBlank } from '../../network/blanks.ts';
import type { Plan } from '../../plan.ts';
import { type Place, placeOf } from '../../site/item.ts';
import { asName } from '../../text/words.ts';

export interface LeftBlank {
  readonly at: Place;
  /** `gate-cam: no address, because …`, without a full stop. */
  readonly words: string;
}

export function leftBlanks({ blanks, site }: Plan): LeftBlank[] {
  return blanks
    .filter(({ value }) => value === undefined)
    .map((blank) => ({
      at: placeOf(blank.item, blank.keyPath),
      words: `${asName(blank.item.name)}: no ${blank.what}, because ${whyBlank(blank, site)}`,
    }));
}
