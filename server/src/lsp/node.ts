/** The language server on Node: over a pipe to its parent, or over standard input and output. */

import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { clientFiles } from './client-files.ts';
import { diskFiles, uriOf } from './disk.ts';
import { serve } from './server.ts';
import type { FileSource } from './sites.ts';

const connection = createConnection(ProposedFeatures.all);
serve(connection, diskAndClient(clientFiles(connection)), {
  rulePages: rulePages(),
  // Run through only when somebody asks for an audit.
  audits: async () => (await import('../machine/audits.ts')).audits,
});

/** Of a virtual workspace only the client can reach the files. */
function diskAndClient(client: FileSource): FileSource {
  const sourceOf = (uri: string): FileSource => (uri.startsWith('file:') ? diskFiles : client);
  return { list: (folder) => sourceOf(folder).list(folder), read: (uri) => sourceOf(uri).read(uri) };
}

/** The pages of the rules that lie beside the program; a client may name others. */
function rulePages(): string | undefined {
  const program = process.argv[1];
  if (program === undefined || !existsSync(program)) return undefined;
  const folder = join(dirname(realpathSync(program)), '..', 'schemas', 'rules');
  return existsSync(folder) ? uriOf(folder) : undefined;
}
