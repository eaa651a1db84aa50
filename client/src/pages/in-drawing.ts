/** What a page gives to the script of its drawing. */
export interface DrawingHost {
  /** The state of the page that the editor keeps. */
  readonly kept: { readonly focus?: string | undefined; readonly left?: number };
  readonly keep: (more: DrawingHost['kept']) => void;
}

/**
 * The script of a page with a drawing: a single tab stop, keys that move from thing to thing in their order, and the
 * mark at the things of the cursor in the text. The document already has the page's content, and has new content when
 * `shown` is called. The function's source is put into the page, so it uses nothing from outside of itself.
 */
export function inDrawing({ kept, keep }: DrawingHost): { readonly shown: () => void } {
  interface Element {
    readonly dataset: Record<string, string | undefined>;
    readonly classList: { toggle(name: string, force: boolean): void };
    readonly tagName: string;
    scrollLeft: number;
    setAttribute(name: string, value: string): void;
    dispatchEvent(event: unknown): void;
    closest(selector: string): Element | null;
    focus(options?: { readonly preventScroll: boolean }): void;
    scrollIntoView(how: { readonly block: 'nearest'; readonly inline: 'nearest' }): void;
  }
  interface Key {
    readonly target: Element;
    readonly key: string;
    readonly ctrlKey: boolean;
    readonly metaKey: boolean;
    readonly altKey: boolean;
    preventDefault(): void;
  }
  interface Document {
    querySelectorAll(selector: string): Iterable<Element>;
    addEventListener(type: 'keydown', listen: (event: Key) => void): void;
    addEventListener(
      type: 'focusin' | 'scroll',
      listen: (event: { readonly target: Element }) => void,
      capture?: boolean,
    ): void;
  }
  interface Page {
    readonly document: Document;
    readonly MouseEvent: new (
      type: string,
      init: { readonly bubbles: boolean; readonly cancelable: boolean },
    ) => unknown;
    addEventListener(
      type: 'message',
      listen: (event: { readonly data: { readonly marked?: readonly string[] } }) => void,
    ): void;
  }

  const { document, MouseEvent, addEventListener } = globalThis as unknown as Page;
  let { focus: current, left = 0 } = kept;
  let marked: readonly string[] = [];

  const keyOf = ({ dataset }: Element): string => `${dataset['names'] ?? ''} ${dataset['at'] ?? ''}`;
  const things = (): Element[] => [...document.querySelectorAll('.drawing [data-at]')];

  /** Makes the thing that was last focused the tab stop, or else the first. */
  const stopAt = (all: readonly Element[]): Element | undefined => {
    const stop = all.find((one) => keyOf(one) === current) ?? all[0];
    for (const one of all) one.setAttribute('tabindex', one === stop ? '0' : '-1');
    return stop;
  };

  /** Marks the first name that the drawing has, wherever it is drawn. */
  const mark = (all: readonly Element[]): Element | undefined => {
    const name = marked.find((one) => all.some((thing) => keyOf(thing) === one));
    let first: Element | undefined;
    for (const one of all) {
      const isMarked = keyOf(one) === name;
      one.classList.toggle('here', isMarked);
      if (isMarked) first ??= one;
    }
    return first;
  };

  document.addEventListener('keydown', (event) => {
    const thing = event.target.closest('.drawing [data-at]');
    if (thing === null || event.ctrlKey || event.metaKey || event.altKey) return;
    const all = things();
    const at = all.indexOf(thing);
    const to: Readonly<Record<string, number>> = {
      ArrowRight: at + 1,
      ArrowDown: at + 1,
      ArrowLeft: at - 1,
      ArrowUp: at - 1,
      Home: 0,
      End: all.length - 1,
    };
    const next = to[event.key];
    if (next !== undefined) {
      event.preventDefault();
      const thingThere = all[Math.max(0, Math.min(all.length - 1, next))];
      thingThere?.focus();
      // Only for keys: a thing that moves while the mouse button is down would not be clicked.
      thingThere?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      thing.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
    }
  });
  document.addEventListener('focusin', ({ target }) => {
    const thing = target.closest('.drawing [data-at]');
    if (thing === null) return;
    const all = things();
    current = keyOf(thing);
    for (const one of all) one.setAttribute('tabindex', one === thing ? '0' : '-1');
    keep({ focus: current });
  });
  // A wide picture scrolls within the page.
  document.addEventListener(
    'scroll',
    ({ target }) => {
      if (target.tagName !== 'FIGURE') return;
      left = target.scrollLeft;
      keep({ left });
    },
    true,
  );
  addEventListener('message', ({ data }) => {
    if (data.marked === undefined) return;
    marked = data.marked;
    mark(things())?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });

  return {
    shown: () => {
      const all = things();
      stopAt(all);
      mark(all);
      for (const figure of document.querySelectorAll('figure')) figure.scrollLeft = left;
    },
  };
}
