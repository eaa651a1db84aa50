/** Two labels for each cable: the port of this end, and the port of the other. */

import type { Plan } from '../../plan.ts';
import { count } from '../../text/words.ts';
import type { Output } from '../output.ts';
import { csv } from '../quoting/csv.ts';
import { byTexts } from '../../text/natural-order.ts';
import { breakable, facts, sheet } from '../tables/sheet.ts';
import { type CableRun, cableRun, byRun, reversed } from './cable-run.ts';

export const cableLabels: Output = {
  kind: 'cable-labels',
  title: 'Cable labels',
  summary: 'the text of a label for each end of each cable; CSV for a label printer and a page to print and cut',
  subjects: () => [],
  make(plan) {
    if (plan.site.cables.length === 0) return { files: [], refused: [], notes: [] };
    const labels = labelsOf(plan);
    return {
      files: [
        { path: 'cable-labels.csv', text: csvOf(plan, labels) },
        { path: 'cable-labels.html', text: pageOf(plan, labels) },
      ],
      refused: [],
      notes: [],
    };
  },
};

/** The two labels of a cable side by side; cables without a name on them come last. */
function labelsOf(plan: Plan): (readonly [CableRun, CableRun])[] {
  const order = byTexts<CableRun>(
    ({ label }) => (label === '' ? '\uffff' : label),
    ({ here }) => here.text,
  );
  const cables = plan.site.cables.map((cable) => cableRun(plan, cable)).sort((a, b) => order(a, b) || byRun(a, b));
  return cables.map((one) => [one, reversed(one)]);
}

const CSV_HEAD = ['Label', 'Here', 'There', 'Through', 'Text', 'Site'];

function csvOf({ site }: Plan, labels: readonly (readonly [CableRun, CableRun])[]): string {
  return csv(
    CSV_HEAD,
    labels
      .flat()
      .map(({ label, here, there, through }) => [
        label,
        here.text,
        there.text,
        through.join('; '),
        `${label === '' ? '' : `${label} `}${here.text} to ${there.text}`,
        site.name ?? '',
      ]),
  );
}

function pageOf({ site }: Plan, labels: readonly (readonly [CableRun, CableRun])[]): string {
  const box = ({ label, here, there, through }: CableRun): string =>
    '<div ' +
    `class="label">${label === '' ? '' : `<b>${breakable(label)}</b>`}<span>${breakable(here.text)}</span><span>to ` +
    `${breakable(there.text)}</span>${through.length === 0 ? '' : `<small>via ${breakable(through.join(', '))}</small>`}</div>\n`;
  const pairs = labels.map(([a, b]) => `<div class="pair">\n${box(a)}${box(b)}</div>\n`);
  return sheet(site, {
    title: 'Cable labels',
    command: 'make cable-labels',
    cautions: [],
    upright: true,
    body:
      facts(
        count(labels.length, 'cable'),
        'two labels each: the cable, the port that this end belongs in, and where the other end is',
      ) + `<style>\n${STYLE}</style>\n<div class="labels">\n${pairs.join('')}</div>\n`,
  });
}

const STYLE = `.labels { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm 6mm; }
.pair { display: grid; grid-template-columns: 1fr 1fr; break-inside: avoid; border: .5pt dashed #555; }
.label, .pair { min-width: 0; }
.label { padding: 1.5mm 2mm; min-height: 15mm; box-sizing: border-box; line-height: 1.2; } .label + .label { border-left: .5pt dashed #555; }
.label b { display: block; font-size: 12pt; } .label span { display: block; } .label small { font-size: 7.5pt; color: #333; }
`;
