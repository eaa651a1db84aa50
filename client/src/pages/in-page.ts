import type { DrawingHost } from './in-drawing.ts';
import type { HoverHost } from './in-hover.ts';

/**
 * The script of a page: shows the content that the extension sends, keeps the scroll position, and reports which name
 * was chosen. The function's source is put into the page, so it uses nothing from outside of itself; the scripts for a
 * drawing are passed to it.
 */
export function inPage(
  nonce: string,
  startDrawing: (host: DrawingHost) => { readonly shown: () => void },
  startHover: (host: HoverHost) => { readonly shown: () => void },
): void {
  interface Element {
    readonly dataset: Record<string, string | undefined>;
    textContent: string | null;
    nonce: string;
    href: string;
    download: string;
    click(): void;
    focus(): void;
    remove(): void;
    append(...children: readonly Element[]): void;
    replaceChildren(...children: readonly Element[]): void;
    closest(selector: string): Element | null;
    querySelectorAll(selector: string): Iterable<Element>;
    readonly childNodes: Iterable<Element>;
  }
  interface Document extends Pick<Element, 'querySelectorAll'> {
    readonly head: Element;
    readonly body: Element;
    readonly activeElement: Element | null;
    title: string;
    createElement(tag: string): Element;
    addEventListener(type: string, listen: (event: { readonly target: Element; preventDefault(): void }) => void): void;
  }
  interface Page {
    readonly document: Document;
    readonly scrollY: number;
    scrollTo(x: number, y: number): void;
    readonly DOMParser: new () => { parseFromString(text: string, type: 'text/html'): Document };
    acquireVsCodeApi(): { getState(): unknown; setState(state: unknown): void; postMessage(message: unknown): void };
    addEventListener(type: 'message', listen: (event: { readonly data: FromExtension }) => void): void;
    addEventListener(type: 'scroll', listen: () => void): void;
  }
  interface FromExtension {
    /** The subject of the page, kept for when the window is opened again. */
    readonly of?: unknown;
    readonly html?: string;
    readonly download?: { readonly name: string; readonly html: string };
  }

  const page = globalThis as unknown as Page;
  const { document } = page;
  const editor = page.acquireVsCodeApi();
  let kept = (editor.getState() ?? {}) as { readonly of?: unknown; readonly scrolled?: number } & DrawingHost['kept'];
  /** The wanted scroll position, kept while the content is too short for it; and the position that was possible. */
  let wanted = kept.scrolled;
  let reached = 0;
  const keep = (more: typeof kept): void => {
    kept = { ...kept, ...more };
    editor.setState(kept);
  };
  const drawing = startDrawing({ kept, keep });
  const hover = startHover({ ask: (names, name) => editor.postMessage({ hover: { names, name } }) });

  const show = (html: string): void => {
    // Text of the site is escaped, so these tags are the page's own.
    const allowed = html.replaceAll('<style>', `<style nonce="${nonce}">`);
    const next = new page.DOMParser().parseFromString(allowed, 'text/html');
    const scrolled = wanted ?? page.scrollY;
    const names = [...document.querySelectorAll('button')];
    const { activeElement } = document;
    const focused = activeElement === null ? -1 : names.indexOf(activeElement);
    const isInDrawing = activeElement !== null && activeElement.closest('.drawing [data-at]') !== null;
    for (const old of document.querySelectorAll('style[data-page]')) old.remove();
    const styles = [...next.querySelectorAll('style')].map(({ textContent }) => {
      const style = document.createElement('style');
      style.nonce = nonce;
      style.dataset['page'] = '';
      style.textContent = textContent;
      return style;
    });
    for (const gone of next.querySelectorAll('style, script')) gone.remove();
    // The editor's styles come last, as they have the colours.
    document.head.append(...styles, ...document.querySelectorAll('style[data-editor]'));
    document.body.replaceChildren(...next.body.childNodes);
    document.title = next.title;
    drawing.shown();
    [...document.querySelectorAll('button')][focused]?.focus();
    if (isInDrawing) for (const stop of document.querySelectorAll('.drawing [tabindex="0"]')) stop.focus();
    page.scrollTo(0, scrolled);
    reached = page.scrollY;
    wanted = reached < scrolled ? scrolled : undefined;
    hover.shown();
  };

  page.addEventListener('message', ({ data: { of, html, download } }) => {
    if (of !== undefined) keep({ of });
    if (html !== undefined) show(html);
    if (download === undefined) return;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([download.html], { type: 'text/html' }));
    link.download = download.name;
    link.click();
  });
  page.addEventListener('scroll', () => {
    // A scroll to another position was made by the user.
    if (page.scrollY !== reached) wanted = undefined;
    keep({ scrolled: wanted ?? page.scrollY });
  });
  document.addEventListener('click', (event) => {
    const chosen = event.target.closest('[data-name], [data-at], [data-uri]');
    if (chosen === null) return;
    event.preventDefault();
    editor.postMessage({ chosen: { ...chosen.dataset } });
  });
  editor.postMessage({ ready: true });
}
