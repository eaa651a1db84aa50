/** Publishes the diagnostics of a site, file by file, and their number. */

import type { Connection } from 'vscode-languageserver';
import type { Diagnostic as ProtocolDiagnostic } from 'vscode-languageserver-protocol';
import type { Checked } from '../lint/check.ts';
import type { Diagnostic } from '../lint/rule.ts';
import { fileOf } from '../site/item.ts';
import type { Addresses } from './addresses.ts';
import type { Converter } from './convert.ts';

/** The diagnostics of a file that were last sent to the client. */
interface Published {
  /** Version of the open document; `undefined` for a file that is on disk only. */
  readonly version: number | undefined;
  readonly diagnostics: readonly ProtocolDiagnostic[];
}

/** The findings to publish for a site. */
interface ToPublish {
  /** Address of the folder of the site. */
  readonly folder: string;
  readonly checked: Checked;
  /** Findings of rules that are not held back. */
  readonly diagnostics: readonly Diagnostic[];
  /** Findings of audits. */
  readonly audited: readonly Diagnostic[];
  readonly convert: Converter;
}

export class Publisher {
  private readonly connection: Connection;
  private readonly addresses: Addresses;
  private readonly versionOf: (uri: string) => number | undefined;
  /** Published diagnostics by the folder of the site and the address of the file. */
  private readonly published = new Map<string, Map<string, Published>>();

  constructor(connection: Connection, addresses: Addresses, versionOf: (uri: string) => number | undefined) {
    this.connection = connection;
    this.addresses = addresses;
    this.versionOf = versionOf;
  }

  /**
   * Replaces the diagnostics shown for the site. Nothing is sent for a file whose version and diagnostics are the same;
   * those of a file that is gone are removed.
   */
  publish({ folder, checked: { files, plan }, diagnostics, audited, convert }: ToPublish): void {
    const byUri = new Map<string, ProtocolDiagnostic[]>(files.map(({ uri }) => [uri, []]));
    for (const found of [diagnostics, audited])
      for (const diagnostic of found) byUri.get(fileOf(diagnostic.at).uri)?.push(convert.diagnostic(diagnostic));
    const shown = this.published.get(folder) ?? new Map<string, Published>();
    this.published.set(folder, shown);
    for (const uri of shown.keys()) if (!byUri.has(uri)) this.clear(shown, uri);
    for (const [uri, own] of byUri) this.publishFile(shown, uri, { version: this.versionOf(uri), diagnostics: own });
    void this.connection.sendNotification('plumbline/status', {
      site: plan.site.name ?? '',
      folder,
      devices: plan.site.devices.length,
      streams: plan.site.streams.length,
      errors: diagnostics.filter(({ severity }) => severity === 'error').length,
      warnings: diagnostics.filter(({ severity }) => severity === 'warning').length,
    });
  }

  /** Removes all diagnostics of the site of a folder. */
  retract(folder: string): void {
    const shown = this.published.get(folder) ?? new Map<string, Published>();
    this.published.delete(folder);
    for (const uri of shown.keys()) this.clear(shown, uri);
  }

  private clear(shown: Map<string, Published>, uri: string): void {
    shown.delete(uri);
    void this.connection.sendDiagnostics({ uri: this.addresses.shown(uri), diagnostics: [] });
  }

  private publishFile(shown: Map<string, Published>, uri: string, { version, diagnostics }: Published): void {
    const last = shown.get(uri);
    if (last !== undefined && last.version === version && isSameList(last.diagnostics, diagnostics)) return;
    shown.set(uri, { version, diagnostics });
    void this.connection.sendDiagnostics({
      uri: this.addresses.shown(uri),
      diagnostics: [...diagnostics],
      ...(version !== undefined && { version }),
    });
  }
}

function isSameList(a: readonly ProtocolDiagnostic[], b: readonly ProtocolDiagnostic[]): boolean {
  return a.length === b.length && a.every((one, i) => JSON.stringify(one) === JSON.stringify(b[i]));
}
