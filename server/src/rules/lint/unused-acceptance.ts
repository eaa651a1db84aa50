import { few } from '../../text/words.ts';
import { visible } from '../../text/visible.ts';
import { type Fix, fixOf, nodeAt, remove, removeItem, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Acceptance } from '../../site/model.ts';
import type { AcceptanceRule, Example, Finding, UnusedAcceptance } from '../../lint/rule.ts';

export const unusedAcceptance: AcceptanceRule = {
  id: 'unused-acceptance',
  severity: 'warning',
  isSlip: true,
  summary: 'An acceptance matches no finding.',
  why: `What was accepted is gone, or its name has changed. Left in place, the acceptance would hide the next problem of that
rule at that place. Remove it, or correct \`rule\` and \`at\`.`,
  checkUnused(unused: readonly UnusedAcceptance[], report: (finding: Finding) => void): void {
    for (const { acceptance, isOff, found } of unused) {
      const { item, keyPath, rule, at } = acceptance;
      const places = [...new Set(found.flatMap(({ acceptAt }) => acceptAt.slice(0, 1)))];
      const elsewhere = places.length > 0 ? `, but at ${few(places)}` : '';
      report({
        at: placeOf(item, [...keyPath, 'at']),
        message: isOff
          ? `The rule ${rule} is off in this site, so there is nothing to accept. Remove the acceptance.`
          : `${rule} finds nothing at ${visible(at, 40)}${elsewhere}. Remove the acceptance, or correct it.`,
        acceptAt: [at],
        fixes: () => [...(isOff ? [] : corrections(acceptance, places)), ...takenOut(acceptance)],
      });
    }
  },
};

/** Where the rule has findings at one place only, that place is meant. */
function corrections({ item, keyPath }: Acceptance, places: readonly string[]): Fix[] {
  const [place] = places;
  if (place === undefined || places.length > 1) return [];
  return fixOf(`Accept it at ${place}`, setValue(item, [...keyPath, 'at'], scalarText(place, true)));
}

function takenOut({ item, keyPath }: Acceptance): Fix[] {
  const all = nodeAt(item, []);
  const edit = all?.kind === 'sequence' && all.items.length === 1 ? removeItem(item) : remove(item, keyPath);
  return fixOf('Remove the acceptance', edit);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
  accept:
    - {rule: poe-missing, at: paddock-cam, because: an injector feeds it}
#                             ^^^^^^^^^^^ poe-missing finds nothing at paddock-cam. Remove the acceptance
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
  accept:
    - {rule: poe-missing, at: padock-cam, because: an injector feeds it}
#                             ^^^^^^^^^^ poe-missing finds nothing at padock-cam, but at
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
  accept:
    - {rule: poe-missing, at: paddock-cam, because: an injector feeds it}
`,
  },
];
