/** The meaning of a name, an address or a quantity in an item. */

import type { Plan } from '../../plan.ts';
import { addressExplained, rangeExplained, subnetExplained } from '../../report/explain/address.ts';
import { type Explanation, explanationsMarkdown } from '../../report/explain/explanation.ts';
import { quantityExplained } from '../../report/explain/quantity.ts';
import type { Item } from '../../site/item.ts';
import type { Mention } from '../../site/mentions.ts';
import type { FormKind } from '../../site/shape.ts';
import { parseAddress, parseRange, parseSubnet } from '../../standards/ipv4.ts';
import { isQuantity } from '../../text/quantity.ts';
import { portEnd, ownPort } from './port.ts';
import { ruleText } from './rule.ts';
import { thing } from './thing.ts';

/** Markdown paragraphs. */
export function mentionText(plan: Plan, item: Item, mention: Mention): string[] {
  switch (mention.mention) {
    case 'quantity':
      return isQuantity(mention.read) ? inOtherUnits(quantityExplained(mention.text, mention.read)) : [];
    case 'form':
      return explanationsMarkdown(formExplained(plan, mention.form, mention.text));
    case 'name':
      switch (mention.names) {
        case 'rules':
          return ruleText(mention.text);
        case 'port-end':
          return portEnd(plan, mention.text);
        case 'own-port':
          return ownPort(plan, item.name, mention.text);
        default:
          return thing(plan, mention.names, mention.text);
      }
  }
}

/** Empty where there is no other unit to show it in. */
function inOtherUnits(explanation: Explanation): string[] {
  return explanation.lines.length === 0 ? [] : explanationsMarkdown([explanation]);
}

function formExplained(plan: Plan, form: FormKind, text: string): Explanation[] {
  switch (form) {
    case 'address':
    case 'group': {
      const address = parseAddress(text);
      return address === undefined ? [] : [addressExplained(plan, address)];
    }
    case 'subnet':
    case 'destination': {
      const subnet = parseSubnet(text);
      return subnet === undefined ? [] : [subnetExplained(plan, subnet)];
    }
    case 'address-range': {
      const range = parseRange(text);
      return range === undefined ? [] : [rangeExplained(plan, range)];
    }
    case 'mac':
    case 'time-zone':
    case 'frequency-range':
      return [];
  }
}
