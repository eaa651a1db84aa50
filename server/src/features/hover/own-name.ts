/** An item at its own name: its description and summary. */

import type { Item } from '../../site/item.ts';
import type { Plan } from '../../plan.ts';
import { thing } from './thing.ts';

export function ownName(plan: Plan, item: Item): string[] {
  switch (item.section) {
    case 'vlans':
    case 'racks':
    case 'devices':
    case 'multiplexes':
    case 'services':
    case 'occasions':
    case 'streams':
    case 'traffic':
    case 'volumes':
    case 'recordings':
      return thing(plan, item.section, item.name);
    default:
      return [];
  }
}
