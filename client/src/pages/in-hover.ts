import type { Block } from './hover-words.ts';

/** What a page gives to the script of its hovers. */
export interface HoverHost {
  /** Asks the extension for the hover of a thing; it comes as a message. */
  readonly ask: (names: string, name: string) => void;
}

/** The hover of a thing, from the extension. */
export interface Hovered {
  readonly names: string;
  readonly name: string;
  readonly blocks: readonly Block[];
}

/**
 * The script for hovers in a drawing: shows the editor's hover for the thing under the mouse or with the focus. It
 * stays while the mouse is on it, and Escape closes it (WCAG 2.2, 1.4.13). The function's source is put into the page,
 * so it uses nothing from outside of itself.
 */
export function inHover({ ask }: HoverHost): { readonly shown: () => void } {
  interface Area {
    readonly left: number;
    readonly top: number;
    readonly bottom: number;
    readonly width: number;
    readonly height: number;
  }
  interface Element {
    readonly dataset: Record<string, string | undefined>;
    readonly style: Record<'left' | 'top', string>;
    id: string;
    className: string;
    textContent: string | null;
    scrollTop: number;
    readonly clientHeight: number;
    readonly isConnected: boolean;
    setAttribute(name: string, value: string): void;
    removeAttribute(name: string): void;
    append(...children: readonly Element[]): void;
    remove(): void;
    closest(selector: string): Element | null;
    contains(other: Element | null): boolean;
    getBoundingClientRect(): Area;
  }
  interface Happening {
    readonly target: Element;
    readonly relatedTarget: Element | null;
    readonly key: string;
    preventDefault(): void;
  }
  interface Document {
    readonly body: Element;
    readonly activeElement: Element | null;
    createElement(tag: string): Element;
    querySelectorAll(selector: string): Iterable<Element>;
    addEventListener(type: string, listen: (event: Happening) => void, capture?: boolean): void;
  }
  interface Page {
    readonly document: Document;
    readonly innerWidth: number;
    readonly innerHeight: number;
    addEventListener(type: 'message', listen: (event: { readonly data: { readonly hovered?: Hovered } }) => void): void;
  }

  /** Pause before a request, ms, so that things passed on the way ask for nothing. */
  const REST = 300;
  const REST_OF_KEYS = 600;
  const GAP = 6;
  const page = globalThis as unknown as Page;
  const { document } = page;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** The thing that the hover is shown at, or was requested for. */
  let at: Element | undefined;
  let hover: Element | undefined;
  /** The thing whose hover was closed, which is not shown again before another. */
  let refused = '';

  const thingOf = (target: Element | null): Element | undefined => target?.closest('.drawing [data-at]') ?? undefined;
  const keyOf = ({ dataset }: Element): string => `${dataset['names'] ?? ''} ${dataset['at'] ?? ''}`;

  const close = (): void => {
    clearTimeout(timer);
    hover?.remove();
    hover = undefined;
    at?.removeAttribute('aria-describedby');
    at = undefined;
  };
  const come = (thing: Element, rest: number): void => {
    if (thing === at) return clearTimeout(timer);
    close();
    if (keyOf(thing) === refused) return;
    refused = '';
    at = thing;
    timer = setTimeout(() => ask(thing.dataset['names'] ?? '', thing.dataset['at'] ?? ''), rest);
  };
  const leave = (): void => {
    clearTimeout(timer);
    // Time to move the mouse onto the hover; a pending answer is dropped.
    timer = setTimeout(close, REST);
  };

  const made = (tag: string, words: { readonly text: string; readonly look: string }): Element => {
    const element = document.createElement(tag);
    element.textContent = words.text;
    element.className = words.look;
    return element;
  };
  const blockOf = (block: Block): Element => {
    if ('text' in block) return made('p', block);
    const table = document.createElement('table');
    table.append(
      ...block.rows.map((cells, index) => {
        const row = document.createElement('tr');
        row.append(
          ...cells.map((cell, column) => {
            const element = made(index === 0 ? 'th' : 'td', cell);
            if (block.right[column] === true) element.className += ' right';
            return element;
          }),
        );
        return row;
      }),
    );
    return table;
  };
  const show = (thing: Element, blocks: readonly Block[]): void => {
    hover?.remove();
    hover = document.createElement('div');
    hover.id = 'hover';
    hover.className = 'hover';
    hover.setAttribute('role', 'tooltip');
    hover.append(...blocks.map(blockOf));
    document.body.append(hover);
    thing.setAttribute('aria-describedby', 'hover');
    const { left, top, bottom } = thing.getBoundingClientRect();
    const { width, height } = hover.getBoundingClientRect();
    const isBelow = bottom + GAP + height <= page.innerHeight || top < page.innerHeight - bottom;
    const wanted = isBelow ? Math.min(bottom + GAP, page.innerHeight - height) : top - GAP - height;
    hover.style.left = `${Math.max(0, Math.min(left, page.innerWidth - width - GAP))}px`;
    hover.style.top = `${Math.max(0, wanted)}px`;
  };

  document.addEventListener('mouseover', ({ target }) => {
    const thing = thingOf(target);
    if (thing !== undefined) come(thing, REST);
    else if (hover?.contains(target) === true) clearTimeout(timer);
    else if (at !== undefined) leave();
  });
  document.addEventListener('mouseleave', leave);
  document.addEventListener('focusin', ({ target }) => {
    const thing = thingOf(target);
    if (thing !== undefined) come(thing, REST_OF_KEYS);
  });
  document.addEventListener('focusout', ({ relatedTarget }) => {
    if (thingOf(relatedTarget) === undefined) close();
  });
  document.addEventListener(
    'scroll',
    ({ target }) => {
      if (hover !== undefined && target !== hover) close();
    },
    true,
  );
  document.addEventListener('keydown', (event) => {
    if (hover === undefined || at === undefined) return;
    if (event.key === 'Escape') {
      refused = keyOf(at);
      close();
    } else if (event.key === 'PageDown' || event.key === 'PageUp') {
      event.preventDefault();
      hover.scrollTop += (event.key === 'PageDown' ? 1 : -1) * hover.clientHeight;
    }
  });
  page.addEventListener('message', ({ data: { hovered } }) => {
    if (hovered === undefined || at === undefined || keyOf(at) !== `${hovered.names} ${hovered.name}`) return;
    if (at.isConnected && hovered.blocks.length > 0) show(at, hovered.blocks);
  });

  return {
    shown: () => {
      close();
      // The browser's own tooltip would cover the hover; the name stays as the label.
      for (const title of document.querySelectorAll('.drawing [data-at] > title')) title.remove();
      const thing = thingOf(document.activeElement);
      if (thing !== undefined) come(thing, REST_OF_KEYS);
    },
  };
}
