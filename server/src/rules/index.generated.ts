// Made from the files of the folders beside it; `npm run generate` writes it anew.

import { linkLoad } from './links/link-load.ts';
import { unusedAcceptance } from './lint/unused-acceptance.ts';
import type { Rule } from './rule.ts';

export const rules: readonly Rule[] = [linkLoad, unusedAcceptance];
