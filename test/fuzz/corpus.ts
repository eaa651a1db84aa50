/** Sites to begin with: the samples, the fixtures and the examples of all rules. */

import { readFileSync, readdirSync } from 'node:fs';
import { ruleFiles } from '../../server/generate/rule-files.ts';
import { readMarks } from '../marks.ts';
import type { Texts } from '../site.ts';

const root = new URL('../../', import.meta.url);

function filesOf(folder: string): Texts {
  const names = readdirSync(new URL(folder, root)).filter((name) => name.endsWith('.site.yaml'));
  return Object.fromEntries(
    names.map((name) => [name, withoutMarks(readFileSync(new URL(`${folder}${name}`, root), 'utf8'))]),
  );
}

function withoutMarks(text: string): string {
  return readMarks(text, false).text;
}

async function examples(): Promise<Texts[]> {
  const texts = (await ruleFiles()).flatMap(({ examples: own }) =>
    own.flatMap(({ bad, good, fixed }) => [bad, good, fixed]),
  );
  return texts.filter((text) => text !== undefined).map((text) => ({ 'example.site.yaml': withoutMarks(text) }));
}

function fixtures(): Texts[] {
  const entries = readdirSync(new URL('test/fixtures/', root), { withFileTypes: true });
  const folders = entries.filter((entry) => entry.isDirectory()).map(({ name }) => filesOf(`test/fixtures/${name}/`));
  return [...Object.entries(filesOf('test/fixtures/')).map(([name, text]) => ({ [name]: text })), ...folders];
}

export const samples: readonly Texts[] = ['samples/harrow-lane/', 'samples/first-draft/'].map(filesOf);

/** The samples occur several times, as they are most like real sites. */
export const corpus: readonly Texts[] = [...samples, ...samples, ...samples, ...fixtures(), ...(await examples())];
