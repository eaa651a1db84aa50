/** Names by which a finding can be accepted: those that the rule's findings are about. */

import type { Offer } from './offer.ts';
import { type Wanted, textAt } from './wanted.ts';

export function acceptedOffers(wanted: Wanted): Offer[] {
  const rule = textAt(wanted, [...wanted.route.slice(0, -1), 'rule']);
  const offers = new Map<string, Offer>();
  const later: Offer[] = [];
  for (const [own, { findings }] of wanted.checked.runs) {
    if (rule !== undefined && own.id !== rule) continue;
    for (const { about, message } of findings) {
      about.forEach((label, index) => {
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
