/** The language server with the files of the disk, over any connection to a client. */

import type { Readable, Writable } from 'node:stream';
import {
  type Connection,
  IPCMessageReader,
  IPCMessageWriter,
  ProposedFeatures,
  StreamMessageWriter,
  createConnection,
} from 'vscode-languageserver/node';
import { diskFiles, pathOf, uriOf } from '../machine/disk.ts';
import { rulePagesFolder } from '../machine/rule-pages.ts';
import { clientFiles } from './client-files.ts';
import { FramedReader } from './framed-reader.ts';
import { Lifecycle } from './lifecycle.ts';
import { serve } from './server.ts';
import type { SiteFolder } from '../site/folder.ts';
import type { LastCommit } from './session.ts';
import type { FileSource } from './sites.ts';

/** @param program path of the program that runs, beside which the pages of the rules are packed */
export function serveOnNode(connection: Connection, program = process.argv[1]): void {
  const pages = rulePagesFolder(program);
  serve(connection, diskAndClient(clientFiles(connection)), {
    rulePages: pages === undefined ? undefined : uriOf(pages),
    // Loaded only when an audit is asked for.
    audits: async () => (await import('../machine/audits.ts')).audits,
    lastCommit: lastCommitReader(),
  });
}

/** Reads the last commit of folders on this machine's disk. */
function lastCommitReader(): LastCommit {
  let siteOf: ((folder: string) => SiteFolder) | undefined;
  return async (folder) => {
    if (!folder.startsWith('file:')) return 'The site is on no disk of this machine, where git could look.';
    const [{ lastCommits }, { CannotDo }] = await Promise.all([
      import('../machine/last-commit.ts'),
      import('../machine/cannot-do.ts'),
    ]);
    siteOf ??= lastCommits();
    try {
      return siteOf(pathOf(folder));
    } catch (error) {
      if (error instanceof CannotDo) return error.message;
      throw error;
    }
  };
}

export interface Streams {
  readonly input: Readable;
  readonly output: Writable;
  /** Takes the exit status once the client sends `exit` or goes away. */
  readonly end: (status: number) => void;
}

/** Serves a client that may be any program. */
export function serveOverStreams({ input, output, end }: Streams, program = process.argv[1]): void {
  const writer = new StreamMessageWriter(output);
  const lifecycle = new Lifecycle(writer, end);
  const reader = new FramedReader(input, (why) => lifecycle.refuseText(why));
  input.on('close', () => lifecycle.end());
  // A client that reads no more is gone. Its end comes before the library learns that a message was not written.
  output.on('error', () => lifecycle.end());
  output.on('close', () => lifecycle.end());
  serveOnNode(createConnection(ProposedFeatures.all, lifecycle.inOrder(reader), writer), program);
}

/** Serves the parent of this process, over the channel that Node has between them. */
export function serveParent(end: Streams['end']): void {
  const writer = new IPCMessageWriter(process);
  const lifecycle = new Lifecycle(writer, end);
  process.on('disconnect', () => lifecycle.end());
  serveOnNode(createConnection(ProposedFeatures.all, lifecycle.inOrder(new IPCMessageReader(process)), writer));
}

/** Files from the disk, or from the client in a virtual workspace, which only the client can reach. */
function diskAndClient(client: FileSource): FileSource {
  const sourceOf = (uri: string): FileSource => (uri.startsWith('file:') ? diskFiles : client);
  return {
    list: (folder) => sourceOf(folder).list(folder),
    folders: (folder) => sourceOf(folder).folders(folder),
    read: (uri) => sourceOf(uri).read(uri),
  };
}
