import { fixOf } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { type Connector, type Device, type Site, connectorName } from '../../site/model.ts';
import { moveEdits } from '../../site/television/insert-part.ts';
import { type Moved, amplifiedBefore, worthMoving } from '../../television/amplified-first.ts';
import type { Point } from '../../television/reception.ts';
import { decibels } from '../../text/radio-words.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const amplifierAfterLoss: Rule = {
  id: 'amplifier-after-loss',
  severity: 'warning',
  summary: 'Loss in front of the first amplifier costs carrier to noise that is short.',
  why: `Noise that is added before the gain cannot be taken out again: an amplifier behind a splitter or a long coax raises
the signal and the noise alike. Move it to the aerial, or take one that is made for the mast and powered along the coax.
Roofs and masts: leave the work to licensed people where
local codes say so.`,
  source: 'Friis’ formula for noise factors',
  check({ plan, site }: RuleContext, report: Report): void {
    const { margin } = site.policies.aerialSystem;
    const byAmplifier = new Map<Device, Gain[]>();
    for (const { points } of plan.television.reception.receivers) {
      for (const point of points) {
        const moved = worthMoving(point, margin);
        if (moved === undefined) continue;
        const known = byAmplifier.get(moved.amplifier);
        if (known === undefined) byAmplifier.set(moved.amplifier, [{ point, moved }]);
        else known.push({ point, moved });
      }
    }
    for (const [amplifier, gains] of byAmplifier) report(foundAt(site, amplifier, gains));
  },
};

/** A point below its margin, and its value with the amplifier moved. */
interface Gain {
  readonly point: Point;
  readonly moved: Moved;
}

function foundAt(site: Site, amplifier: Device, gains: readonly Gain[]): Finding {
  const { margin } = site.policies.aerialSystem;
  const best = gains.reduce((most, one) => (one.moved.gained > most.moved.gained ? one : most));
  const { source } = best.point.signal;
  const cured = gains.flatMap(({ point, moved }) => ((moved.margin ?? 0) >= margin ? [point] : []));
  const receivers = new Map(cured.map(({ signal }) => [signal.at.device, signal]));
  return {
    at: namePlace(amplifier.item),
    message:
      `${decibels(best.moved.lossInFront)} of loss are in front of ${asName(amplifier.name)}. At ${asName(source.device.name)} it would ` +
      `give ${decibels(best.moved.gained)} more of carrier to noise. Move it there, in front of splitters and long coax.`,
    acceptAt: [amplifier.name],
    related: [...receivers].map(([device, { at, multiplex }]) => ({
      at: namePlace(device.item),
      message: `${asName(multiplex.name)} reaches ${at.name} with too little carrier to noise`,
    })),
    fixes: () => [
      ...fixOf(
        `Move ${asName(amplifier.name)} to ${asName(source.device.name)}`,
        ...moveEdits(site, amplifier, { at: source, isSource: true }),
      ),
      ...inFrontOfSplitter(amplifier, gains, margin).flatMap((at) =>
        fixOf(
          `Move ${asName(amplifier.name)} in front of ${connectorName(at)}`,
          ...moveEdits(site, amplifier, { at, isSource: false }),
        ),
      ),
    ],
  };
}

/** The part that loses most in front of the amplifier, where moving the amplifier in front of it is enough. */
function inFrontOfSplitter(amplifier: Device, gains: readonly Gain[], margin: number): Connector[] {
  const [first] = gains;
  if (first === undefined) return [];
  const steps = first.point.signal.steps;
  const until = steps.findIndex(({ by }) => 'device' in by && by.device === amplifier);
  const lossy = steps
    .slice(0, until)
    .flatMap(({ by, gain }) =>
      'device' in by && by.device.connectorByName.size > 2 ? [{ device: by.device, gain }] : [],
    )
    .sort((a, b) => a.gain - b.gain);
  const [most] = lossy;
  const at = most?.device.connectorByName.get('in');
  if (most === undefined || at === undefined) return [];
  const isEnough = gains.every(({ point }) => (amplifiedBefore(point, most.device)?.margin ?? 0) >= margin);
  return isEnough ? [at] : [];
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 43 dBµV}}
  house-splitter: {kind: splitter, ways: 4, loss: 7.5 dB, terminated: [out-2, out-3, out-4]}
  set-amp: {kind: amplifier, gain: 20 dB, noise-figure: 4 dB}
# ^^^^^^^ 14.9 dB of loss are in front of set-amp. At chimney-aerial it would give 14.4 dB more of carrier to noise.
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: chimney-aerial, to: house-splitter/in, type: coax-6, length: 28 m}
  - {from: house-splitter/out-1, to: set-amp/in, type: coax-6, length: 14 m}
  - {from: set-amp/out, to: parlour-tv/rf, type: coax-59, length: 2 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 43 dBµV}}
  house-splitter: {kind: splitter, ways: 4, loss: 7.5 dB, terminated: [out-2, out-3, out-4]}
  set-amp: {kind: amplifier, gain: 20 dB, noise-figure: 4 dB}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: set-amp/out, to: house-splitter/in, type: coax-6, length: 28 m}
  - {from: house-splitter/out-1, to: parlour-tv/rf, type: coax-6, length: 16 m}
  - {from: set-amp/in, to: chimney-aerial, type: coax-59, length: 0.1 m}
`,
  },
];
