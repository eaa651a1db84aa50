/** Starts the language server on Node. */

import { join } from 'node:path';
import { runKept } from '../machine/code-cache.ts';
import { growSlowly } from '../machine/heap.ts';

growSlowly();
runKept(join(__dirname, 'programs', 'server.cjs'));
