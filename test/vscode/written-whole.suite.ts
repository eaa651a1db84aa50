// Files that the extension writes through the editor alone, in a file system that is on no disk and that can fail at
// each step: all are written, or none. Runs in the extension host, and in a browser alone.
import * as vscode from 'vscode';
import { print } from '../../client/src/pages/print.ts';
import { NotWritten, writeByEditor } from '../../client/src/write-whole.ts';

/** Files in memory; renaming some of them fails. */
class MemoryDisk implements vscode.FileSystemProvider {
  readonly files = new Map<string, string>();
  /** Ends of paths that nothing can be renamed to, or that cannot be written. */
  readonly refused = new Set<string>();
  /** Nothing more can be written than the first character of a text. */
  isFull = false;
  readonly folders = new Set(['/']);
  readonly onDidChangeFile = new vscode.EventEmitter<vscode.FileChangeEvent[]>().event;

  stat({ path }: vscode.Uri): vscode.FileStat {
    const text = this.files.get(path);
    if (text === undefined && !this.folders.has(path)) throw vscode.FileSystemError.FileNotFound(path);
    const type = text === undefined ? vscode.FileType.Directory : vscode.FileType.File;
    return { type, ctime: 0, mtime: 0, size: text?.length ?? 0 };
  }
  readFile(uri: vscode.Uri): Uint8Array {
    this.stat(uri);
    return new TextEncoder().encode(this.files.get(uri.path) ?? '');
  }
  writeFile({ path }: vscode.Uri, content: Uint8Array): void {
    this.refuse(path);
    const text = new TextDecoder().decode(content);
    this.files.set(path, this.isFull ? text.slice(0, 1) : text);
    if (this.isFull) throw vscode.FileSystemError.Unavailable('no space is left');
  }
  rename(from: vscode.Uri, to: vscode.Uri): void {
    this.refuse(to.path);
    this.files.set(to.path, this.files.get(from.path) ?? '');
    this.files.delete(from.path);
  }
  delete({ path }: vscode.Uri): void {
    if (!this.files.delete(path)) throw vscode.FileSystemError.FileNotFound(path);
  }
  createDirectory({ path }: vscode.Uri): void {
    this.folders.add(path);
  }
  readDirectory(): [string, vscode.FileType][] {
    return [];
  }
  watch(): vscode.Disposable {
    return new vscode.Disposable(() => undefined);
  }
  private refuse(path: string): void {
    for (const end of this.refused) if (path.endsWith(end)) throw vscode.FileSystemError.NoPermissions(path);
  }
}

function equal(actual: unknown, expected: unknown): void {
  const [is, should] = [actual, expected].map((value) => JSON.stringify(value));
  if (is !== should) throw new Error(`it is ${is} and should be ${should}`);
}

describe('what is written through the editor', () => {
  const scheme = 'plumbline-memory';
  let disk: MemoryDisk;
  let registered: vscode.Disposable;

  beforeEach(() => {
    disk = new MemoryDisk();
    registered = vscode.workspace.registerFileSystemProvider(scheme, disk);
  });
  afterEach(() => void registered.dispose());

  const write = (texts: Readonly<Record<string, string>>): Promise<void> =>
    writeByEditor(Object.entries(texts).map(([path, text]) => ({ uri: vscode.Uri.from({ scheme, path }), text })));

  const isRefused = async (texts: Readonly<Record<string, string>>): Promise<void> => {
    const error = await write(texts).then(
      () => undefined,
      (reason: unknown) => reason,
    );
    if (!(error instanceof NotWritten)) throw new Error(`it was written: ${String(error)}`);
    equal(error.message.startsWith('Nothing was written: '), true);
  };

  it('is all there, in folders that were not', async () => {
    disk.files.set('/one', 'old');
    await write({ '/one': 'new', '/deep/two': 'new' });
    equal([...disk.files].sort(), [
      ['/deep/two', 'new'],
      ['/one', 'new'],
    ]);
  });

  for (const [what, refused] of [
    ['where one of them cannot be begun', '.new'],
    ['where one of them does not get its name', '/two'],
  ] as const)
    it(`is nothing ${what}`, async () => {
      disk.files.set('/one', 'old');
      disk.refused.add(refused);
      await isRefused({ '/one': 'new', '/other': 'new', '/two': 'new', '/three': 'new' });
      equal([...disk.files], [['/one', 'old']]);
    });

  it('is nothing of a page to print where the disk is full', async () => {
    let saved = '';
    const storage = vscode.Uri.from({ scheme, path: '/storage' });
    const page = {
      panel: { title: 'Report: Harrow Lane' },
      html: '<p>new</p>',
      download: (name: string) => void (saved = name),
    };
    disk.files.set('/storage/print/Report-Harrow-Lane.html', '<p>old</p>');
    disk.isFull = true;
    const error = await print(page, storage, writeByEditor).then(
      () => undefined,
      (reason: unknown) => reason,
    );
    // In a browser, that saves the page.
    if (vscode.env.uiKind === vscode.UIKind.Web) equal(saved, 'Report-Harrow-Lane.html');
    else if (!(error instanceof NotWritten)) throw new Error(`it was printed: ${String(error)}`);
    equal([...disk.files], [['/storage/print/Report-Harrow-Lane.html', '<p>old</p>']]);
  });
});
