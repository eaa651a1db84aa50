/** Renames a thing wherever it is mentioned, or says why it cannot. */

import type { Checked } from '../../lint/check.ts';
import { type Edit, scalarText } from '../../site/edit.ts';
import { THING, thingsOf } from '../../site/declared.ts';
import { type Place, isName } from '../../site/item.ts';
import type { SiteText } from '../../site/folder.ts';
import { locate } from '../../site/locate.ts';
import { portNames } from '../../site/port-names.ts';
import type { Named, NamedKind } from './named.ts';
import { type Use, nameAt, placeOfUse, usesOf } from './uses.ts';

export interface RenameRefusal {
  readonly refused: string;
}

const KIND: Readonly<Record<NamedKind, string>> = { ...THING, rules: 'rule', ports: 'port' };

/** What can be renamed at an offset: its place, and the name as it is. */
export function renameable(
  checked: Checked,
  file: SiteText,
  offset: number,
): { readonly at: Place; readonly name: string } | RenameRefusal {
  const found = nameAt(checked, file, offset);
  if (found === undefined) return { refused: notAName(file, offset) };
  const { named } = found;
  const refused = refusal(checked, named, found.use);
  return refused === undefined ? { at: found.place, name: ownName(named) } : { refused };
}

export function rename(
  checked: Checked,
  file: SiteText,
  offset: number,
  to: string,
): { readonly edits: readonly Edit[] } | RenameRefusal {
  const found = nameAt(checked, file, offset);
  if (found === undefined) return { refused: notAName(file, offset) };
  const { named } = found;
  const refused = refusal(checked, named, found.use) ?? clash(checked, named, to);
  if (refused !== undefined) return { refused };
  return {
    edits: usesOf(checked, named)
      .filter(({ isAlone }) => named.kind !== 'ports' || isAlone !== true)
      .map((use) => edit(use, to)),
  };
}

/** The port of `device/port`, and any other name as it is. */
function ownName({ kind, name }: Named): string {
  return kind === 'ports' ? name.slice(name.indexOf('/') + 1) : name;
}

function notAName(file: SiteText, offset: number): string {
  const location = locate(file, offset);
  if (location?.part === 'key') return 'This is a word of the site language, not a name of your site.';
  return 'There is no name here: names are those of devices, ports, VLANs, streams, other traffic, racks, volumes and recordings.';
}

function refusal(checked: Checked, named: Named, use: Use): string | undefined {
  const { kind, name } = named;
  if (kind === 'rules') return `${name} is the name of a rule, which is the same in all sites.`;
  if (use.isDeclaration && use.names.length !== 1)
    return `${String(use.keyPath[1])} declares several ports. Give the port that is to have a name an entry of its own.`;
  const declarations = usesOf(checked, named).filter(({ isDeclaration }) => isDeclaration);
  const [first, second] = declarations;
  if (first === undefined) {
    const [device = '', port] = name.split('/');
    const isImplied =
      kind === 'ports' && checked.plan.site.deviceByName.get(device)?.portByName.has(port ?? '') === true;
    return isImplied
      ? `${device} has one port, whose name is ${port} because \`ports\` does not give another.`
      : `There is no ${KIND[kind]} ${name}. Correct the name, or declare it first.`;
  }
  if (second !== undefined)
    return (
      `The ${KIND[kind]} ${name} is declared twice, so what mentions it could mean either. Give one of the two ` +
      'another name by hand first.'
    );
  if (first.names.length !== 1) {
    return (
      `Port ${ownName(named)} is declared by the range ${String(first.keyPath[1])}. Give it an entry of its own ` +
      'first.'
    );
  }
  return undefined;
}

function clash(checked: Checked, named: Named, to: string): string | undefined {
  const { site } = checked.plan;
  const { kind, name } = named;
  if (!isName(to))
    return `${to === '' ? 'An empty text' : `“${to}”`} cannot be a name: names consist of letters, digits, - and _.`;
  if (kind === 'ports') {
    if (portNames(to).length !== 1 || portNames(to)[0] !== to) return `${to} would be a range of ports.`;
    const device = site.deviceByName.get(name.slice(0, name.indexOf('/')));
    return to !== ownName(named) && device?.portByName.has(to) === true
      ? `${device.name} has a port ${to} already.`
      : undefined;
  }
  const isTaken = kind !== 'rules' && to !== name && thingsOf(site, kind).has(to);
  return isTaken ? `There is a ${KIND[kind]} ${to} already.` : undefined;
}

/** Quotes stay where they were; a name that YAML would not read as text gets them. */
function edit(use: Use, to: string): Edit {
  const at = placeOfUse(use);
  const written = at.piece.text.slice(at.start, at.end);
  const quote = written.charAt(0);
  if (quote === '"' || quote === "'") return { at: { ...at, start: at.start + 1, end: at.end - 1 }, text: to };
  const isPart = use.within !== undefined || use.part === 'key' || use.names[0]?.kind === 'ports';
  return { at, text: isPart ? to : scalarText(to, true) };
}
