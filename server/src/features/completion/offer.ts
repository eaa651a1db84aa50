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
  /** What is put in; the label where absent. Its lines below the first are indented from the first. */
  readonly insert?: string;
  /** `insert` has tab stops: `${1:core}`, `$0`. */
  readonly isSnippet?: boolean;
  /** A value is due next: worth offering again at once. */
  readonly goesOn?: boolean;
}

/** A snippet's text as somebody would leave it who types over none of its tab stops. */
export function withoutTabStops(snippet: string): string {
  return snippet
    .replace(/\$\{\d+:([^{}]*)\}|\$\{\d+\}|\$\d+/g, (_, text: string | undefined) => text ?? '')
    .replace(/\\([$}\\])/g, '$1');
}

/** Text that stands for itself in a snippet. */
export function literally(text: string): string {
  return text.replace(/[$}\\]/g, '\\$&');
}
