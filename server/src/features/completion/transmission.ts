/** Transmission parameters of a multiplex: those of its system, and the channels of the site's plan. */

import { channelFrequency } from '../../standards/television/channel-plan.ts';
import {
  type Modulation,
  type System,
  codeRatesOf,
  guardIntervalsOf,
  isModulation,
  isSystem,
  modulationsOf,
} from '../../standards/television/system.ts';
import { megahertz } from '../../text/radio-words.ts';
import type { Offer } from './offer.ts';
import { type CompletionContext, textAtCursor } from './wanted.ts';
import { scalarOf } from './yaml-text.ts';

/** Channels end here in every plan. */
const LAST = 69;

/** `undefined` where the value is no transmission parameter, or the system is not known yet. */
export function transmissionOffers(wanted: CompletionContext): Offer[] | undefined {
  const { section, keyPath, site } = wanted;
  if (section !== 'multiplexes' || keyPath.length !== 1) return undefined;
  if (keyPath[0] === 'channel') {
    const taken = new Set(site.multiplexes.map(({ channel }) => channel));
    return Array.from({ length: LAST }, (_, index) => index + 1).flatMap((channel) => {
      const frequency = channelFrequency(site.channelPlan, channel);
      return frequency === undefined || taken.has(channel)
        ? []
        : [{ label: String(channel), kind: 'number', detail: megahertz(frequency) }];
    });
  }
  const system = textAtCursor(wanted, ['system']);
  if (!isSystem(system)) return undefined;
  const found = wordsOf(String(keyPath[0]), system, textAtCursor(wanted, ['modulation']));
  return found?.map((word) => ({ label: word, kind: 'word', insert: scalarOf(word) }));
}

function wordsOf(key: string, system: System, modulation: unknown): readonly string[] | undefined {
  switch (key) {
    case 'modulation':
      return modulationsOf(system);
    case 'code-rate': {
      const own: Modulation | undefined = isModulation(modulation) ? modulation : modulationsOf(system)[0];
      return own === undefined ? undefined : codeRatesOf(system, own);
    }
    case 'guard-interval':
      return guardIntervalsOf(system);
    default:
      return undefined;
  }
}
