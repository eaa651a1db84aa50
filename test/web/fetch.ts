// Fetches what the tests of VS Code for the Web need: `node --import tsx test/web/fetch.ts`.
import { installWebEditor } from './install.ts';

console.log(`VS Code for the Web is in ${await installWebEditor()}.`);
