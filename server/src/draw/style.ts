/**
 * Colours and lines of a picture. On its own it is light or dark as the reader has it, and black on white on paper; an
 * editor sets the same variables to its theme. No look differs by its colour alone.
 */

/** Ink and paper by theme; each holds 4.5:1 for text and 3:1 for lines that mean something (WCAG 2.2, 1.4.3, 1.4.11). */
export const THEMES = {
  light: {
    paper: '#ffffff',
    panel: '#f3f5f7',
    ink: '#1b1f24',
    soft: '#57606a',
    edge: '#6e7781',
    main: '#0072b2',
    warn: '#9a5b00',
    bad: '#b3261e',
  },
  dark: {
    paper: '#1e1e1e',
    panel: '#2a2d31',
    ink: '#e8eaed',
    soft: '#b3bac2',
    edge: '#8b949e',
    main: '#56b4e9',
    warn: '#e69f00',
    bad: '#ff8a75',
  },
} as const;

function variables(theme: Readonly<Record<string, string>>): string {
  return Object.entries(theme)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(' ');
}

export const STYLE = `
.drawing { ${variables(THEMES.light)} color: var(--ink); background: var(--paper); font-family: system-ui, sans-serif; width: 100%; height: auto; }
@media screen and (prefers-color-scheme: dark) { .drawing { ${variables(THEMES.dark)} } }
.drawing text { fill: var(--ink); unicode-bidi: isolate; }
.drawing text.quiet, .drawing text.idle, .drawing text.unwanted { fill: var(--soft); }
.drawing text.main { fill: var(--main); }
.drawing text.warn, .drawing text.bad { font-weight: 600; }
.drawing text.faded { fill: var(--soft); }
.drawing rect { fill: var(--panel); stroke: var(--edge); stroke-width: 1; }
.drawing rect.quiet { fill: none; stroke: none; }
.drawing [data-at] > rect.quiet { pointer-events: all; }
.drawing rect.gauge { fill: var(--main); stroke: none; }
.drawing rect.rail { fill: color-mix(in srgb, var(--edge) 28%, var(--panel)); stroke: none; }
.drawing rect.main { fill: var(--paper); stroke: var(--main); stroke-width: 2; }
.drawing rect.idle { fill: var(--paper); stroke-dasharray: 2 3; }
.drawing rect.warn { stroke: var(--warn); stroke-width: 2; stroke-dasharray: 7 3; }
.drawing rect.bad { stroke: var(--bad); stroke-width: 3; }
.drawing rect.unwanted { fill: var(--paper); stroke-dasharray: 2 3; }
.drawing rect.lost { fill: var(--paper); stroke: var(--bad); stroke-width: 2.5; stroke-dasharray: 3 6; }
.drawing text.lost { text-decoration: line-through; }
.drawing rect.faded { fill: none; stroke-dasharray: 1 3; }
.drawing polyline, .drawing path { fill: none; stroke: var(--edge); stroke-width: 1.5; }
.drawing .plain:is(polyline, path) { stroke: var(--ink); stroke-width: 2; }
.drawing .main:is(polyline, path) { stroke: var(--main); stroke-width: 2.5; }
.drawing .idle:is(polyline, path) { stroke-dasharray: 8 5; }
.drawing .warn:is(polyline, path) { stroke: var(--warn); stroke-width: 3; stroke-dasharray: 12 3; }
.drawing .bad:is(polyline, path) { stroke: var(--bad); stroke-width: 5; }
.drawing .lost:is(polyline, path) { stroke: var(--bad); stroke-width: 2.5; stroke-dasharray: 3 6; }
.drawing .unwanted:is(polyline, path) { stroke-dasharray: 2 4; stroke-linecap: round; stroke-width: 2; }
.drawing .faded:is(polyline, path) { stroke-dasharray: 1 4; }
.drawing .tip { fill: var(--edge); stroke: none; }
.drawing .plain.tip { fill: var(--ink); } .drawing .main.tip { fill: var(--main); }
.drawing .warn.tip { fill: var(--warn); } .drawing .bad.tip, .drawing .lost.tip { fill: var(--bad); }
.drawing a { text-decoration: none; }
.drawing [data-at] { cursor: pointer; outline: none; }
.drawing [data-at]:is(:hover, :focus, .here) > rect:first-of-type, .drawing a:is(:hover, :focus) > g > rect:first-of-type { stroke: var(--focus, var(--main)); stroke-width: 3; stroke-dasharray: none; }
.drawing [data-at]:is(:hover, :focus, .here) > :is(polyline, path), .drawing a:is(:hover, :focus) > g > :is(polyline, path) { stroke-width: 6; }
@media (forced-colors: active) {
  .drawing { --paper: Canvas; --panel: Canvas; --ink: CanvasText; --soft: CanvasText; --edge: CanvasText; --main: LinkText; --warn: CanvasText; --bad: CanvasText; --focus: Highlight; forced-color-adjust: none; }
}
@media print {
  .drawing { --paper: #fff; --panel: #fff; --ink: #000; --soft: #000; --edge: #000; --main: #000; --warn: #000; --bad: #000; }
}
`;
