/** Starts the command line. */

import { join } from 'node:path';
import { growSlowly } from '../machine/heap.ts';
import { runKept } from '../machine/code-cache.ts';

if (process.argv[2] === 'lsp') growSlowly();
runKept(join(__dirname, 'programs', 'plumbline.cjs'));
