/** Where a name is declared, where it is used, and where it stands in one file. */

import type { Checked } from '../../lint/check.ts';
import { type Place, fileOf } from '../../site/item.ts';
import type { SiteText } from '../../site/folder.ts';
import type { Named } from './named.ts';
import { nameAt, placeOfUse, usesOf } from './uses.ts';

export interface Definition {
  readonly from: Place;
  readonly named: Named;
  /** The declaration; for the unnamed port of a device, that of the device. */
  readonly to: readonly Place[];
}

export function definition(checked: Checked, file: SiteText, offset: number): Definition | undefined {
  const found = nameAt(checked, file, offset);
  if (found === undefined) return undefined;
  const { named, place } = found;
  const own = declarations(checked, named);
  const device: Named = { kind: 'devices', name: named.name.split('/')[0] ?? '' };
  const isImplied =
    named.kind === 'ports' &&
    own.length === 0 &&
    checked.plan.site.deviceByName.get(device.name)?.portByName.has(named.name.slice(device.name.length + 1));
  return { from: place, named, to: isImplied === true ? declarations(checked, device) : own };
}

function declarations(checked: Checked, named: Named): Place[] {
  return usesOf(checked, named)
    .filter(({ isDeclaration }) => isDeclaration)
    .map(placeOfUse);
}

export function references(checked: Checked, file: SiteText, offset: number, withDeclaration: boolean): Place[] {
  const found = nameAt(checked, file, offset);
  if (found === undefined) return [];
  return usesOf(checked, found.named)
    .filter(({ isDeclaration }) => withDeclaration || !isDeclaration)
    .map(placeOfUse);
}

export interface Highlight {
  readonly at: Place;
  readonly isDeclaration: boolean;
}

export function highlights(checked: Checked, file: SiteText, offset: number): Highlight[] {
  const found = nameAt(checked, file, offset);
  if (found === undefined) return [];
  return usesOf(checked, found.named)
    .map((use) => ({ at: placeOfUse(use), isDeclaration: use.isDeclaration }))
    .filter(({ at }) => fileOf(at).uri === file.uri);
}
