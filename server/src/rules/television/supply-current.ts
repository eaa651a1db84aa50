import { namePlace } from '../../site/item.ts';
import { type Device, connectorName } from '../../site/model.ts';
import { list, asName } from '../../text/words.ts';
import type { CurrentSource } from '../../television/direct-current.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const supplyCurrent: Rule = {
  id: 'supply-current',
  severity: 'error',
  summary: 'What hangs on a supply draws more than it gives.',
  why: `The voltage sags, at the latest when the second receiver switches on, and reception fails now and then. Take a
supply that gives more, or feed one of them from elsewhere.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    const loads = new Map<string, { readonly supply: CurrentSource; readonly drawn: Map<Device, number> }>();
    for (const { device, feeds } of plan.television.directCurrent.consumers) {
      const current = device.aerial?.current;
      if (current === undefined) continue;
      for (const { supply } of feeds) {
        const name = supply.connector === undefined ? supply.device.name : connectorName(supply.connector);
        const load = loads.get(name) ?? { supply, drawn: new Map<Device, number>() };
        loads.set(name, load);
        load.drawn.set(device, current);
      }
    }
    for (const [name, { supply, drawn }] of loads) {
      const sum = [...drawn.values()].reduce((total, one) => total + one, 0);
      if (supply.current === undefined || sum <= supply.current) continue;
      const names = [...drawn.keys()].map((device) => device.name);
      report({
        at: namePlace(supply.device.item),
        message: `${list(names)} ${names.length === 1 ? 'draws' : 'draw'} ${sum} mA of ${asName(name)}, which gives ${supply.current} mA. Take one that gives more.`,
        acceptAt: [supply.device.name, ...names],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  dish: {kind: lnb, type: single, current: 180 mA}
  tv-tuner: {kind: tuner, inputs: {sat: {supplies: 150 mA}}}
# ^^^^^^^^ dish draws 180 mA of tv-tuner/sat, which gives 150 mA.
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-6, length: 12 m, core: copper}
`,
    good: `
devices:
  dish: {kind: lnb, type: single, current: 180 mA}
  tv-tuner: {kind: tuner, inputs: {sat: {supplies: 400 mA}}}
cables:
  - {from: dish, to: tv-tuner/sat, type: coax-6, length: 12 m, core: copper}
`,
  },
];
