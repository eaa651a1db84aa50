/** Starts the command line. */

import { join } from 'node:path';
import { runWithCache } from '../machine/compile-cache.ts';

runWithCache(join(__dirname, 'programs', 'plumbline.cjs'));
