import { addElement, fixOf, putElement } from '../../site/edit.ts';
import { type Item, namePlace } from '../../site/item.ts';
import { type CableEnd, type Device, connectorAt } from '../../site/model.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const splitterOpen: Rule = {
  id: 'splitter-open',
  severity: 'hint',
  summary: 'An output of a splitter or tap has neither a coax nor a terminator.',
  why: `What is reflected there makes the level at the other outputs go up and down over the channels, and lets receivers
disturb each other. A 75 Ω terminator costs little; say it under \`terminated\`.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    const splitters = site.devices.filter(({ kind }) => kind === 'splitter' || kind === 'tap');
    if (splitters.length === 0) return;
    const cabled = new Set(site.cables.flatMap(({ from, to }) => [connectorAt(site, from), connectorAt(site, to)]));
    for (const device of splitters) {
      const { item, name, connectorByName, aerial } = device;
      if (aerial === undefined || hasShapeProblem(item, ['ways'])) continue;
      // A coax that names the device alone is meant for one of its connectors.
      if (
        site.cables.some(
          ({ from, to, item: cable }) => isLost(site, device, from, cable) || isLost(site, device, to, cable),
        )
      )
        continue;
      const connectors = [...connectorByName.values()];
      const open = connectors.filter(
        (connector) => connector.name !== 'in' && !cabled.has(connector) && !aerial.terminated.includes(connector.name),
      );
      // A device without any coax is not built yet.
      if (open.length === 0 || !connectors.some((connector) => cabled.has(connector))) continue;
      const names = open.map((connector) => connector.name);
      report({
        at: namePlace(item),
        message: `${list(names)} of ${asName(name)} ${names.length === 1 ? 'has' : 'have'} neither a coax nor a terminator. Terminate with 75 Ω.`,
        acceptAt: [name, ...names.map((own) => `${name}/${own}`)],
        effects: [device],
        fixes: () =>
          fixOf(
            `Terminate ${list(names)}`,
            aerial.terminated.length === 0
              ? putElement(item, 'terminated', names.join(', '))
              : addElement(item, ['terminated'], names.join(', ')),
          ),
      });
    }
  },
};

/** Whether an end may be meant for the device: its connector is unknown, or the end cannot be read. */
function isLost(site: RuleContext['site'], { name }: Device, end: CableEnd | undefined, cable: Item): boolean {
  return end === undefined ? cable.problems.length > 0 : end.device === name && connectorAt(site, end) === undefined;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial}
  house-splitter: {kind: splitter, ways: 3, loss: 6 dB}
# ^^^^^^^^^^^^^^ out-2 and out-3 of house-splitter have neither a coax nor a terminator.
  parlour-outlet: {kind: outlet}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 5 m}
`,
    fixed: `
devices:
  chimney-aerial: {kind: aerial}
  house-splitter: {kind: splitter, ways: 3, loss: 6 dB, terminated: [out-2, out-3]}
  parlour-outlet: {kind: outlet}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 5 m}
  - {from: house-splitter/out-1, to: parlour-outlet/in, type: coax-6, length: 5 m}
`,
  },
];
