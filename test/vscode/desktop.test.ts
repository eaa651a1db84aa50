// `npm start` where there is a `code` on the PATH. There is no desktop here: a program in its place writes
// down its arguments. Their meaning is from VS Code's own `code --help` and its guide to extension development
// ("--extensionDevelopmentPath"), from memory.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';
import { desktopCode } from '../../client/open/desktop.ts';
import { repository } from '../../client/open/install.ts';

const run = promisify(execFile);
const open = join(repository, 'client', 'open', 'index.ts');

describe('npm start with a `code` on the PATH', () => {
  let folder = '';
  before(async () => {
    folder = await mkdtemp(join(tmpdir(), 'plumbline-code-'));
  });
  after(() => rm(folder, { recursive: true }));

  it('opens the folder and a file in it, with the extension loaded from the repository', async () => {
    const words = join(folder, 'words');
    await writeFile(join(folder, 'code'), `#!/bin/sh\nprintf '%s\\n' "$@" > '${words}'\n`, { mode: 0o755 });
    await writeFile(join(folder, 'network.site.yaml'), 'site: {name: Trial}\n');
    const path = [folder, process.env['PATH']].join(delimiter);
    await run(process.execPath, ['--import', 'tsx', open, folder], {
      cwd: repository,
      env: { ...process.env, PATH: path, VSCODE_IPC_HOOK_CLI: '' },
    });
    assert.deepEqual((await readFile(words, 'utf8')).trimEnd().split('\n'), [
      '--new-window',
      `--extensionDevelopmentPath=${repository}`,
      `--extensionDevelopmentPath=${join(repository, 'client', 'open', 'problems-view')}`,
      folder,
      join(folder, 'network.site.yaml'),
    ]);
  });

  it('leaves the `code` of a remote terminal alone, since it loads no extension from a folder', () => {
    const remote = { PATH: folder, VSCODE_IPC_HOOK_CLI: '/tmp/vscode-ipc.sock' };
    assert.equal(desktopCode(remote), undefined);
  });

  it('opens a folder that has no site yet', async () => {
    const empty = await mkdtemp(join(folder, 'empty-'));
    const words = join(folder, 'words');
    await writeFile(join(folder, 'code'), `#!/bin/sh\nprintf '%s\\n' "$@" > '${words}'\n`, { mode: 0o755 });
    await run(process.execPath, ['--import', 'tsx', open, empty], {
      cwd: repository,
      env: { ...process.env, PATH: [folder, process.env['PATH']].join(delimiter), VSCODE_IPC_HOOK_CLI: '' },
    });
    assert.equal((await readFile(words, 'utf8')).trimEnd().split('\n').at(-1), empty);
  });

  it('says so where there is no such folder', async () => {
    const failed = await run(process.execPath, ['--import', 'tsx', open, join(folder, 'nowhere')], {
      cwd: repository,
    }).then(
      () => undefined,
      (error: unknown) => error,
    );
    assert.ok(failed instanceof Error && 'stderr' in failed && 'code' in failed);
    assert.equal(failed.code, 2);
    assert.match(String(failed.stderr), /can't be read/);
  });
});
