/** Headroom and failures as tables of the report's page. */

import { type Equals, equalsIn } from '../failure/ranking.ts';
import { elementWords, type Element } from '../failure/element.ts';
import { limitsAfter } from '../headroom/words.ts';
import { type Cell, type Naming, figure, html, table, text } from '../report/page/cells.ts';
import type { Outlook } from './outlook.ts';
import { ALL_TOO_MUCH, MOST_RANKED, lost, untriedWords } from './text.ts';

export function outlookHtml({ headroom, untried, failures }: Outlook, naming: Naming): string {
  const device = (name: string): Cell => ({ html: naming({ names: 'devices', name }) });
  const all = failures === undefined ? [] : equalsIn(failures);
  const hidden = all.length - MOST_RANKED;
  return [
    table({
      title: 'Room for cameras',
      note: 'How many more fit that are like the camera at each switch that sends most.',
      head: ['Switch', 'Like', 'More', 'Then', 'With that solved'],
      rows: headroom.map((one) => ({
        cells: [
          device(one.at.name),
          device(one.camera.name),
          figure(String(one.more)),
          text(one.stop),
          text(limitsAfter(one)),
        ],
      })),
      ...(untried.length > 0 && { after: note(untriedWords(untried)) }),
    }),
    ...(failures === undefined ? [`<section>\n<h2>What must not fail</h2>\n${note(ALL_TOO_MUCH)}</section>\n`] : []),
    table({
      title: 'What must not fail',
      note: 'What is lost when one thing fails, the worst first.',
      head: ['Recordings', 'Cameras', 'Pictures', 'Are lost with'],
      rows: all.slice(0, MOST_RANKED).map((group) => ({
        cells: [...lost(group[0]).map(figure), { html: withNames(group, naming) }],
      })),
      ...(hidden > 0 && { after: note(`plumbline failure --all has ${hidden} more rows.`) }),
    }),
  ].join('');
}

function note(words: string): string {
  return `<p class="note">${html(words)}</p>\n`;
}

/** The most names that a row shows. */
const MOST_NAMES = 4;

function withNames(group: Equals, naming: Naming): string {
  const names = group.slice(0, MOST_NAMES).map(({ element }) => named(element, naming));
  const more = group.length - names.length;
  return `${group.length > 1 ? 'any of ' : ''}${names.join(', ')}${more === 0 ? '' : ` and ${more} more`}`;
}

/** The name of an element, with a link where the page supports it. */
function named(element: Element, naming: Naming): string {
  const { kind, name } = element;
  switch (kind) {
    case 'device':
      return naming({ names: 'devices', name });
    case 'volume':
      return `a disk of ${naming({ names: 'volumes', name })}`;
    case 'rack':
      return `the rack ${naming({ names: 'racks', name })}`;
    case 'cable':
      return naming({ names: 'ports', name: name.split(' – ')[0] ?? name });
    case 'duct':
      return html(elementWords(element));
  }
}
