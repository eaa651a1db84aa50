/** Drawings of the samples, as examples, and so that a change in a drawing shows in a commit. */

import { join } from 'node:path';
import { readSite } from '../src/cli/sites.ts';
import { USUAL_OPTIONS } from '../src/draw/drawing.ts';
import { KINDS } from '../src/draw/kinds.ts';
import { svgFile } from '../src/draw/svg.ts';
import { planOf } from '../src/plan.ts';
import type { Output } from './output.ts';

/** The drawings of each sample, by kind and subject. */
const DRAWN: Readonly<Record<string, readonly (readonly [kind: string, subject: string])[]>> = {
  'harrow-lane': [
    ['network', ''],
    ['stream', 'gate-cam'],
    ['switch', 'core'],
    ['subnet', 'video'],
    ['rack', 'cupboard'],
    ['panel', 'panel-a'],
    ['aerial', ''],
    ['failure', 'stable'],
    ['volume', 'archive'],
  ],
  'first-draft': [
    ['network', ''],
    ['stream', 'paddock-cam'],
  ],
};

/** @param root the repository */
export function drawingOutputs(root: string): Output[] {
  return Object.entries(DRAWN).flatMap(([sample, drawn]) => {
    const plan = planOf(readSite(join(root, 'samples', sample)).folder.site());
    return drawn.map(([word, subject]) => {
      const kind = KINDS.find((one) => one.kind === word);
      if (kind === undefined) throw new Error(`there is no drawing ${word}`);
      const name = subject === '' ? word : `${word}-${subject}`;
      return { path: `samples/${sample}/drawings/${name}.svg`, text: svgFile(kind.draw(plan, subject, USUAL_OPTIONS)) };
    });
  });
}
