/** The outline of a file, and the names of all open sites. */

import { type DocumentSymbol, SymbolKind, type SymbolInformation } from 'vscode-languageserver-protocol';
import { type SymbolNode, documentSymbols, siteSymbols } from '../../features/symbols.ts';
import type { Converter } from '../convert.ts';
import type { Handler } from '../session.ts';

const KIND: Readonly<Record<SymbolNode['kind'], SymbolKind>> = {
  section: SymbolKind.Module,
  site: SymbolKind.Property,
  key: SymbolKind.Property,
  vlans: SymbolKind.Namespace,
  racks: SymbolKind.Array,
  devices: SymbolKind.Class,
  ports: SymbolKind.Field,
  cables: SymbolKind.Interface,
  multiplexes: SymbolKind.Event,
  services: SymbolKind.Variable,
  occasions: SymbolKind.Event,
  streams: SymbolKind.Variable,
  traffic: SymbolKind.Event,
  volumes: SymbolKind.Struct,
  recordings: SymbolKind.File,
  policies: SymbolKind.Property,
  lint: SymbolKind.Property,
};

export const symbolsHandler: Handler = {
  capabilities: { documentSymbolProvider: true, workspaceSymbolProvider: true },
  register(session) {
    const { connection } = session;
    connection.onDocumentSymbol(async ({ textDocument }): Promise<DocumentSymbol[] | SymbolInformation[] | null> => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const symbols = documentSymbols(asked.file).map((symbol) => shown(symbol, asked.convert));
      if (session.client.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true) return symbols;
      return symbols.flatMap((symbol) => flat(symbol, textDocument.uri, undefined));
    });
    connection.onWorkspaceSymbol(async ({ query }) => {
      const found: SymbolInformation[] = [];
      for (const site of session.sites.all()) {
        await site.loaded;
        const { plan, files } = site.now();
        const convert = session.converter(files);
        for (const { name, kind, detail, at } of siteSymbols(plan.site, query)) {
          found.push({
            name,
            kind: KIND[kind],
            location: convert.location(at),
            ...(detail !== '' && { containerName: detail }),
          });
        }
      }
      return found;
    });
  },
};

function shown({ name, kind, detail, whole, at, children }: SymbolNode, convert: Converter): DocumentSymbol {
  return {
    name: name === '' ? '?' : name,
    kind: KIND[kind],
    ...(detail !== '' && { detail }),
    range: convert.range(whole),
    selectionRange: convert.range(at),
    children: children.map((child) => shown(child, convert)),
  };
}

function flat(
  { name, kind, range, children }: DocumentSymbol,
  uri: string,
  containerName: string | undefined,
): SymbolInformation[] {
  const own: SymbolInformation = {
    name,
    kind,
    location: { uri, range },
    ...(containerName !== undefined && { containerName }),
  };
  return [own, ...(children ?? []).flatMap((child) => flat(child, uri, name))];
}
