// Bundles the extension, the language server and the command line into dist/,
// and the tests that run inside the editor into dist/test/.
import { readFile, rm, writeFile } from 'node:fs/promises';
import { build, context } from 'esbuild';
import { noticesOf } from './notices.mjs';

const production = process.argv.includes('--production');
const watch = process.argv.includes('--watch');

/**
 * Leaves out the examples of rules, which only tests and pages need. Line numbers stay the same.
 *
 * @type {import('esbuild').Plugin}
 */
const withoutExamples = {
  name: 'without-examples',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]src[\\/]rules[\\/].*\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      const contents = text.replace(/^export const examples\b[^]*?^\];$/m, (lines) => lines.replaceAll(/[^\n]/g, ''));
      return { contents, loader: 'ts' };
    });
  },
};

/** @type {import('esbuild').BuildOptions} */
const node = {
  plugins: [withoutExamples],
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'cjs',
  minify: production,
  sourcemap: !production,
  legalComments: 'none', // these are in dist/NOTICES.txt
  metafile: true,
  logLevel: 'warning',
};

/** A web worker: the extension's host, and the server that it starts. */
const browser = { ...node, platform: 'browser', target: 'es2022' };

const bundles = [
  { ...node, entryPoints: ['client/src/extension.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] },
  { ...node, entryPoints: ['server/src/lsp/start.ts'], outfile: 'dist/server.cjs' },
  { ...node, entryPoints: ['server/src/lsp/node.ts'], outfile: 'dist/programs/server.cjs' },
  {
    ...node,
    entryPoints: ['server/src/cli/start.ts'],
    outfile: 'dist/plumbline.cjs',
    banner: { js: '#!/usr/bin/env node' },
  },
  { ...node, entryPoints: ['server/src/cli/main.ts'], outfile: 'dist/programs/plumbline.cjs' },
  {
    ...browser,
    entryPoints: ['client/src/extension.browser.ts'],
    outfile: 'dist/browser/extension.cjs',
    external: ['vscode'],
  },
  { ...browser, entryPoints: ['server/src/lsp/browser.ts'], outfile: 'dist/browser/server.js', format: 'iife' },
];

// Mocha is left out: it loads the suites by itself.
const tests = {
  ...node,
  entryPoints: [
    'test/vscode/host.ts',
    'test/vscode/audit.suite.ts',
    'test/vscode/activation.suite.ts',
    'test/vscode/made.suite.ts',
    'test/vscode/site.suite.ts',
    'test/vscode/problems.suite.ts',
    'test/vscode/refactorings.suite.ts',
    'test/vscode/walkthrough.suite.ts',
    'test/vscode/written-whole.suite.ts',
    'test/vscode/general-yaml/extension.ts',
  ],
  outdir: 'dist/test',
  outExtension: { '.js': '.cjs' },
  external: ['vscode', 'mocha'],
};

const webTests = {
  ...browser,
  entryPoints: ['test/web/host.ts'],
  outfile: 'dist/test/web/host.cjs',
  format: 'cjs',
  external: ['vscode'],
};

const packed = bundles.length;
if (production)
  await rm('dist', { recursive: true, force: true }); // no old file may go into the package
else bundles.push(tests, webTests);

if (watch) for (const bundle of bundles) await (await context(bundle)).watch();
else {
  const built = await Promise.all(bundles.map((bundle) => build(bundle)));
  await writeFile('dist/NOTICES.txt', await noticesOf(built.slice(0, packed).map(({ metafile }) => metafile)));
}
