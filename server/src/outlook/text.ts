/** Headroom and failures as tables of the report for a terminal. */

import { equalsIn } from '../failure/ranking.ts';
import { groupWords } from '../failure/words.ts';
import { limitsAfter } from '../headroom/words.ts';
import { type Align, columns } from '../report/columns.ts';
import { visible } from '../text/visible.ts';
import { count } from '../text/words.ts';
import type { Outlook } from './outlook.ts';

/** The most rows in the report; `plumbline failure --all` prints all of them. */
export const MOST_RANKED = 8;

export function outlookSections(outlook: Outlook): string[] {
  return [growth(outlook), failures(outlook)].filter((section) => section !== '');
}

function growth({ headroom, untried }: Outlook): string {
  const rows = headroom.map((one) => [
    visible(one.at.name),
    visible(one.camera.name),
    String(one.more),
    visible(one.stop, 1000),
    visible(limitsAfter(one)),
  ]);
  if (rows.length === 0) return '';
  return [
    section(
      'Room for cameras (more like the one at each switch that sends most)',
      [['switch', 'like', 'more', 'then', 'with that solved'], ...rows],
      ['left', 'left', 'right', 'left', 'left'],
    ),
    ...(untried.length === 0 ? [] : [`  ${untriedWords(untried)}`]),
  ].join('\n');
}

/** What the table leaves out, as a sentence. */
export function untriedWords({ length }: Outlook['untried']): string {
  return `There is too much to try ${count(length, 'switch', 'switches')} more: plumbline headroom CAMERA SWITCH tries one.`;
}

export const ALL_TOO_MUCH = 'There is much to try: plumbline failure --all begins with what others hang on.';

function failures({ failures: ranking }: Outlook): string {
  const title = 'What must not fail (the worst first)';
  if (ranking === undefined) return `${title}\n  ${ALL_TOO_MUCH}`;
  const all = equalsIn(ranking);
  if (all.length === 0) return '';
  const rows = all
    .slice(0, MOST_RANKED)
    .map((group) => [...lost(group[0]), visible(groupWords(group.map(({ element }) => element)), 1000)]);
  const more = all.length - rows.length;
  const head = ['recordings', 'cameras', 'pictures', 'are lost with'];
  return [
    section(title, [head, ...rows], ['right', 'right', 'right', 'left']),
    ...(more === 0 ? [] : [`  and ${count(more, 'row')} more by plumbline failure --all`]),
  ].join('\n');
}

/** The numbers of lost recordings, cameras and pictures. */
export function lost({
  recordings,
  cameras,
  pictures,
}: Record<'recordings' | 'cameras' | 'pictures', readonly unknown[]>): string[] {
  return [recordings, cameras, pictures].map(({ length }) => String(length));
}

function section(title: string, rows: readonly (readonly string[])[], align: readonly Align[]): string {
  return [title, ...columns(rows, align).map((line) => `  ${line}`)].join('\n');
}
