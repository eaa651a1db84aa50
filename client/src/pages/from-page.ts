// What a page sends to the extension. A page may send anything, so each message is taken by its shape.

/** The attributes of the element that the user has chosen in a page. */
export type Chosen =
  | { readonly names: string; readonly name: string }
  /** Line and character from 0. */
  | { readonly uri: string; readonly line: number; readonly character: number };

export interface FromPage {
  readonly isReady: boolean;
  readonly chosen?: Chosen;
  /** The thing whose hover is wanted. */
  readonly hover?: { readonly names: string; readonly name: string };
}

/** The parts of a message that have the shape of one. */
export function messageOf(sent: unknown): FromPage {
  const chosen = chosenIn(part(sent, 'chosen'));
  const hover = namedIn(part(sent, 'hover'), 'name');
  return {
    isReady: part(sent, 'ready') === true,
    ...(chosen !== undefined && { chosen }),
    ...(hover !== undefined && { hover }),
  };
}

function chosenIn(sent: unknown): Chosen | undefined {
  const uri = part(sent, 'uri');
  if (uri === undefined) return namedIn(sent, 'name') ?? namedIn(sent, 'at');
  const [line, character] = [count(part(sent, 'line')), count(part(sent, 'character'))];
  return typeof uri === 'string' && line !== undefined && character !== undefined
    ? { uri, line, character }
    : undefined;
}

/** @param key of the name: in a drawing it is `at` */
function namedIn(sent: unknown, key: 'name' | 'at'): { names: string; name: string } | undefined {
  const [names, name] = [part(sent, 'names'), part(sent, key)];
  return typeof names === 'string' && typeof name === 'string' ? { names, name } : undefined;
}

/** The number that an attribute says; the editor counts lines in 31 bits. */
function count(attribute: unknown): number | undefined {
  return typeof attribute === 'string' && /^\d{1,9}$/.test(attribute) ? Number(attribute) : undefined;
}

/** An own value, as what a page sends has no other. */
function part(value: unknown, key: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.getOwnPropertyDescriptor(value, key)?.value;
}

/** An address in its parts (RFC 3986, 3), with nothing encoded in its path. */
export interface Address {
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
  readonly query: string;
  readonly fragment: string;
}

/** Whether a file is one of the site in a folder: nothing else in a page leads to a file. */
export function isOfSite(file: Address, folder: Address): boolean {
  const { scheme, authority, query, fragment } = file;
  const [path, within] = [pathOf(file), pathOf(folder)];
  const end = path.lastIndexOf('/');
  return (
    scheme === folder.scheme &&
    authority === folder.authority &&
    path.slice(0, end) === within.replace(/\/$/, '') &&
    // A backslash may separate folders too.
    /^[^\\]*\.site\.yaml$/s.test(path.slice(end + 1)) &&
    query === folder.query &&
    fragment === ''
  );
}

/** The path, with the letter of a drive as the editor writes it. */
function pathOf({ path }: Address): string {
  return path.replace(/^\/[A-Z]:/, (drive) => drive.toLowerCase());
}
