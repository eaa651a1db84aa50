/** The language server as a process: over a pipe to its parent, or over standard input and output. */

import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { serveOnNode, serveOverStreams } from './on-node.ts';

if (process.argv.includes('--stdio'))
  serveOverStreams({ input: process.stdin, output: process.stdout, end: (status) => process.exit(status) });
else serveOnNode(createConnection(ProposedFeatures.all));
