/** Property tests try the same cases each time, so that only a change makes them fail; `FC_SEED` sets others. */

import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20_261_125) });
