import { placeOf } from '../../site/item.ts';
import type { Acceptance } from '../../site/model.ts';
import { remove } from '../../site/edit.ts';
import type { Finding, Rule } from '../rule.ts';

/** Found by the checker, which alone knows what each acceptance was used for. */
export const unusedAcceptance = {
  id: 'unused-acceptance',
  severity: 'warning',
  summary: 'An acceptance matches nothing that is found.',
  why: `What was knowingly accepted is gone, or its name has changed. Left in place, the acceptance would hide the
next problem of that rule at that place. Take it out, or correct \`rule\` and \`at\`.`,
  examples: [],
  *check() {},
  *unused(acceptances: readonly Acceptance[]): Iterable<Finding> {
    for (const { item, route, rule, at } of acceptances) {
      const edit = remove(item, route);
      yield {
        at: placeOf(item, route),
        message: `Nothing of rule ${rule} is found at ${at}. Take the acceptance out, or correct its rule or place.`,
        about: [at],
        fixes: () => (edit === undefined ? [] : [{ title: 'Take the acceptance out', safe: false, edits: [edit] }]),
      };
    }
  },
} satisfies Rule & { unused(acceptances: readonly Acceptance[]): Iterable<Finding> };
