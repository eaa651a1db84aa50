/** A client that edits, asks, cancels and closes at random, of several sites, whose files change on disk as well. */

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  CancellationTokenSource,
  type Diagnostic,
  FileChangeType,
  LSPErrorCodes,
  ResponseError,
} from 'vscode-languageserver-protocol/node';
import { Lines } from '../../server/src/text/lines.ts';
import { corpus } from '../fuzz/corpus.ts';
import { editing } from '../fuzz/edits.ts';
import type { Random } from '../fuzz/random.ts';
import type { Client } from '../lsp/client.ts';
import { type Texts, diagnosticsOf, foundByFile } from '../site.ts';

/** A folder with what the editor and the disk have of it. */
interface Site {
  readonly folder: string;
  readonly isInWorkspace: boolean;
  /** Of open files, what the editor has. */
  readonly open: Map<string, string>;
  readonly disk: Map<string, string>;
  /** Whether the server has met it, and has not let it go. */
  known: boolean;
  /** Edits to come, as the texts after each. */
  readonly states: Iterator<Texts>;
}

const others = corpus.flatMap((texts) => Object.values(texts));
const QUESTIONS = ['hover', 'completion', 'documentSymbol', 'foldingRange', 'semanticTokens/full', 'codeAction'];

export class RandomClient {
  readonly counts = { edits: 0, questions: 0, cancelled: 0, findings: 0 };
  private readonly client: Client;
  private readonly random: Random;
  private readonly sites: readonly Site[];
  private readonly asked: Promise<unknown>[] = [];

  /** `inside` and `outside` are folders in the workspace of the client and elsewhere. */
  constructor(client: Client, random: Random, inside: readonly string[], outside: readonly string[]) {
    this.client = client;
    this.random = random;
    this.sites = [...inside, ...outside].map((folder) => this.site(folder, inside.includes(folder)));
  }

  private site(folder: string, isInWorkspace: boolean): Site {
    const begin = this.random.pick(corpus) ?? {};
    const states = editing(begin, this.random, Infinity, others)[Symbol.iterator]();
    mkdirSync(folder, { recursive: true });
    const site: Site = { folder, isInWorkspace, open: new Map(), disk: new Map(), known: false, states };
    for (const [name, text] of Object.entries(begin)) this.write(site, name, text);
    return site;
  }

  /** One thing that happens to one of the sites. */
  async act(): Promise<void> {
    const site = this.random.pick(this.sites);
    if (site === undefined) return;
    const { value: texts } = site.states.next() as IteratorYieldResult<Texts>;
    const name = this.random.pick([...new Set([...Object.keys(texts), ...site.disk.keys(), ...site.open.keys()])]);
    if (name === undefined) return;
    const text = texts[name] ?? '';
    const roll = this.random.below(20);
    if (roll < 3) {
      for (const each of this.random.some([...new Set([name, ...site.disk.keys()])], 4)) await this.open(site, each);
    } else if (roll < 12) await this.edit(site, name, text);
    else if (roll === 12) for (const each of site.open.keys()) await this.close(site, each);
    else if (roll === 13) await this.close(site, name);
    else if (roll === 14) {
      await this.open(site, name);
      await this.close(site, name);
    } else if (roll === 15) {
      this.write(site, name, site.open.get(name) ?? text); // Saved, or changed by another program.
      await this.client.changedOnDisk(join(site.folder, name));
    } else if (roll === 16 && this.random.chance(0.3)) await this.remove(site, name);
    else this.ask(site, name);
  }

  /** Waits until what is shown of each site is what a server that had just read it would show. */
  async hold(): Promise<void> {
    await Promise.all(this.asked.splice(0));
    for (const site of this.sites) {
      const texts = Object.fromEntries(
        [...site.disk, ...site.open].map(([name, text]) => [this.uri(site, name), text]),
      );
      const wanted = new Map([...this.shown.keys()].map((uri): [string, string[]] => [uri, []]));
      if (site.known)
        for (const [uri, found] of foundByFile(texts, diagnosticsOf(texts)))
          wanted.set(uri, found.map(({ line, start, rule, message }) => `${line}:${start} ${rule} ${message}`).sort());
      for (const [uri, found] of wanted) {
        if (!uri.startsWith(`${pathToFileURL(site.folder).href}/`)) continue;
        await this.client
          .becomes(uri, (all) => isSame(all.map(told).sort(), found))
          .catch((error: unknown) => {
            assert.deepEqual((this.client.shown(uri) ?? []).map(told).sort(), found, `${uri}\n${texts[uri] ?? ''}`);
            throw error;
          });
        this.shown.add(uri);
        this.counts.findings += found.length;
      }
    }
  }

  /** Closes and deletes all there is; nothing is shown any more. */
  async end(): Promise<void> {
    for (const site of this.sites) {
      for (const name of site.open.keys()) await this.close(site, name);
      for (const name of site.disk.keys()) await this.remove(site, name);
    }
    await this.hold();
    for (const { folder } of this.sites) rmSync(folder, { recursive: true });
  }

  /** Files of which something was shown. */
  private readonly shown = new Set<string>();

  private uri({ folder }: Site, name: string): string {
    return pathToFileURL(join(folder, name)).href;
  }

  /** Tells of the files that are there from the start: the workspace was looked through before. */
  async begin(): Promise<void> {
    for (const { folder, disk, isInWorkspace } of this.sites)
      if (isInWorkspace)
        for (const name of disk.keys()) await this.client.changedOnDisk(join(folder, name), FileChangeType.Created);
  }

  private write(site: Site, name: string, text: string): void {
    const { folder, disk, isInWorkspace } = site;
    if (isInWorkspace) site.known = true;
    writeFileSync(join(folder, name), text);
    // As it is read: half of a surrogate pair is no UTF-8.
    disk.set(name, new TextDecoder().decode(readFileSync(join(folder, name))));
  }

  private async remove(site: Site, name: string): Promise<void> {
    rmSync(join(site.folder, name), { force: true });
    site.disk.delete(name);
    await this.client.changedOnDisk(join(site.folder, name), FileChangeType.Deleted);
    this.letGo(site);
  }

  private async open(site: Site, name: string): Promise<void> {
    if (site.open.has(name)) return;
    const text = site.disk.get(name) ?? '';
    site.open.set(name, text);
    site.known = true;
    await this.client.open(join(site.folder, name), text);
  }

  private async close(site: Site, name: string): Promise<void> {
    if (!site.open.delete(name)) return;
    await this.client.close(this.uri(site, name));
    this.letGo(site);
  }

  private letGo(site: Site): void {
    if (site.open.size === 0 && (!site.isInWorkspace || site.disk.size === 0)) site.known = false;
  }

  /** Replaces what differs, as an editor does. */
  private async edit(site: Site, name: string, to: string): Promise<void> {
    await this.open(site, name);
    const from = site.open.get(name) ?? '';
    site.open.set(name, to);
    this.counts.edits++;
    let start = 0;
    while (start < from.length && from[start] === to[start]) start++;
    let same = 0;
    while (same < from.length - start && same < to.length - start && from.at(-1 - same) === to.at(-1 - same)) same++;
    const lines = new Lines(from);
    const isPlain = !from.includes('\r') && !to.includes('\r');
    const range = { start: lines.position(start), end: lines.position(from.length - same) };
    if (isPlain) await this.client.change(this.uri(site, name), to.slice(start, to.length - same), range);
    else await this.client.change(this.uri(site, name), to);
  }

  private ask(site: Site, name: string): void {
    const uri = this.uri(site, name);
    const lines = (site.open.get(name) ?? '').split('\n');
    const line = this.random.below(lines.length);
    const position = { line, character: this.random.below((lines[line]?.length ?? 0) + 1) };
    const range = { start: position, end: position };
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri }, position, range, context: { diagnostics: [] } };
    const question = `textDocument/${this.random.pick(QUESTIONS) ?? ''}`;
    this.counts.questions++;
    const answer = this.client.connection.sendRequest(question, params, source.token).catch((error: unknown) => {
      if (!(error instanceof ResponseError) || error.code !== LSPErrorCodes.RequestCancelled) throw error;
    });
    this.asked.push(answer);
    if (!this.random.chance(0.4)) return;
    source.cancel();
    this.counts.cancelled++;
  }
}

function told({ range: { start }, code, message }: Diagnostic): string {
  return `${start.line}:${start.character} ${String(code)} ${String(message)}`;
}

function isSame(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
