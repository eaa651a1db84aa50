/** The documents that a client has open, and the files beside them on disk; whatever changes has its site checked. */

import { FileChangeType } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Publisher } from './publisher.ts';
import type { Session } from './session.ts';
import type { OpenSite } from './sites.ts';

/** The newest text of each open document, by address. */
export type Documents = Map<string, TextDocument>;

interface Followers {
  readonly publisher: Publisher;
  readonly checkSoon: (site: OpenSite) => void;
  /** A site of which no file is open any more. */
  readonly forget: (site: OpenSite) => void;
}

export function followDocuments(documents: Documents, session: Session, followers: Followers): void {
  const { connection, sites, addresses } = session;
  const { publisher, checkSoon, forget } = followers;

  connection.onDidOpenTextDocument(({ textDocument: { uri: written, languageId, version, text } }) => {
    const uri = addresses.take(written);
    if (!uri.endsWith('.site.yaml')) return;
    documents.set(uri, TextDocument.create(uri, languageId, version, text));
    const site = sites.opened(uri, text);
    void site.loaded.then(
      () => checkSoon(site),
      (error: unknown) => connection.console.error(String(error)),
    );
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri: written, version }, contentChanges }) => {
    const uri = addresses.take(written);
    const document = documents.get(uri);
    const site = sites.of(uri);
    if (document === undefined || site === undefined) return;
    TextDocument.update(document, contentChanges, version);
    site.change(uri, () => document.getText());
    checkSoon(site);
  });

  connection.onDidCloseTextDocument(async ({ textDocument }) => {
    const uri = addresses.take(textDocument.uri);
    documents.delete(uri);
    session.closed(uri);
    const closed = await sites.closed(uri);
    if (closed === undefined) return;
    if (closed.gone) {
      forget(closed.site);
      for (const file of closed.site.texts.files) publisher.clear(file.uri);
    } else {
      if (!closed.site.has(uri)) publisher.clear(uri);
      checkSoon(closed.site);
    }
  });

  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri: written, type } of changes) {
      const uri = addresses.take(written);
      const site = await sites.changedOnDisk(uri, type === FileChangeType.Deleted);
      if (site === undefined) continue;
      if (!site.has(uri)) publisher.clear(uri);
      checkSoon(site);
    }
  });
}
