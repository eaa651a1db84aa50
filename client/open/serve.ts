// Serves the embedded editor on loopback to its user, with a home of its own, and ends it with all its processes.
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Gate, openGate } from './gate.ts';
import type { EmbeddedEditor } from './install.ts';

const quietSettings = fileURLToPath(new URL('embedded/settings.json', import.meta.url));

export interface ServeOptions {
  /** Opened where the address names no folder. */
  readonly folder?: string;
  /** Folders of extensions to load, beside the editor's own. */
  readonly extensions?: readonly string[];
  /** Packed extensions (.vsix) to install first. */
  readonly packages?: readonly string[];
  readonly environment?: Readonly<Record<string, string>>;
  /** Lets the page that opens the editor drive tests in it: without this a test in the address is ignored. */
  readonly testDriver?: boolean;
}

/** An editor that answers at its address until it is stopped. */
export interface ServedEditor {
  /** `http://127.0.0.1:PORT/?…`, with the secret of this run in it; without that nothing answers. */
  readonly address: Gate['address'];
  /** Fulfilled once the editor has ended, for any reason. */
  readonly ended: Promise<void>;
  /** The output of the editor so far, for messages about failures. */
  readonly log: () => string;
  /** Ends the editor with every process that it started, and removes its temporary home. */
  readonly stop: () => Promise<void>;
}

/**
 * Serves the editor on a free port of 127.0.0.1, and returns when it answers. The editor itself has no log-in:
 * it listens on a socket in a folder that only its user may enter, behind `gate.ts`.
 * Settings, extensions and state are in a temporary home, so none of the user's own are read or changed.
 *
 * @throws Error with the editor's own words where it does not answer within a minute
 */
export async function serveEditor(editor: EmbeddedEditor, options: ServeOptions = {}): Promise<ServedEditor> {
  const home = await mkdtemp(join(tmpdir(), 'plumbline-editor-'));
  const data = join(home, 'data');
  const extensions = join(home, 'extensions');
  await mkdir(join(data, 'User'), { recursive: true });
  await mkdir(extensions);
  await cp(quietSettings, join(data, 'User', 'settings.json'));
  await writeFile(join(home, 'config.yaml'), '');
  for (const folder of options.extensions ?? []) await symlink(folder, join(extensions, basename(folder)), 'dir');

  const socket = join(home, 'socket');
  let gate: Gate | undefined;
  const where = ['--user-data-dir', data, '--extensions-dir', extensions, '--config', join(home, 'config.yaml')];
  const started: ChildProcess[] = [];
  let log = '';
  const run = (words: readonly string[]): ChildProcess => {
    const child = spawn(editor.node, [editor.program, ...where, ...words], {
      cwd: home,
      detached: true, // a process group of its own, to end as one
      env: { ...ownEnvironment(), HOME: home, EXTENSIONS_GALLERY: '{"serviceUrl":""}', ...options.environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (data: Buffer) => {
        log += data.toString();
      });
    started.push(child);
    return child;
  };
  const stop = async (): Promise<void> => {
    gate?.close();
    await Promise.all(started.map(endGroup));
    await rm(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };

  try {
    for (const packed of options.packages ?? []) {
      const code = await exit(run(['--install-extension', packed, '--force']));
      if (code !== 0) throw new Error(`${packed} could not be installed:\n${log}`);
    }
    const server = run([
      '--auth',
      'none',
      '--socket',
      socket,
      '--socket-mode',
      '600',
      '--disable-proxy', // else a page of any port of this machine would be one of the editor
      '--disable-telemetry',
      '--disable-update-check',
      '--disable-workspace-trust',
      '--disable-getting-started-override',
      '--ignore-last-opened',
      ...(options.testDriver ? ['--vscode-option', 'enable-smoke-test-driver'] : []),
      ...(options.folder ? [options.folder] : []),
    ]);
    const ended = exit(server).then(() => undefined);
    await Promise.race([answers(socket, '/healthz'), ended]);
    if (server.exitCode !== null) throw new Error(`the editor ended at its start:\n${log}`);
    gate = await openGate(socket);
    return { address: gate.address, ended, log: () => log, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

/** The environment without variables by which the editor would believe that it runs inside another one. */
function ownEnvironment(): NodeJS.ProcessEnv {
  const inherited = Object.entries(process.env).filter(([name]) => !/^(VSCODE_|ELECTRON_|NODE_OPTIONS$)/.test(name));
  return Object.fromEntries(inherited);
}

async function answers(socketPath: string, path: string): Promise<void> {
  const until = Date.now() + 60_000;
  for (;;) {
    const ok = await new Promise<boolean>((resolve) => {
      get({ socketPath, path }, (response) => {
        response.resume();
        resolve(response.statusCode === 200);
      }).on('error', () => resolve(false));
    });
    if (ok) return;
    if (Date.now() > until) throw new Error('the editor does not answer');
    await pause(100);
  }
}

function exit(child: ChildProcess): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve(child.exitCode);
  return new Promise((resolve) => child.once('exit', resolve).once('error', () => resolve(null)));
}

/** Ends a child and its process group: by SIGTERM, then by SIGKILL. */
async function endGroup(child: ChildProcess): Promise<void> {
  if (child.pid === undefined) return;
  for (const signal of ['SIGTERM', 'SIGKILL'] as const) {
    if (!signalGroup(child.pid, signal)) return;
    for (let waited = 0; waited < 3000 && signalGroup(child.pid, 0); waited += 50) await pause(50);
  }
}

/** Sends a signal to the group; 0 only tests. @returns whether the group exists */
function signalGroup(group: number, signal: NodeJS.Signals | 0): boolean {
  try {
    process.kill(-group, signal);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ESRCH') return false;
    throw error;
  }
}
