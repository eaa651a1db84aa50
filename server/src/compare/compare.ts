/** The differences between two plans, the most important first. */

import type { Diagnostic } from '../lint/rule.ts';
import type { Plan } from '../plan.ts';
import { purchasesOf } from '../purchases/purchases.ts';
import { type Bought, boughtOf } from './bought.ts';
import { type FindingChanges, findingChanges } from './findings.ts';
import { type LinkChange, type PoeChange, type PowerChange, linkChanges, poeChanges, powerChange } from './loads.ts';
import { matchOf } from './match.ts';
import { type Setting, settingsOf } from './settings.ts';
import { type UserChange, userChanges } from './user.ts';
import { type Work, workOf } from './work.ts';

/** A plan with its findings. */
export interface Side {
  readonly plan: Plan;
  readonly diagnostics: readonly Diagnostic[];
}

/** Everything in it is plain data; each list is empty, and `power` is null, where nothing differs. */
export interface Comparison {
  readonly findings: FindingChanges;
  readonly user: readonly UserChange[];
  readonly links: readonly LinkChange[];
  readonly poe: readonly PoeChange[];
  readonly power: PowerChange | null;
  readonly settings: readonly Setting[];
  readonly work: readonly Work[];
  readonly purchases: Bought;
}

/** Compares two plans; order, comments and the division into files do not matter. */
export function compare(before: Side, after: Side): Comparison {
  const plans = [before.plan, after.plan] as const;
  const match = matchOf(...plans);
  return {
    findings: findingChanges(before.diagnostics, after.diagnostics, match),
    user: userChanges(...plans, match),
    links: linkChanges(...plans, match),
    poe: poeChanges(...plans, match),
    power: powerChange(...plans),
    settings: settingsOf(match),
    work: workOf(...plans, match),
    purchases: boughtOf(purchasesOf(before.plan), purchasesOf(after.plan)),
  };
}

/** Whether the comparison found no difference. */
export function isSamePlan({ findings, user, links, poe, power, settings, work, purchases }: Comparison): boolean {
  const lists = [findings.new, findings.solved, user, links, poe, settings, work, purchases.buy, purchases.left];
  return power === null && lists.every(({ length }) => length === 0);
}
