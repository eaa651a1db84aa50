/** Types a text over the protocol, one key after the other, as a client that never says where its cursor is. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Diagnostic, Position } from 'vscode-languageserver-protocol/node';
import { DiagnosticSeverity } from 'vscode-languageserver-protocol/node';
import { Client } from '../lsp/client.ts';
import { type Key, type Script, after } from './keys.ts';

/** What is shown right after a key. */
export interface Shown {
  readonly text: string;
  /** Behind what was typed. */
  readonly cursor: Position;
  readonly diagnostics: readonly Diagnostic[];
}

/** What is shown of the file before, and then what the publication of each key's own version says of it. */
export async function* type(client: Client, uri: string, { before, keys }: Script): AsyncGenerator<Shown> {
  let text = before;
  await client.openUri(uri, before);
  yield { text, cursor: positionAt(text, keys[0]?.at ?? 0), diagnostics: await client.diagnostics(uri) };
  for (const key of keys) {
    const range = { start: positionAt(text, key.at), end: positionAt(text, key.at + key.without) };
    await client.change(uri, key.text, range);
    text = after(text, key);
    yield { text, cursor: positionAt(text, endOf(key)), diagnostics: await client.diagnostics(uri) };
  }
  await client.close(uri);
}

function endOf({ at, text }: Key): number {
  return at + text.length;
}

function positionAt(text: string, offset: number): Position {
  const start = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
  return { line: text.slice(0, start).split('\n').length - 1, character: offset - start };
}

/** Whether it is shown in red or yellow. */
export function isMistake({ severity }: Diagnostic): boolean {
  return severity === DiagnosticSeverity.Error || severity === DiagnosticSeverity.Warning;
}

/** Keys of a right text that is typed. */
export interface Tally {
  readonly keys: number;
  /** After which a mistake is shown that was not there when the typing began. */
  readonly marked: number;
  /** Those where one stands farther off than the line above the cursor, or below it. */
  readonly far: number;
  /** The first of them, for whoever has to find out why. */
  readonly examples: readonly string[];
}

/** The name of the file that is typed, and the texts of those beside it, on disk. */
export interface Beside {
  readonly name: string;
  readonly beside: Readonly<Record<string, string>>;
}

/** Types each of the scripts into a site of its own, in a folder below the one given. */
export async function tally(
  client: Client,
  folder: string,
  scripts: readonly Script[],
  { name, beside }: Beside = { name: 'home.site.yaml', beside: {} },
): Promise<Tally> {
  let [keys, marked, far] = [0, 0, 0];
  const examples: string[] = [];
  for (const [index, script] of scripts.entries()) {
    let atFirst: ReadonlySet<string> | undefined;
    const own = join(folder, String(index));
    if (Object.keys(beside).length > 0) mkdirSync(own, { recursive: true });
    for (const [other, text] of Object.entries(beside)) writeFileSync(join(own, other), text);
    for await (const { text, cursor, diagnostics } of type(client, pathToFileURL(join(own, name)).href, script)) {
      if (atFirst === undefined) {
        atFirst = new Set(diagnostics.map((one) => identity(one, text)));
        continue;
      }
      const marks = diagnostics.filter((one) => isMistake(one) && atFirst?.has(identity(one, text)) !== true);
      keys++;
      if (marks.length > 0) marked++;
      if (marks.some(({ range }) => Math.abs(range.start.line - cursor.line) > NEAR)) far++;
      const [first] = marks;
      if (first !== undefined)
        examples.push(`${text.split('\n')[cursor.line] ?? ''} | ${cursor.line}: ${describe(first)}`);
    }
  }
  return { keys, marked, far, examples: examples.slice(0, 10) };
}

/** Lines: of the item itself, mostly. */
const NEAR = 12;

/** The rule, and the line where it stands: what stood before may count other things while it is typed. */
function identity({ code, range }: Diagnostic, text: string): string {
  return `${String(code)} ${text.split('\n')[range.start.line] ?? ''}`;
}

function describe({ code, message, range }: Diagnostic): string {
  return `${range.start.line} ${String(code)}: ${JSON.stringify(message)}`;
}
