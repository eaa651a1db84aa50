/** Where the page of a rule, or of what an audit finds, is, for editors to open. */

import { ruleById } from '../check.ts';

export class RulePages {
  private pages: ReadonlyMap<string, string> = new Map();

  /** @param folder address of the folder that holds them; `undefined` where there is none */
  constructor(folder?: string) {
    if (folder !== undefined) this.moveTo(folder);
  }

  moveTo(folder: string): void {
    const base = folder.replace(/\/$/, '');
    this.pages = new Map([...ruleById.keys()].map((id) => [id, `${base}/${id}.md`]));
  }

  of(rule: string): string | undefined {
    return this.pages.get(rule);
  }
}
