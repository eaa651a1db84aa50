/** The language server on Node: over a pipe to its parent, or over standard input and output. */

import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { rulePagesFolder } from '../machine/rule-pages.ts';
import { clientFiles } from './client-files.ts';
import { diskFiles, uriOf } from '../machine/disk.ts';
import { serve } from './server.ts';
import type { FileSource } from './sites.ts';

const connection = createConnection(ProposedFeatures.all);
const pages = rulePagesFolder();
serve(connection, diskAndClient(clientFiles(connection)), {
  rulePages: pages === undefined ? undefined : uriOf(pages),
  // Run through only when somebody asks for an audit.
  audits: async () => (await import('../machine/audits.ts')).audits,
});

/** Of a virtual workspace only the client can reach the files. */
function diskAndClient(client: FileSource): FileSource {
  const sourceOf = (uri: string): FileSource => (uri.startsWith('file:') ? diskFiles : client);
  return { list: (folder) => sourceOf(folder).list(folder), read: (uri) => sourceOf(uri).read(uri) };
}
