/** Follows the open documents and the files beside them on disk, and has a site checked when one of them changes. */

import { FileChangeType, type TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { SUFFIX } from '../site/folder.ts';
import type { Session } from './session.ts';
import { changeBetween } from '../text/cut.ts';
import { nextTurn } from './check-scheduler.ts';
import { oneForm } from './addresses.ts';
import { cursorMoved } from './cursor.ts';
import type { OpenSite } from './sites.ts';
import type { Typing } from './typing.ts';
import { isChanged, isClosed, isDeleted, isOpened, isPlaced, isRenamed, isWatched } from './sound-params.ts';

/** The newest text of each open document, by address. */
export type Documents = Map<string, TextDocument>;

export interface Followed {
  /** Has a site checked that has changed. */
  readonly checkSoon: (site: OpenSite) => void;
  readonly typing: Typing;
  /** Has the sites in and below a folder of the workspace checked. */
  readonly look: (folder: string) => void;
}

export function followDocuments(documents: Documents, session: Session, { checkSoon, typing, look }: Followed): void {
  const { connection, sites, addresses } = session;

  /** Calls `take` with parameters that are sound, and logs others. */
  const sound =
    <P>(isSound: (params: P) => boolean, take: (params: P) => void | Promise<void>) =>
    (params: P): void | Promise<void> => {
      if (params instanceof Object && isSound(params)) return take(params);
      connection.console.error('A notification is passed over: its parameters are not as the protocol has them.');
      return undefined;
    };

  connection.onDidOpenTextDocument(
    sound(isOpened, ({ textDocument: { uri: written, languageId, version, text } }) => {
      const uri = addresses.take(written);
      if (!uri.endsWith(SUFFIX)) return;
      documents.set(uri, TextDocument.create(uri, languageId, version, text));
      const site = sites.opened(uri, text);
      void site.loaded.then(
        () => checkSoon(site),
        (error: unknown) => connection.console.error(String(error)),
      );
    }),
  );

  connection.onDidChangeTextDocument(
    sound(isChanged, ({ textDocument: { uri: written, version }, contentChanges }) => {
      const uri = addresses.take(written);
      const document = documents.get(uri);
      const site = sites.of(uri);
      if (document === undefined || site === undefined) return;
      const before = document.getText();
      TextDocument.update(document, contentChanges, version);
      typing.edited(site, { uri, offset: endOf(contentChanges, document, before) });
      site.change(uri, () => document.getText());
      checkSoon(site);
    }),
  );

  connection.onNotification(
    cursorMoved,
    sound(isPlaced, ({ uri: written, position }) => {
      const uri = addresses.take(written);
      const document = documents.get(uri);
      const site = sites.of(uri);
      if (document !== undefined && site !== undefined)
        typing.moved(site, { uri, offset: document.offsetAt(position) });
    }),
  );

  connection.onDidCloseTextDocument(
    sound(isClosed, async ({ textDocument }) => {
      const uri = addresses.take(textDocument.uri);
      documents.delete(uri);
      session.closed(uri);
      const site = sites.of(uri);
      await sites.closed(uri);
      if (site !== undefined) checkSoon(site);
    }),
  );

  /** Takes changes in slices: a checkout may bring a hundred thousand, and the editor is answered meanwhile. */
  const changedOnDisk = async (written: readonly string[]): Promise<void> => {
    const uris: string[] = [];
    for (const [index, uri] of [...new Set(written)].entries()) {
      if (index % SLICE === SLICE - 1) await new Promise<void>((then) => nextTurn(then));
      const own = oneForm(uri);
      if (own !== undefined) uris.push(own);
    }
    await sites.changedOnDisk(uris, checkSoon);
  };
  connection.onDidChangeWatchedFiles(
    sound(isWatched, ({ changes }) => {
      // A deleted path may be that of a folder with sites in it.
      const ofSites = changes.filter(({ uri, type }) => type === FileChangeType.Deleted || uri.endsWith(SUFFIX));
      return changedOnDisk(ofSites.map(({ uri }) => uri));
    }),
  );
  connection.workspace.onDidDeleteFiles(sound(isDeleted, ({ files }) => changedOnDisk(files.map(({ uri }) => uri))));
  connection.workspace.onDidRenameFiles(
    sound(isRenamed, async ({ files }) => {
      await changedOnDisk(files.map(({ oldUri }) => oldUri));
      for (const { newUri } of files) if (!newUri.endsWith(SUFFIX)) look(addresses.take(newUri));
    }),
  );
}

/** Addresses that are read before others have a turn. */
const SLICE = 1000;

/** The end of the last change, as an offset in the document before the changes. */
function endOf(changes: readonly TextDocumentContentChangeEvent[], document: TextDocument, before: string): number {
  const last = changes[changes.length - 1];
  if (last === undefined || !('range' in last)) return changeBetween(before, document.getText()).end;
  return document.offsetAt(last.range.start) + last.text.length;
}
