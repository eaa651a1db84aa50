import { placeOf } from '../../site/item.ts';
import { nodeAt } from '../../site/edit.ts';
import type { Device } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const aerialEarth: Rule = {
  id: 'aerial-earth',
  severity: 'warning',
  summary: 'The site does not say that an exposed mast is earthed, or its coax bonded.',
  why: `A mast outside the protected zone is earthed, and the screens of its coax are bonded to the earth of the house, as
local codes ask: IEC 60728-11 has 16 mm² of copper for the mast and 4 mm² for the screens. Plumbline checks that somebody
wrote it down, not that it is right: that is for a licensed person. An earthed mast does not protect a house from
lightning. Never work on an aerial or its coax while thunder is near; falls from roofs and ladders kill.`,
  source: 'IEC 60728-11 by a lightning-protection guide; national rules differ and prevail',
  check({ plan, site }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      const { item, name, aerial } = device;
      if (aerial?.mast?.outsideProtectedZone !== true) continue;
      const isEarthed = nodeAt(item, ['mast', 'earthed']) !== undefined;
      if (isEarthed && !isUnbonded(plan.television, device)) continue;
      report({
        at: placeOf(item, ['mast']),
        // Many are bonded by a clamp that is not in the site.
        severity: isEarthed ? 'hint' : 'warning',
        message: isEarthed
          ? `${asName(name)} stands outside the protected zone, and its coax has no earth block, so its screen may not be ` +
            'bonded. Have a licensed person bond it to local codes, and run the coax through an earth-block.'
          : `${asName(name)} stands outside the protected zone, and the site does not say that its mast is earthed. Have a licensed person ` +
            'earth it to local codes, and write the conductor under `earthed`.',
        acceptAt: [name],
      });
    }
  },
};

/** Whether its coax leads to an outlet or a receiver without an earth block. */
function isUnbonded({ reception }: RuleContext['plan']['television'], device: Device): boolean {
  return [...reception.outlets, ...reception.receivers].some(({ points }) =>
    points.some(
      ({ signal }) =>
        signal.source.device === device &&
        !signal.steps.some(({ by }) => 'device' in by && by.device.kind === 'earth-block'),
    ),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial, mast: {outside-protected-zone: true}}
#                                      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ chimney-aerial stands outside the protected zone, and the site does not say that its mast is earthed.
`,
    good: `
devices:
  chimney-aerial: {kind: aerial, mast: {outside-protected-zone: true, earthed: 16 mm²}}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}, mast: {outside-protected-zone: true, earthed: 16 mm²}}
#                                                                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ its coax has no earth block, so its screen may not be bonded
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 15 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}, mast: {outside-protected-zone: true, earthed: 16 mm²}}
  roof-entry: {kind: earth-block}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 15 m, through: [roof-entry]}
`,
  },
];
