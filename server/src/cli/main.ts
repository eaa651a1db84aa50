/** The command line as a process. */

import { run } from './command-line.ts';
import { endWhereClosed } from './print.ts';

endWhereClosed();
void run(process.argv.slice(2));
