// The empty page for content: nothing is fetched, and only the extension's own scripts run.
import { inDrawing } from './in-drawing.ts';
import { inHover } from './in-hover.ts';
import { inPage } from './in-page.ts';

/** Whether a page has the colours of the editor, or those of paper. */
export type Look = 'editor' | 'paper';

const STYLES: Readonly<Record<Look, string>> = {
  editor: `
:root { font-family: var(--vscode-font-family); }
html:has(body.vscode-light), html:has(body.vscode-high-contrast-light) { color-scheme: light; }
html:has(body.vscode-dark), html:has(body.vscode-high-contrast:not(.vscode-high-contrast-light)) { color-scheme: dark; }
@media screen {
  body { color: var(--vscode-editor-foreground); background: var(--vscode-editor-background); }
  body .drawing {
    --paper: var(--vscode-editor-background);
    --panel: var(--vscode-editorWidget-background);
    --ink: var(--vscode-editor-foreground);
    --soft: var(--vscode-editor-foreground);
    --edge: color-mix(in srgb, var(--vscode-editor-foreground) 65%, var(--vscode-editor-background));
    --focus: var(--vscode-focusBorder);
  }
  body.vscode-light .drawing { --main: #0072b2; --warn: #9a5b00; --bad: #b3261e; }
  body.vscode-dark .drawing { --main: #56b4e9; --warn: #e69f00; --bad: #ff8a75; }
  body.vscode-high-contrast .drawing {
    --panel: var(--vscode-editor-background);
    --edge: var(--vscode-contrastBorder);
    --main: var(--vscode-contrastActiveBorder);
    --warn: var(--vscode-editor-foreground);
    --bad: var(--vscode-editor-foreground);
  }
  .hover {
    position: fixed; z-index: 1; box-sizing: border-box; max-width: min(46em, 96vw); max-height: 45vh; overflow: auto;
    padding: 4px 10px; font-size: var(--vscode-font-size);
    color: var(--vscode-editorHoverWidget-foreground); background: var(--vscode-editorHoverWidget-background);
    border: 1px solid var(--vscode-editorHoverWidget-border);
  }
  .hover p { margin: 6px 0; }
  .hover table { display: table; width: auto; margin: 6px 0; }
  .hover tr { display: table-row; padding: 0; border: 0; }
  .hover :is(td, th) { display: table-cell; min-width: 0; padding: 1px 14px 1px 0; border: 0; text-align: left; font-weight: normal; }
  .hover :is(td, th):first-child { min-width: 0; font-weight: normal; }
  .hover :is(td, th).right { text-align: right; white-space: nowrap; }
  .hover :is(.strong, th, td.strong:first-child) { font-weight: 600; }
  .hover .source { font-style: italic; }
}
@media print { .hover { display: none; } }
`,
  paper: `
html, body { color: #000; background: #fff; }
`,
};

export function frame(look: Look): string {
  const nonce = crypto.randomUUID();
  const allowed = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${allowed}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<style nonce="${nonce}" data-editor>${STYLES[look]}</style>
</head>
<body>
<script nonce="${nonce}">(${inPage.toString()})('${nonce}', ${inDrawing.toString()}, ${inHover.toString()});</script>
</body>
</html>
`;
}
