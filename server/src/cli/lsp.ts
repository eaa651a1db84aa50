import { join } from 'node:path';
import { Command } from 'commander';
import { runWithCache } from '../machine/compile-cache.ts';

/** The server is a program of its own, beside this one. */
export function lspCommand(): Command {
  return new Command('lsp')
    .description('Serve an editor over the Language Server Protocol.')
    .requiredOption('--stdio', 'over standard input and output')
    .action(() => runWithCache(join(__dirname, 'server.cjs')));
}
