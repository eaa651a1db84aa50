import { namePlace } from '../../site/item.ts';
import { type Device, connectorName } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import type { LnbCable } from '../../television/lnb-cable.ts';
import { isUnasked, planeOfMultiplex } from '../../television/units.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const lnbControlBlocked: Rule = {
  id: 'lnb-control-blocked',
  severity: 'error',
  summary: 'What a receiver asks an LNB for does not reach it.',
  why: `A receiver asks for the polarisation by 13 or 18 V and for the band by 22 kHz. A splitter without power pass, an
amplifier or an isolator stops them, and the LNB stays at vertical, low band, if it has power at all. Take a part that
lets them pass, and say so by \`power-pass\`. Supplies put direct current on the cable: switch them off before you unscrew
a plug.`,
  source: 'EN 61319-1, from memory; what parts let pass is common practice',
  check({ plan, site }: RuleContext, report: Report): void {
    const { lnbCables, signals } = plan.television;
    const blocking = new Map<Device, LnbCable[]>();
    for (const cable of new Set(lnbCables.values())) {
      if (cable.blockedBy === undefined) continue;
      const known = blocking.get(cable.blockedBy);
      if (known === undefined) blocking.set(cable.blockedBy, [cable]);
      else if (!known.some(({ from }) => from === cable.from)) known.push(cable);
    }
    for (const [part, cables] of blocking) {
      const lost = [
        ...new Set(cables.flatMap(({ from }) => signals.at(from).map(({ multiplex }) => multiplex))),
      ].filter((multiplex) => !isUnasked(planeOfMultiplex(site, multiplex)));
      if (lost.length === 0) continue;
      const receivers = cables.flatMap(({ asking }) => asking.map(connectorName));
      report({
        at: namePlace(part.item),
        message:
          `${asName(part.name)} lets neither 13/18 V nor 22 kHz of ${few(receivers)} pass, so that ` +
          `${few(cables.map(({ from }) => connectorName(from)))} stays at vertical, low band: ` +
          `${few(lost.map(({ name }) => name))} ${lost.length === 1 ? 'is' : 'are'} out of reach. Take a part with power pass, or lead the cable past it.`,
        acceptAt: [part.name, ...cables.map(({ from }) => from.device.name)],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  sat-2: {system: dvb-s2, frequency: 10773 MHz, polarisation: horizontal, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, receives: {sat-2: 76 dBµV}}
  sat-splitter: {kind: splitter, ways: 2, terminated: [out-2]}
# ^^^^^^^^^^^^ sat-splitter lets neither 13/18 V nor 22 kHz of tv-tuner/sat-1 pass, so that dish/out stays at vertical, low band: sat-2 is out of reach
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {sat-1: {supplies: 400 mA}}, tuners: {1: {systems: [dvb-s2]}}}
cables:
  - {from: dish/out, to: sat-splitter/in, type: coax-6, length: 20 m}
  - {from: sat-splitter/out-1, to: tv-tuner/sat-1, type: coax-6, length: 2 m}
`,
    good: `
multiplexes:
  sat-2: {system: dvb-s2, frequency: 10773 MHz, polarisation: horizontal, symbol-rate: 22 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, receives: {sat-2: 76 dBµV}}
  sat-splitter: {kind: splitter, ways: 2, terminated: [out-2], power-pass: [out-1]}
  tv-tuner: {kind: tuner, address: 192.168.20.9, inputs: {sat-1: {supplies: 400 mA}}, tuners: {1: {systems: [dvb-s2]}}}
cables:
  - {from: dish/out, to: sat-splitter/in, type: coax-6, length: 20 m}
  - {from: sat-splitter/out-1, to: tv-tuner/sat-1, type: coax-6, length: 2 m}
`,
  },
];
