import { headOf, placeOf } from '../../site/item.ts';
import { nodeAt } from '../../site/edit.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const aerialEarth: Rule = {
  id: 'aerial-earth',
  severity: 'warning',
  summary: 'A mast that lightning may strike is not said to be earthed.',
  why: `A mast outside the protected zone is earthed, and the screens of its coax are bonded to the earth of the house, as
local codes ask: IEC 60728-11 has 16 mm² of copper for the mast and 4 mm² for the screens. Plumbline checks that somebody
wrote it down, not that it is right: that is for a licensed person. An earthed mast does not protect a house from
lightning. Never work on an aerial or its coax while thunder is near; falls from roofs and ladders kill.`,
  source: 'IEC 60728-11 by a lightning-protection guide; national rules differ and prevail',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, aerial } of site.devices) {
      const mast = aerial?.mast;
      if (mast === undefined || !mast.outsideProtectedZone || nodeAt(item, ['mast', 'earthed']) !== undefined) continue;
      report({
        at: item.data === null ? headOf(item) : placeOf(item, ['mast']),
        message:
          `${name} stands outside the protected zone, and nothing says that its mast is earthed. Let a licensed person ` +
          'earth it as local codes ask, and say the conductor under earthed.',
        about: [name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial, mast: {outside-protected-zone: true}}
#                                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ chimney-aerial stands outside the protected zone, and nothing says that its mast is earthed.
`,
    good: `
devices:
  chimney-aerial: {kind: aerial, mast: {outside-protected-zone: true, earthed: 16 mm²}}
`,
  },
];
