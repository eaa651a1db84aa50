/** The report as one page for printing: no scripts, nothing fetched, light or dark by the reader's setting. */

import type { Plan } from '../plan.ts';
import { type Naming, asText, html } from './page/cells.ts';
import { airSection, poeSection, volumesSection } from './page/equipment.ts';
import { linksSection, streamsSection, trafficSection, uplinksSection } from './page/network.ts';
import { findingsSection, tightSection, verdictLine } from './page/overview.ts';
import { racksSection } from './page/racks.ts';
import { STYLE } from './page/style.ts';
import { supplySection } from './page/supply.ts';
import { levelsSection, occasionsSection } from './page/television.ts';
import type { Verdict } from './verdict.ts';

/** A picture in the report. */
export interface ReportFigure {
  readonly title: string;
  /** The CSS of its content. */
  readonly style: string;
  readonly html: string;
}

/**
 * @param naming how names are shown; where there is an editor, so that they lead to their places
 * @param drawn pictures before the tables
 * @param more further sections as HTML, which come last
 */
export function reportHtml(
  plan: Plan,
  verdict: Verdict,
  naming: Naming = asText,
  drawn?: ReportFigure,
  more = '',
): string {
  const name = html(plan.site.name ?? 'Site without a name');
  const sections = [
    linksSection,
    streamsSection,
    trafficSection,
    uplinksSection,
    volumesSection,
    racksSection,
    poeSection,
    supplySection,
    airSection,
    levelsSection,
    occasionsSection,
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${name}</title>
<style>${STYLE}${drawn?.style ?? ''}</style>
</head>
<body>
<h1>${name}</h1>
${verdictLine(verdict)}${tightSection(plan, naming)}${findingsSection(verdict)}${figureSection(drawn)}${sections.map((section) => section(plan, naming)).join('')}${more}</body>
</html>
`;
}

function figureSection(drawn: ReportFigure | undefined): string {
  return drawn === undefined ? '' : `<section>\n<h2>${html(drawn.title)}</h2>\n${drawn.html}</section>\n`;
}
