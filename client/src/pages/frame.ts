// The empty page that content is put into: nothing is fetched, and only what the extension itself wrote runs.
import { inPage } from './in-page.ts';

/** Whether a page has the colours of the editor, or those of the paper that it is for. */
export type Look = 'editor' | 'paper';

const STYLES: Readonly<Record<Look, string>> = {
  editor: `
:root { font-family: var(--vscode-font-family); }
html:has(body.vscode-light), html:has(body.vscode-high-contrast-light) { color-scheme: light; }
html:has(body.vscode-dark), html:has(body.vscode-high-contrast:not(.vscode-high-contrast-light)) { color-scheme: dark; }
@media screen { body { color: var(--vscode-editor-foreground); background: var(--vscode-editor-background); } }
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
<script nonce="${nonce}">(${inPage.toString()})('${nonce}');</script>
</body>
</html>
`;
}
