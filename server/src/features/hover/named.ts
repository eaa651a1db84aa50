/** The hover of a thing by its name, the same as at a mention of it in the text. */

import type { Plan } from '../../plan.ts';
import { NAMED_SECTIONS } from '../../site/declared.ts';
import { portEnd } from './port.ts';
import { thing } from './thing.ts';

/**
 * Markdown; empty where the site has no such thing.
 *
 * @param names a section, or `ports` for a port or a coax connector: `core/16`
 */
export function namedHover(plan: Plan, names: string, name: string): string {
  const section = NAMED_SECTIONS.find((one) => one === names);
  const texts = names === 'ports' ? portEnd(plan, name) : section === undefined ? [] : thing(plan, section, name);
  return texts.filter((text) => text !== '').join('\n\n');
}
