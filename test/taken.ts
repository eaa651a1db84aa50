/** A text after an offer of completion was taken, with its tab stops unchanged. */

import type { Completion } from '../server/src/features/completion/completion.ts';
import { type Offer, withoutTabStops } from '../server/src/features/completion/offer.ts';
import { type SiteText, spanOf } from '../server/src/site/folder.ts';
import type { Span } from '../server/src/text/syntax.ts';

export interface Taken {
  readonly text: string;
  /** The inserted text. */
  readonly span: Span;
  /** Where something is still to be typed: empty tab stops, and the end of a key that is due a value. */
  readonly blanks: readonly number[];
}

/** As a client with snippets puts it in: lines below the first are indented as the line at the cursor. */
export function taken(file: SiteText, { at }: Completion, offer: Offer): Taken {
  const { start, end } = spanOf(file, at);
  const line = file.text.slice(file.text.lastIndexOf('\n', start - 1) + 1, start);
  const indent = /^ */.exec(line)?.[0] ?? '';
  const snippet = (offer.insert ?? offer.label).replaceAll('\n', `\n${indent}`);
  const put = offer.isSnippet === true ? withoutTabStops(snippet) : snippet;
  const blanks =
    offer.isSnippet === true
      ? [...snippet.matchAll(/\$\{\d+:?\}|\$\d+/g)].map(
          ({ index }) => start + withoutTabStops(snippet.slice(0, index)).length,
        )
      : offer.goesOn === true
        ? [start + put.length]
        : [];
  return {
    text: file.text.slice(0, start) + put + file.text.slice(end),
    span: { start, end: start + put.length },
    blanks,
  };
}
