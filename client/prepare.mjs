// npm's `prepare`: builds the programs, as the repository does not contain them.
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';

// For a package that is installed from git with --global, as pre-commit does, npm prepares the clone without its
// dependencies. They are fetched here, into the clone.
try {
  createRequire(import.meta.url).resolve('esbuild');
} catch (error) {
  if (error.code !== 'MODULE_NOT_FOUND') throw error;
  const npm = process.env.npm_execpath;
  const words = ['ci', '--ignore-scripts', '--no-audit', '--no-fund'];
  const options = { stdio: 'inherit', env: { ...process.env, npm_config_global: 'false' } };
  if (npm === undefined) execFileSync('npm', words, options);
  else execFileSync(process.execPath, [npm, ...words], options);
}
await import('./build.mjs');
