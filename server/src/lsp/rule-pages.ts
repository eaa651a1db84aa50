/** Where the page of a rule, or of what an audit finds, is, for editors to open. */

import { ruleById } from '../check.ts';

export class RulePages {
  private pages: ReadonlyMap<string, string> = new Map();

  /** @param where as `moveTo`; `undefined` where there are none */
  constructor(where?: string) {
    if (where !== undefined) this.moveTo(where);
  }

  /** @param where address of the folder that holds them, or of any one of them with `{rule}` for its name */
  moveTo(where: string): void {
    const page = where.includes('{rule}') ? where : `${where.replace(/\/$/, '')}/{rule}.md`;
    this.pages = new Map([...ruleById.keys()].map((id) => [id, page.replaceAll('{rule}', id)]));
  }

  of(rule: string): string | undefined {
    return this.pages.get(rule);
  }
}
