/** The drawing of the network in the report: each thing leads to its row in the report's own tables. */

import type { Plan } from '../plan.ts';
import { type Naming, asText } from '../report/page/cells.ts';
import { linkRow } from '../report/page/network.ts';
import type { ReportFigure } from '../report/html.ts';
import { portName } from '../site/model.ts';
import { type Name, USUAL_OPTIONS } from './drawing.ts';
import { networkPicture } from './network.ts';
import { FIGURE_STYLE } from './page.ts';
import { STYLE } from './style.ts';
import { svgPart } from './svg.ts';

/** `undefined` where nothing is cabled. */
export function networkInReport(plan: Plan, naming: Naming): ReportFigure | undefined {
  const { links } = plan.network.topology;
  if (links.length === 0) return undefined;
  const rows = new Map<string, string>();
  links.forEach(({ a, b }, index) => {
    for (const key of [
      `ports ${portName(a)}`,
      `ports ${portName(b)}`,
      `devices ${a.device.name}`,
      `devices ${b.device.name}`,
    ])
      if (!rows.has(key)) rows.set(key, `#${linkRow(index)}`);
  });
  const leading = ({ names, name }: Name): string | undefined =>
    naming === asText ? rows.get(`${names} ${name}`) : undefined;
  const drawing = networkPicture.draw(plan, '', USUAL_OPTIONS);
  return { style: STYLE + FIGURE_STYLE, title: 'Network', html: `<figure>\n${svgPart(drawing, leading)}</figure>\n` };
}
