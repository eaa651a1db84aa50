/** Names by which a finding can be accepted: those that the rule's findings are about. */

import type { Offer } from './offer.ts';
import { type CompletionContext, textAtCursor } from './wanted.ts';

export function acceptedOffers(wanted: CompletionContext): Offer[] {
  const rule = textAtCursor(wanted, [...wanted.keyPath.slice(0, -1), 'rule']);
  const offers = new Map<string, Offer>();
  const later: Offer[] = [];
  for (const [own, { findings }] of wanted.checked.runs) {
    if (rule !== undefined && own.id !== rule) continue;
    for (const { acceptAt, message } of findings) {
      acceptAt.forEach((label, index) => {
        if (offers.has(label)) return;
        const offer: Offer = { label, kind: 'word', detail: own.id, documentation: message };
        offers.set(label, offer);
        if (index > 0) later.push(offer);
      });
    }
  }
  // The first name of a finding is the usual one.
  return [...[...offers.values()].filter((offer) => !later.includes(offer)), ...later];
}
