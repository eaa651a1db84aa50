// The extension in a browser alone: the server is a web worker.
import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import type { MessageTransports } from 'vscode-languageclient/browser';
import { clientParts, run } from './client.ts';
import { writeByEditor } from './write-whole.ts';

/** The part of the browser's API that is used here. */
declare const Worker: new (address: string) => { terminate(): void };

/** Writes to its channel where the stock client would pop up a message. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

export function activate(context: vscode.ExtensionContext): void {
  const { log, options } = clientParts(context);
  const program = vscode.Uri.joinPath(context.extensionUri, 'dist', 'browser', 'server.js').toString(true);
  let worker: InstanceType<typeof Worker> | undefined;
  const end = (): void => worker?.terminate();
  const server = (): Promise<MessageTransports> => {
    end(); // a worker does not end by itself when its server is restarted
    worker = new Worker(program);
    // Not the worker itself: the extension host makes it with its own constructor, which the client does not know.
    return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
  };
  context.subscriptions.push({ dispose: end });
  run(context, new QuietClient('plumbline', 'Plumbline', server, options), log, writeByEditor);
}
