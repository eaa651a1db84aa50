/** Starts the language server on Node. */

import { join } from 'node:path';
import { runWithCache } from '../machine/compile-cache.ts';

runWithCache(join(__dirname, 'programs', 'server.cjs'));
