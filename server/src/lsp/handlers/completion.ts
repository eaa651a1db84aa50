import {
  type CompletionItem,
  CompletionItemKind,
  CompletionTriggerKind,
  InsertTextFormat,
  InsertTextMode,
  type Range,
} from 'vscode-languageserver-protocol';
import { complete } from '../../features/completion/completion.ts';
import { type Offer, type OfferKind, withoutTabStops } from '../../features/completion/offer.ts';
import type { Handler, Session } from '../session.ts';

const KIND: Readonly<Record<OfferKind, CompletionItemKind>> = {
  section: CompletionItemKind.Module,
  key: CompletionItemKind.Property,
  snippet: CompletionItemKind.Snippet,
  word: CompletionItemKind.EnumMember,
  quantity: CompletionItemKind.Unit,
  address: CompletionItemKind.Value,
  number: CompletionItemKind.Value,
  devices: CompletionItemKind.Class,
  vlans: CompletionItemKind.Folder,
  racks: CompletionItemKind.Enum,
  multiplexes: CompletionItemKind.Event,
  services: CompletionItemKind.Variable,
  streams: CompletionItemKind.Variable,
  traffic: CompletionItemKind.Event,
  volumes: CompletionItemKind.Struct,
  recordings: CompletionItemKind.File,
  rules: CompletionItemKind.Reference,
  ports: CompletionItemKind.Field,
};

export const completionHandler: Handler = {
  capabilities: { completionProvider: { triggerCharacters: [' ', '/', '{', '[', ',', '-', '.'] } },
  register(session) {
    session.connection.onCompletion(async ({ textDocument, position, context }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const { schemaFeatures } = session.settings;
      // A space that somebody types on an empty line only leads to the column that is meant.
      const anyColumn = context?.triggerKind !== CompletionTriggerKind.TriggerCharacter;
      const found = complete(asked.checked, asked.file, asked.offset(position), { schemaFeatures, anyColumn });
      if (found === undefined) return null;
      const range = asked.convert.range(found.at);
      return {
        isIncomplete: found.isPartial,
        items: found.offers.map((offer, index) => item(session, offer, index, range)),
      };
    });
  },
};

function item({ client, options }: Session, offer: Offer, index: number, range: Range): CompletionItem {
  const { label, kind, detail, documentation, insert = label, isSnippet = false, goesOn = false } = offer;
  const able = client.textDocument?.completion?.completionItem;
  const snippet = isSnippet && able?.snippetSupport === true;
  const text = snippet || !isSnippet ? insert : withoutTabStops(insert);
  // Further lines are indented here for a client that inserts text unchanged.
  const adjusts = snippet || able?.insertTextModeSupport?.valueSet.includes(InsertTextMode.adjustIndentation) === true;
  const newText =
    adjusts || !text.includes('\n') ? text : text.replaceAll('\n', `\n${' '.repeat(range.start.character)}`);
  return {
    label,
    kind: KIND[kind],
    ...(detail !== undefined && { detail }),
    ...(documentation !== undefined && { documentation: { kind: 'markdown', value: documentation } }),
    sortText: String(index).padStart(4, '0'),
    textEdit: { range, newText },
    ...(snippet && { insertTextFormat: InsertTextFormat.Snippet }),
    ...(adjusts && newText.includes('\n') && { insertTextMode: InsertTextMode.adjustIndentation }),
    ...(goesOn &&
      options.suggestCommand !== undefined && { command: { title: 'Suggest', command: options.suggestCommand } }),
  };
}
