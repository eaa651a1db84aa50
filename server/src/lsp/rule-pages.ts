/** The address of the page of a rule of the checks or of an audit, for editors to open. */

import { ruleById } from '../check.ts';

export class RulePages {
  private pages: ReadonlyMap<string, string> = new Map();

  /** @param where as for `moveTo`; `undefined` where there are no pages */
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
