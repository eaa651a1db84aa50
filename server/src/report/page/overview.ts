/** The beginning of the page: the verdict, what is nearest to its limit, and what is wrong. */

import type { Plan } from '../../plan.ts';
import { tightest } from '../tightest.ts';
import { type Verdict, verdictWords } from '../verdict.ts';
import { type Naming, html, shareCell, table, figure } from './cells.ts';

/** The most findings that are listed; for more the page gives their number. */
const MOST_FINDINGS = 12;
const MOST_TIGHT = 5;

export function verdictLine(verdict: Verdict): string {
  const [worst] = verdict;
  const sign = worst === undefined ? '✓' : worst.severity === 'error' ? '✗' : '!';
  return `<p class="verdict">${sign} ${html(verdictWords(verdict))}</p>\n`;
}

export function findingsSection(verdict: Verdict): string {
  const others = verdict.length - MOST_FINDINGS;
  const items = verdict.slice(0, MOST_FINDINGS).map(({ severity, message, where, target }) => {
    const place =
      target === undefined
        ? html(where)
        : `<button type="button" class="name" data-uri="${html(target.uri)}" data-line="${target.line}" ` +
          `data-character="${target.character}">${html(where)}</button>`;
    return `<li><b>${severity === 'error' ? 'Error' : 'Warning'}</b> ${html(message)} <span class="where">${place}</span></li>\n`;
  });
  if (items.length === 0) return '';
  const rest = others > 0 ? `<p>And ${others} more.</p>\n` : '';
  return `<section>\n<h2>Errors and warnings</h2>\n<ul class="findings">\n${items.join('')}</ul>\n${rest}</section>\n`;
}

export function tightSection(plan: Plan, naming: Naming): string {
  return table({
    title: 'The tightest',
    note: '▲ over its limit, △ over what the site warns at.',
    head: ['Where', 'What', 'At peak', 'Of the whole'],
    rows: tightest(plan, MOST_TIGHT).map(({ name, what, figures, share, bounds, isKnown }) => ({
      cells: [{ html: naming(name) }, { html: html(what) }, figure(figures), shareCell(share, bounds, isKnown)],
    })),
  });
}
