/** The language server on Node: over a pipe to its parent, or over standard input and output. */

import { ProposedFeatures, createConnection } from 'vscode-languageserver/node';
import { diskFiles } from './disk.ts';
import { serve } from './server.ts';

serve(createConnection(ProposedFeatures.all), diskFiles);
