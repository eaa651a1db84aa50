/** Where the page of a rule, or of what an audit finds, is, for editors to open. */

import { ruleById } from '../check.ts';

export class RulePages {
  /** Address of the folder that holds them; `undefined` where there is none. */
  folder: string | undefined;

  constructor(folder?: string) {
    this.folder = folder;
  }

  of(rule: string): string | undefined {
    return this.folder === undefined || !ruleById.has(rule)
      ? undefined
      : `${this.folder.replace(/\/$/, '')}/${rule}.md`;
  }
}
