/**
 * Light or dark by the reader's setting; on a narrow screen rows become blocks, and on paper headings stay with their
 * tables.
 */
export const STYLE = `
:root { color-scheme: light dark; font: 15px/1.45 system-ui, sans-serif; }
body { max-width: 72rem; margin: 2rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 0 0 .6rem; } h2 { font-size: 1.15rem; margin: 2rem 0 .4rem; }
p { margin: .3rem 0; } .note { opacity: .8; }
.verdict { font-weight: 600; font-size: 1.15rem; } .findings { margin: .4rem 0; padding-left: 1.4rem; } .where { opacity: .8; }
table { border-collapse: collapse; width: 100%; }
th, td { padding: .2rem .6rem; text-align: left; vertical-align: top; border-bottom: 1px solid color-mix(in srgb, currentColor 25%, transparent); }
th { vertical-align: bottom; }
th.n, td.n { text-align: right; font-variant-numeric: tabular-nums; } td.n, .w { white-space: nowrap; }
td:first-child { min-width: 13rem; } tr.part td:first-child { padding-left: 1.6rem; }
meter { width: 4rem; margin-right: .4rem; vertical-align: baseline; }
button.name { all: unset; cursor: pointer; text-decoration: underline; text-decoration-thickness: 1px; text-underline-offset: .15em; }
button.name:focus-visible { outline: 2px solid; outline-offset: 1px; }
@media screen and (max-width: 640px) {
  body { margin: 1rem auto; }
  thead { position: absolute; clip-path: inset(50%); }
  table, tbody, tr, td { display: block; }
  tr { padding: .4rem 0; border-bottom: 1px solid color-mix(in srgb, currentColor 25%, transparent); }
  td, td.n { display: flex; justify-content: space-between; gap: 1rem; border: 0; padding: .05rem 0; text-align: right; white-space: normal; }
  td::before { content: attr(data-head); flex-shrink: 0; max-width: 50%; opacity: .8; text-align: left; } td meter { margin-left: auto; }
  td:first-child { display: block; min-width: 0; text-align: left; font-weight: 600; } td:first-child::before { content: none; }
  tr.part { padding-left: 1rem; } tr.part td:first-child { padding-left: 0; }
  td:empty { display: none; }
}
@media print {
  :root { color-scheme: light; font-size: 9.5pt; }
  body { margin: 0; padding: 0; max-width: none; }
  h1, h2, .note, thead { break-after: avoid; } tr, li, .note { break-inside: avoid; } thead { display: table-header-group; }
  tbody tr:first-child { break-before: avoid; }
  /* A heading asks for the room of the first row below it, which browsers do not keep with it otherwise. */
  h2 { break-inside: avoid; padding-bottom: 10rem; margin-bottom: -9.6rem; }
  meter { print-color-adjust: exact; }
}
`;
