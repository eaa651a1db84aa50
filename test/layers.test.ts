import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { posix } from 'node:path';

/** Any layer may import these, and each of them those before it. */
const GROUND: readonly string[] = ['memo.ts', 'grouped.ts', 'none.ts', 'standards', 'text'];

/** The imports of each layer, exactly: nothing is allowed that is not needed. */
const IMPORTS: Readonly<Record<string, readonly string[]>> = {
  'site': [],
  'network': ['site'],
  'storage': ['site', 'network'],
  'television': ['site'],
  'racks': ['site'],
  'supply': ['site', 'network'],
  'purchases': ['site', 'network'],
  'plan.ts': ['site', 'network', 'storage', 'television', 'racks', 'supply'],
  'report': ['site', 'network', 'storage', 'television', 'racks', 'plan.ts', 'supply'],
  'draw': [
    'site',
    'network',
    'storage',
    'television',
    'racks',
    'supply',
    'plan.ts',
    'report',
    'audit',
    'footage',
    'failure',
  ],
  'recordings': ['site'],
  'lint': ['site', 'network', 'plan.ts'],
  'rules': ['site', 'network', 'storage', 'television', 'racks', 'supply', 'recordings', 'lint', 'make', 'failure'],
  'make': ['site', 'network', 'television', 'plan.ts', 'report', 'recordings', 'purchases'],
  'footage': ['site', 'recordings'],
  'announce': [],
  'audit': ['site', 'network', 'storage', 'plan.ts', 'report', 'recordings', 'lint', 'make', 'footage'],
  'check.ts': ['site', 'lint', 'rules', 'audit'],
  'compare': ['site', 'network', 'purchases', 'plan.ts', 'lint', 'report'],
  'what-if': ['site', 'plan.ts', 'lint', 'check.ts'],
  'failure': ['site', 'network', 'plan.ts'],
  'headroom': ['site', 'network', 'plan.ts', 'what-if'],
  'outlook': ['site', 'plan.ts', 'report', 'headroom', 'failure'],
  'features': ['site', 'network', 'plan.ts', 'report', 'lint', 'check.ts', 'headroom', 'supply', 'failure'],
  'machine': ['site', 'plan.ts', 'lint', 'audit', 'recordings', 'footage', 'announce'],
  'lsp': [
    'site',
    'plan.ts',
    'report',
    'draw',
    'lint',
    'make',
    'footage',
    'audit',
    'check.ts',
    'compare',
    'features',
    'outlook',
    'machine',
  ],
  'cli': [
    'site',
    'plan.ts',
    'report',
    'draw',
    'lint',
    'make',
    'footage',
    'announce',
    'audit',
    'check.ts',
    'compare',
    'headroom',
    'outlook',
    'machine',
    'failure',
  ],
};

/** The layers that use the machine; all others also run in a browser's worker. */
const HOSTS = ['machine', 'lsp', 'cli'];

const source = new URL('../server/src/', import.meta.url);
const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'));

function specifiersIn(path: string): string[] {
  const text = readFileSync(new URL(path, source), 'utf8');
  const statements = text.matchAll(/^(?:import|export)\b[^;]*?\bfrom '([^']+)'/gms);
  const calls = text.matchAll(/\bimport\('([^']+)'\)/g);
  return [...statements, ...calls].map((match) => match[1] ?? '');
}

/** The code files that a file imports; schemas and the manifest are data. */
function importsOf(path: string): string[] {
  return specifiersIn(path)
    .filter((specifier) => specifier.startsWith('.'))
    .map((specifier) => posix.normalize(posix.join(posix.dirname(path), specifier)))
    .filter((target) => !target.startsWith('..'));
}

function layerOf(path: string): string {
  return path.split('/')[0] ?? '';
}

const imports = new Map(files.map((path) => [path, importsOf(path)]));

/** Files that import each other in a circle that `path` leads into, given those on the way to it; empty without one. */
function circleFrom(path: string, way: readonly string[], clear: Set<string>): readonly string[] {
  if (way.includes(path)) return [...way.slice(way.indexOf(path)), path];
  if (clear.has(path)) return [];
  for (const target of imports.get(path) ?? []) {
    const circle = circleFrom(target, [...way, path], clear);
    if (circle.length > 0) return circle;
  }
  clear.add(path);
  return [];
}

describe('layers', () => {
  for (const layer of new Set(files.map(layerOf))) {
    it(`${layer} imports what the table says`, () => {
      const targets = files.filter((path) => layerOf(path) === layer).flatMap((path) => imports.get(path) ?? []);
      const others = new Set(targets.map(layerOf).filter((other) => other !== layer));
      const ground = GROUND.includes(layer) ? GROUND.slice(0, GROUND.indexOf(layer)) : GROUND;
      assert.deepEqual(
        [...others].filter((other) => !ground.includes(other)).sort(),
        [...(IMPORTS[layer] ?? [])].sort(),
      );
    });
  }

  it('no files import each other in a circle', () => {
    const clear = new Set<string>();
    for (const path of files) assert.deepEqual(circleFrom(path, [], clear), []);
  });

  it('no rule imports another', () => {
    for (const path of files.filter((candidate) => /^rules\/.*\//.test(candidate)))
      for (const target of imports.get(path) ?? [])
        assert.notEqual(layerOf(target), 'rules', `${path} imports ${target}`);
  });

  it('one file prints, and three write', () => {
    const withAny = (words: RegExp): string[] =>
      files.filter((path) => words.test(readFileSync(new URL(path, source), 'utf8'))).sort();
    assert.deepEqual(withAny(/process\.std(out|err)\.write|console\.(log|info|warn)\(/), ['cli/print.ts']);
    assert.deepEqual(withAny(/\b(writeFile|writeFileSync|appendFile\w*|createWriteStream|renameSync)\(/), [
      'machine/footage-tools.ts',
      'machine/put-in-place.ts',
      'machine/write-files.ts',
    ]);
  });

  it('only hosts know Node or the protocol', () => {
    for (const path of files.filter((candidate) => !HOSTS.includes(layerOf(candidate)))) {
      for (const specifier of specifiersIn(path)) {
        assert.ok(!specifier.startsWith('node:') && !specifier.startsWith('vscode'), `${path} imports ${specifier}`);
      }
    }
  });
});
