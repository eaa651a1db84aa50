/**
 * Bundles the files of tests: transpiled once, each file in a bundle of its own and shared code in others. Loading them
 * takes a third of the time, and no group or worker transpiles anything again.
 */

import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Plugin, build } from 'esbuild';

/** Code that asks for its own path gets its path in the sources. */
const inPlace: Plugin = {
  name: 'in-place',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/](?:client|server|test)[\\/].*\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      const contents = text
        .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
        .replaceAll('import.meta.dirname', JSON.stringify(dirname(path)));
      return { contents, loader: 'ts' };
    });
  },
};

/** Bundles files of the repository into a folder; their paths there, by their paths in the sources. */
export async function bundled(files: readonly string[], folder: string): Promise<ReadonlyMap<string, string>> {
  await build({
    entryPoints: files.map((file) => resolve(file)),
    outdir: folder,
    outbase: resolve('.'),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    packages: 'external',
    format: 'esm',
    platform: 'node',
    target: 'node20',
    sourcemap: true,
    logLevel: 'warning',
    plugins: [inPlace],
  });
  return new Map(files.map((file) => [file, join(folder, file.replace(/\.ts$/, '.mjs'))]));
}
