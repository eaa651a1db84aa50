/** The language server as a process: over a channel to its parent, or standard input and output. */

import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { compileBriefly } from '../machine/compile-briefly.ts';
import { serveOnNode, serveOverStreams, serveParent } from './on-node.ts';

compileBriefly();

const end = (status: number): void => process.exit(status);

if (process.argv.includes('--stdio')) serveOverStreams({ input: process.stdin, output: process.stdout, end });
else if (process.argv.includes('--node-ipc')) serveParent(end);
else serveOnNode(createConnection(ProposedFeatures.all));
