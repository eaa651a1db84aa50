/** A client of the language server, as an editor is one. */

import type { ChildProcess } from 'node:child_process';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionRequest,
  ConfigurationRequest,
  type Diagnostic,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  FileChangeType,
  type Hover,
  HoverRequest,
  InitializeRequest,
  type InitializeResult,
  InitializedNotification,
  type Position,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type Range,
  type ProtocolConnection,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
  type WorkspaceFolder,
  createProtocolConnection,
} from 'vscode-languageserver-protocol/node';
import { type Host, inThisProcess, spawned } from './host.ts';

/** A client's capabilities, and its options at the start. */
export interface Able {
  readonly capabilities?: ClientCapabilities;
  readonly initializationOptions?: unknown;
  readonly settings?: unknown;
  /** Paths of the folders of the workspace. */
  readonly workspace?: readonly string[];
  /** Addresses of folders of the workspace that are on no disk. */
  readonly workspaceUris?: readonly string[];
  /** Answers requests that come at the start. */
  readonly answers?: (connection: ProtocolConnection) => void;
}

export class Client {
  readonly connection: ProtocolConnection;
  initialized: InitializeResult | undefined;
  /** The answer to the server's request for settings. */
  settings: unknown;
  /** Refreshes that the server has asked for. */
  readonly refreshed: string[] = [];
  private readonly published = new Map<string, PublishDiagnosticsParams>();
  /** Files whose diagnostics are older than an edit, for a server that sends no versions. */
  private readonly outdated = new Set<string>();
  private readonly versions = new Map<string, number>();
  private waiting: (() => void)[] = [];
  private readonly host: Host;

  private constructor(host: Host) {
    this.host = host;
    this.connection = createProtocolConnection(
      new StreamMessageReader(host.output),
      new StreamMessageWriter(host.input),
    );
    this.connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.published.set(params.uri, params);
      this.outdated.delete(params.uri);
      for (const wake of this.waiting.splice(0)) wake();
    });
    this.connection.listen();
  }

  /** Of a server in a process of its own. */
  static start(
    command: readonly string[],
    able: Able = {},
    environment: Readonly<Record<string, string>> = {},
  ): Promise<Client> {
    return Client.of(spawned(command, environment), able);
  }

  /** Of a server in this process, for tests of what it answers. */
  static async startHere(able: Able = {}): Promise<Client> {
    return Client.of(await inThisProcess(), able);
  }

  private static async of(
    host: Host,
    { capabilities = {}, initializationOptions, settings, workspace = [], workspaceUris = [], answers }: Able,
  ): Promise<Client> {
    const client = new Client(host);
    answers?.(client.connection);
    const folders = [...workspace.map(workspaceFolder), ...workspaceUris.map((uri) => ({ uri, name: uri }))];
    client.settings = settings;
    client.connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(() => client.settings ?? null));
    client.connection.onRequest(RegistrationRequest.type, () => undefined);
    client.connection.onRequest('workspace/inlayHint/refresh', () => client.refreshed.push('inlay hints'));
    client.connection.onRequest('workspace/codeLens/refresh', () => client.refreshed.push('code lenses'));
    client.initialized = await client.connection.sendRequest(InitializeRequest.type, {
      // Else a server in this process would watch it for as long as it runs.
      processId: host.process === undefined ? null : process.pid,
      rootUri: null,
      ...(folders.length > 0 && { workspaceFolders: folders }),
      capabilities: {
        ...capabilities,
        ...(folders.length > 0 && { workspace: { ...capabilities.workspace, workspaceFolders: true } }),
        textDocument: {
          publishDiagnostics: { relatedInformation: true, versionSupport: true },
          ...capabilities.textDocument,
        },
      },
      initializationOptions,
    });
    await client.connection.sendNotification(InitializedNotification.type, {});
    return client;
  }

  get process(): ChildProcess {
    if (this.host.process === undefined) throw new Error('the server has no process of its own');
    return this.host.process;
  }

  async open(path: string, text: string): Promise<string> {
    const uri = pathToFileURL(path).href;
    await this.openUri(uri, text);
    return uri;
  }

  async openUri(uri: string, text: string): Promise<void> {
    this.versions.set(uri, 1);
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri, languageId: 'yaml', version: 1, text },
    });
  }

  /** Replaces a range of an open document, or all of it; returns its new version. */
  async change(uri: string, text: string, range?: Range): Promise<number> {
    const version = (this.versions.get(uri) ?? 0) + 1;
    this.versions.set(uri, version);
    // Of a server that does not say what version its diagnostics are of, the next ones count.
    if (this.published.get(uri)?.version === undefined) this.outdated.add(uri);
    await this.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version },
      contentChanges: [range === undefined ? { text } : { range, text }],
    });
    return version;
  }

  async close(uri: string): Promise<void> {
    await this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  async changedOnDisk(path: string, type: FileChangeType = FileChangeType.Changed): Promise<void> {
    await this.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
      changes: [{ uri: pathToFileURL(path).href, type }],
    });
  }

  /** The diagnostics of a file once they satisfy `enough`, by default those of the newest version. */
  async diagnostics(
    uri: string,
    enough?: (found: readonly Diagnostic[]) => boolean,
    patience = 120_000,
  ): Promise<Diagnostic[]> {
    const deadline = Date.now() + patience;
    for (;;) {
      const params = this.published.get(uri);
      const current =
        params !== undefined &&
        (params.version === undefined ? !this.outdated.has(uri) : params.version === this.versions.get(uri));
      if (current && (enough === undefined || enough(params.diagnostics))) return params.diagnostics;
      if (Date.now() > deadline)
        throw new Error(`no such diagnostics of ${uri}; last: ${JSON.stringify(params, null, 1)}`);
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, 200);
        this.waiting.push(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    }
  }

  /**
   * Waits until the shown diagnostics of a file satisfy `enough`, for any version; a file never published has none.
   */
  async becomes(uri: string, enough: (found: readonly Diagnostic[]) => boolean, patience = 120_000): Promise<void> {
    const deadline = Date.now() + patience;
    while (!enough(this.shown(uri) ?? [])) {
      if (Date.now() > deadline) throw new Error(`no such diagnostics of ${uri}`);
      await new Promise<void>((resolve) => {
        setTimeout(resolve, 20);
      });
    }
  }

  /** The shown diagnostics of a file; `undefined` where none were ever published. */
  shown(uri: string): readonly Diagnostic[] | undefined {
    return this.published.get(uri)?.diagnostics;
  }

  async hover(uri: string, position: Position): Promise<string | undefined> {
    const hover: Hover | null = await this.connection.sendRequest(HoverRequest.type, {
      textDocument: { uri },
      position,
    });
    return hover !== null && typeof hover.contents === 'object' && 'value' in hover.contents
      ? hover.contents.value
      : undefined;
  }

  async codeActions(uri: string, diagnostic: Diagnostic): Promise<CodeAction[]> {
    const found = await this.connection.sendRequest(CodeActionRequest.type, {
      textDocument: { uri },
      range: diagnostic.range,
      context: { diagnostics: [diagnostic] },
    });
    return (found ?? []).filter((action): action is CodeAction => 'edit' in action);
  }

  /** Ends the server by the protocol; returns its exit status. */
  async stop(): Promise<number | null> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
    const code = await this.host.ended;
    this.connection.dispose();
    return code;
  }
}

export function workspaceFolder(path: string): WorkspaceFolder {
  return { uri: pathToFileURL(path).href, name: basename(path) };
}

/** Where `word` stands in a text; a word that is marked `|` inside says where in it. */
export function positionOf(text: string, word: string): Position {
  const offset = text.indexOf(word.replace('|', ''));
  if (offset === -1) throw new Error(`${word} is not in the text`);
  const before = text.slice(0, offset + Math.max(0, word.indexOf('|')));
  const lines = before.split('\n');
  return { line: lines.length - 1, character: lines[lines.length - 1]?.length ?? 0 };
}

export function applied(text: string, edits: readonly TextEdit[]): string {
  const lines = text.split('\n');
  const offset = ({ line, character }: Position): number =>
    lines.slice(0, line).reduce((sum, own) => sum + own.length + 1, 0) + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (result, edit) => result.slice(0, offset(edit.range.start)) + edit.newText + result.slice(offset(edit.range.end)),
      text,
    );
}

export { FileChangeType };
