/** Sets the VLANs of a port. */

import { type Edit, addEntry, remove, scalarText, setKey, setValue } from './edit.ts';
import type { Port } from './model.ts';
import { splitOut } from './port-copies.ts';
import { portNames } from './port-names.ts';
import { isName } from './item.ts';

/** The VLANs of a port as its keys declare them. */
export interface PortVlans {
  readonly vlan?: string | undefined;
  readonly trunk?: readonly string[] | undefined;
  readonly native?: string | undefined;
}

const KEYS = ['vlan', 'trunk', 'native'] as const;

export function vlansOf({ vlan, trunk, native }: Port): PortVlans {
  return { vlan, trunk, native };
}

/** No edits where the port has these VLANs; a port of a range gets its own entry. `undefined` for an invalid name. */
export function setVlans(port: Port, wanted: PortVlans): Edit[] | undefined {
  const edits = setVlansOfRange(port, wanted);
  return edits === undefined ? undefined : ofOnePort(port, edits);
}

/** Of all ports that share the entry of a port. */
export function setVlansOfRange(port: Port, wanted: PortVlans): Edit[] | undefined {
  const names = [wanted.vlan, wanted.native, ...(wanted.trunk ?? [])];
  if (names.some((name) => name !== undefined && !isName(name))) return undefined;
  const { item } = port.device;
  const at = (name: string): readonly (string | number)[] => [...port.keyPath, name];
  const has = KEYS.filter((name) => port[name] !== undefined);
  const lacks = KEYS.filter((name) => wanted[name] !== undefined && port[name] === undefined);
  const spare = has.filter((name) => wanted[name] === undefined);
  const edits: (Edit | undefined)[] = has
    .filter((name) => wanted[name] !== undefined && text(wanted[name]) !== text(port[name]))
    .map((name) => setValue(item, at(name), text(wanted[name])));
  for (const name of lacks) {
    const instead = spare.shift();
    if (instead === undefined) edits.push(addEntry(item, port.keyPath, name, text(wanted[name])));
    else edits.push(setKey(item, at(instead), name), setValue(item, at(instead), text(wanted[name])));
  }
  for (const name of spare) edits.push(remove(item, at(name)));
  const possible = edits.filter((edit) => edit !== undefined);
  return possible.length < edits.length ? undefined : possible;
}

/** The edits of a port's entry, made so that they change no other port of the same range. */
export function ofOnePort(port: Port, edits: readonly Edit[]): Edit[] | undefined {
  const key = port.keyPath[1];
  if (edits.length === 0 || key === undefined || portNames(String(key)).length === 1) return [...edits];
  const edit = splitOut(port, edits);
  return edit === undefined ? undefined : [edit];
}

function text(names: string | readonly string[] | undefined): string {
  if (names === undefined || typeof names === 'string') return scalarText(names ?? '', true);
  return `[${names.map((name) => scalarText(name, true)).join(', ')}]`;
}
