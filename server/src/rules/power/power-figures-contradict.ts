import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { quantity } from '../../text/quantity.ts';
import { textAt } from '../../text/syntax.ts';
import { threshold, voltAmperes, watts, asName } from '../../text/words.ts';

const WHOLE = 10_000;

export const powerFiguresContradict: Rule = {
  id: 'power-figures-contradict',
  severity: 'error',
  showAfter: 'value',
  summary: 'Power figures contradict each other, or are impossible.',
  why: `A device draws no more when idle than at most, a UPS gives no more watts than volt-amperes, and a share of a whole is
more than nothing and no more than all. With such a figure, loads and runtimes mean nothing. Read the label again.`,
  source: 'physics',
  check({ site }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.ownPower !== undefined) checkOwn(device, report);
      if (device.ups !== undefined) checkUps(device, report);
    }
  },
};

function checkOwn({ item, name, ownPower }: Device, report: Report): void {
  checkShare({ item, name }, ['power', 'poe-efficiency'], report);
  const { idle, most } = ownPower ?? {};
  if (idle === undefined || most === undefined || idle <= most) return;
  report({
    at: placeOf(item, ['power', 'idle']),
    message: `${asName(name)} draws ${watts(idle)} when idle and ${watts(most)} at most: less with more to do. Correct one of them.`,
    acceptAt: [name],
    related: [{ at: placeOf(item, ['power', 'at-most']), message: 'the most' }],
    fixes: () =>
      fixOf(
        'Swap the two',
        setValue(item, ['power', 'idle'], textAt(item.data, ['power', 'at-most']) ?? ''),
        setValue(item, ['power', 'at-most'], textAt(item.data, ['power', 'idle']) ?? ''),
      ),
  });
}

function checkUps({ item, name, ups }: Device, report: Report): void {
  for (const key of ['efficiency', 'depth-of-discharge', 'health']) checkShare({ item, name }, [key], report);
  const { rated, ratedPower } = ups ?? {};
  if (rated === undefined || ratedPower === undefined || ratedPower <= rated) return;
  report({
    at: placeOf(item, ['rated-power']),
    message:
      `${asName(name)} gives ${watts(ratedPower)} and only ${voltAmperes(rated)}: watts are never more than volt-amperes. Correct ` +
      'one of them.',
    acceptAt: [name],
    related: [{ at: placeOf(item, ['rated']), message: 'its volt-amperes' }],
  });
}

function checkShare({ item, name }: Pick<Device, 'item' | 'name'>, route: readonly string[], report: Report): void {
  const share = quantity(textAt(item.data, route), 'percentage');
  if (share === undefined || (share > 0 && share <= WHOLE)) return;
  report({
    at: placeOf(item, route),
    message: `${threshold(share)} as the ${route.at(-1) ?? ''} of ${asName(name)} cannot be: it is above 0 % and at most 100 %.`,
    acceptAt: [name],
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server, power: {idle: 75 W, at-most: 45 W}}
#                                        ^^^^ recorder draws 75 W when idle and 45 W at most
`,
    fixed: `
devices:
  recorder: {kind: server, power: {idle: 45 W, at-most: 75 W}}
`,
  },
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 4200 W, battery: 216 Wh, efficiency: 0 %}
#                                                ^^^^^^ ups-1 gives 4200 W and only 700 VA
#                                                                                     ^^^ 0 % as the efficiency of ups-1 cannot be
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA, rated-power: 420 W, battery: 216 Wh, efficiency: 85 %}
`,
  },
];
