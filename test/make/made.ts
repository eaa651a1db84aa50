// What an output makes of a site, and where it is put for another program to read.
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Made, MadeFile } from '../../server/src/make/output.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

const samples = fileURLToPath(new URL('../../samples/', import.meta.url));

/** The texts of a sample's files by name. */
export function sampleTexts(name: string): Record<string, string> {
  const files = readdirSync(join(samples, name))
    .filter((file) => file.endsWith('.site.yaml'))
    .sort();
  return Object.fromEntries(files.map((file) => [file, readFileSync(join(samples, name, file), 'utf8')]));
}

export function planOfTexts(texts: Readonly<Record<string, string>>): Plan {
  const folder = new SiteFolder();
  for (const [name, text] of Object.entries(texts)) folder.set(`file:///harrow-lane/${name}`, text);
  return planOf(folder.site());
}

export function planOfText(text: string): Plan {
  return planOfTexts({ 'all.site.yaml': text });
}

/** A site as data; YAML has all of JSON. */
export function planOfData(data: unknown): Plan {
  return planOfText(asYaml(data as Record<string, unknown>));
}

/** A section stands at the beginning of a line, and each of its items in a line of its own. */
function asYaml(sections: Record<string, unknown>): string {
  return Object.entries(sections)
    .map(([section, items]) => {
      const lines = Array.isArray(items)
        ? items.map((item) => `  - ${quoted(item)}`)
        : Object.entries(items as object).map(([name, item]) => `  ${quoted(name)}: ${quoted(item)}`);
      return `${section}:\n${lines.join('\n')}\n`;
    })
    .join('');
}

/** JSON whose strings YAML reads as they are: what it takes for no character is escaped. */
function quoted(value: unknown): string {
  return JSON.stringify(value).replace(
    /[\u007f-\u009f\u2028\u2029\ufeff\ufffe\uffff]/g,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

export function fileOf(made: Made, path: string): string {
  const file = made.files.find((candidate) => candidate.path === path);
  if (file === undefined) throw new Error(`${path} is not among ${made.files.map((each) => each.path).join(', ')}`);
  return file.text;
}

/** Writes the files into a new folder, does something with it, and takes it away. */
export async function inFolder<T>(files: readonly MadeFile[], use: (folder: string) => T | Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-made-'));
  try {
    for (const { path, text, executable } of files) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text, { mode: executable === true ? 0o755 : 0o644 });
    }
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
