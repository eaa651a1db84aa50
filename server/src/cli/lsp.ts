import { Command } from 'commander';

export function lspCommand(): Command {
  return new Command('lsp')
    .description('Serve an editor over the Language Server Protocol.')
    .requiredOption('--stdio', 'over standard input and output')
    .action(async () => {
      await import('../lsp/node.ts');
    });
}
