/** Names in two plans, as identities that both share. */

import type { NamedSection } from '../site/declared.ts';
import type { SectionMention } from '../site/references.ts';
import type { MatchedPairs } from './pairing.ts';

export type Side = 'before' | 'after';

/** The same text for one thing or port, in whichever plan it is named. */
export type Identify = (name: string, side: Side) => string;

type Names = Readonly<Record<Side, Map<string, string>>>;

export class PairedNames {
  private readonly known = new Map<NamedSection, Names>();

  add(section: NamedSection, pairs: readonly MatchedPairs<{ readonly name: string }>[]): void {
    const names: Names = { before: new Map(), after: new Map() };
    for (const { before, after } of pairs) {
      const id = `${before?.name ?? ''} ${after?.name ?? ''}`;
      if (before !== undefined) names.before.set(before.name, id);
      if (after !== undefined) names.after.set(after.name, id);
    }
    this.known.set(section, names);
  }

  /** Identifies a name that an item mentions. */
  mentioned({ names, text }: SectionMention, side: Side): string {
    return names === 'port-end' ? this.portEnd(text, side) : (this.known.get(names)?.[side].get(text) ?? text);
  }

  /** Identifies a device, a port, or else whatever has the name first, in the order in which sections were added. */
  readonly id: Identify = (name, side) => {
    if (name.includes('/')) return this.portEnd(name, side);
    for (const names of this.known.values()) {
      const id = names[side].get(name);
      if (id !== undefined) return id;
    }
    return name;
  };

  private portEnd(text: string, side: Side): string {
    const slash = text.indexOf('/');
    const device = slash === -1 ? text : text.slice(0, slash);
    const id = this.known.get('devices')?.[side].get(device) ?? device;
    return slash === -1 ? id : id + text.slice(slash);
  }
}
