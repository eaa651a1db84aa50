import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** From the ground up: a layer may import itself and what stands before it. */
const LAYERS = [
  'memo.ts',
  'standards',
  'text',
  'site',
  'network',
  'storage',
  'recordings',
  'plan.ts',
  'report',
  'rules',
  'make',
  'footage',
  'audit',
  'features',
  'machine',
  'lsp',
  'cli',
];

/** The layers that meet the machine; all below them runs in a browser worker too. */
const HOSTS = ['machine', 'lsp', 'cli'];

const source = join(dirname(fileURLToPath(import.meta.url)), '..', 'server', 'src');
const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter(
  (path) => path.endsWith('.ts') && !path.endsWith('.d.ts'),
);

function importsOf(path: string): string[] {
  const text = readFileSync(join(source, path), 'utf8');
  return [...text.matchAll(/^(?:import|export)\b[^;]*?\bfrom '([^']+)'/gms)].map((match) => match[1] ?? '');
}

function layerOf(path: string): string {
  return path.split(/[\\/]/)[0] ?? '';
}

describe('layers', () => {
  it('every file is in one of them', () => {
    assert.deepEqual(
      [...new Set(files.map(layerOf))].filter((layer) => !LAYERS.includes(layer)),
      [],
    );
  });

  for (const path of files) {
    it(`${path} imports downwards only`, () => {
      const own = LAYERS.indexOf(layerOf(path));
      for (const specifier of importsOf(path).filter((candidate) => candidate.startsWith('.'))) {
        const target = posix.normalize(posix.join(posix.dirname(path.replaceAll('\\', '/')), specifier));
        if (target.startsWith('..')) continue; // A schema, or the manifest: data, not code.
        const layer = LAYERS.indexOf(layerOf(target));
        assert.ok(layer !== -1 && layer <= own, `${path} imports ${relative('.', target)}, which stands above it`);
      }
    });
  }

  it('nothing below machine, lsp and cli knows Node or the protocol', () => {
    for (const path of files.filter((candidate) => !HOSTS.includes(layerOf(candidate)))) {
      for (const specifier of importsOf(path)) {
        assert.ok(!specifier.startsWith('node:') && !specifier.startsWith('vscode'), `${path} imports ${specifier}`);
      }
    }
  });
});
