/** The language server in a web worker, which has no disk: all files come from the client. */

import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { clientFiles } from './client-files.ts';
import { serve } from './server.ts';

const connection = createConnection(new BrowserMessageReader(globalThis), new BrowserMessageWriter(globalThis));
serve(connection, clientFiles(connection));
