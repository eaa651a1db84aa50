/** The verdict on a site at the beginning of a report. */

import { count } from '../text/words.ts';

/** A finding that a report lists, with its place in the text for a page with links. */
export interface ReportedFinding {
  readonly severity: 'error' | 'warning';
  readonly message: string;
  /** `cables.site.yaml:16` */
  readonly where: string;
  /** The address of its file and its line and character from 0, where the page can link to it. */
  readonly target?: { readonly uri: string; readonly line: number; readonly character: number };
}

/** Errors before warnings. */
export type Verdict = readonly ReportedFinding[];

/** `2 errors, 1 warning`, or that there are none. */
export function verdictWords(verdict: Verdict): string {
  const of = (severity: ReportedFinding['severity']): number =>
    verdict.filter((finding) => finding.severity === severity).length;
  const parts = [of('error') > 0 && count(of('error'), 'error'), of('warning') > 0 && count(of('warning'), 'warning')];
  const words = parts.filter((part) => part !== false).join(', ');
  return words === '' ? 'No errors or warnings' : words;
}
