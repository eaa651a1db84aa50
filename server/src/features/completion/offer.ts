/** What a completion offers. */

export type OfferKind =
  | 'section'
  | 'key'
  | 'snippet'
  | 'word'
  | 'quantity'
  | 'address'
  | 'number'
  | 'devices'
  | 'vlans'
  | 'racks'
  | 'multiplexes'
  | 'services'
  | 'streams'
  | 'traffic'
  | 'volumes'
  | 'recordings'
  | 'rules'
  | 'ports';

export interface Offer {
  readonly label: string;
  readonly kind: OfferKind;
  /** A few words beside the label. */
  readonly detail?: string | undefined;
  /** Markdown. */
  readonly documentation?: string | undefined;
  /** The text that is inserted; the label where absent. Its lines below the first are indented from the first. */
  readonly insert?: string;
  /** `insert` has tab stops: `${1:core}`, `$0`. */
  readonly isSnippet?: boolean;
  /** A value comes next, so completion is offered again at once. */
  readonly goesOn?: boolean;
}

/** A snippet's text when nothing is typed over its tab stops. */
export function withoutTabStops(snippet: string): string {
  return snippet
    .replace(/\$\{\d+:([^{}]*)\}|\$\{\d+\}|\$\d+/g, (_, text: string | undefined) => text ?? '')
    .replace(/\\([$}\\])/g, '$1');
}

/** Text escaped for a snippet. */
export function literally(text: string): string {
  return text.replace(/[$}\\]/g, '\\$&');
}
