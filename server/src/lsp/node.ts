/** The language server on Node: over a pipe to its parent, or over standard input and output. */

import { type Connection, ProposedFeatures, StreamMessageWriter, createConnection } from 'vscode-languageserver/node';
import { rulePagesFolder } from '../machine/rule-pages.ts';
import { clientFiles } from './client-files.ts';
import { FramedReader } from './framed-reader.ts';
import { Lifecycle } from './lifecycle.ts';
import { diskFiles, uriOf } from '../machine/disk.ts';
import { serve } from './server.ts';
import type { FileSource } from './sites.ts';

const connection = process.argv.includes('--stdio') ? overStandardInput() : createConnection(ProposedFeatures.all);
const pages = rulePagesFolder();
serve(connection, diskAndClient(clientFiles(connection)), {
  rulePages: pages === undefined ? undefined : uriOf(pages),
  // Run through only when somebody asks for an audit.
  audits: async () => (await import('../machine/audits.ts')).audits,
});

/** Whoever starts it may be any program. */
function overStandardInput(): Connection {
  const writer = new StreamMessageWriter(process.stdout);
  const lifecycle = new Lifecycle(writer);
  const reader = new FramedReader(process.stdin, (why) => lifecycle.refuseText(why));
  process.stdin.on('close', () => process.exit(lifecycle.isShutDown ? 0 : 1));
  return createConnection(ProposedFeatures.all, lifecycle.inOrder(reader), writer);
}

/** Of a virtual workspace only the client can reach the files. */
function diskAndClient(client: FileSource): FileSource {
  const sourceOf = (uri: string): FileSource => (uri.startsWith('file:') ? diskFiles : client);
  return { list: (folder) => sourceOf(folder).list(folder), read: (uri) => sourceOf(uri).read(uri) };
}
