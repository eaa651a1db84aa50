/** Colours for names, by what they name. */

import { SemanticTokenTypes, type SemanticTokens, type SemanticTokensDelta } from 'vscode-languageserver-protocol';
import { SemanticTokensBuilder } from 'vscode-languageserver';
import { nameTokens } from '../../features/tokens.ts';
import type { NamedKind } from '../../features/names/named.ts';
import type { Asked, Handler } from '../session.ts';

const TYPE: Readonly<Record<NamedKind, SemanticTokenTypes>> = {
  devices: SemanticTokenTypes.class,
  ports: SemanticTokenTypes.property,
  vlans: SemanticTokenTypes.namespace,
  racks: SemanticTokenTypes.enum,
  streams: SemanticTokenTypes.variable,
  volumes: SemanticTokenTypes.struct,
  traffic: SemanticTokenTypes.interface,
  recordings: SemanticTokenTypes.event,
  multiplexes: SemanticTokenTypes.type,
  services: SemanticTokenTypes.parameter,
  occasions: SemanticTokenTypes.enumMember,
  rules: SemanticTokenTypes.macro,
};

const TYPES = Object.values(TYPE);

/** A modifier of every token, so that an editor can colour all references where its theme has no colour for a type. */
const REFERENCE = 'reference';

export const tokensHandler: Handler = {
  capabilities: {
    semanticTokensProvider: {
      legend: { tokenTypes: TYPES, tokenModifiers: [REFERENCE] },
      full: { delta: true },
      range: true,
    },
  },
  register(session) {
    const { semanticTokens } = session.connection.languages;
    const builders = new Map<string, SemanticTokensBuilder>();
    const builderOf = (uri: string): SemanticTokensBuilder => {
      let builder = builders.get(uri);
      if (builder === undefined) builders.set(uri, (builder = new SemanticTokensBuilder()));
      return builder;
    };
    session.onClosed((uri) => builders.delete(uri));
    semanticTokens.on(async ({ textDocument }): Promise<SemanticTokens> => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return { data: [] };
      const builder = builderOf(asked.file.uri);
      // Forgets the tokens that a delta would be based on.
      builder.previousResult('');
      fill(builder, asked);
      return builder.build();
    });
    semanticTokens.onDelta(
      async ({ textDocument, previousResultId }): Promise<SemanticTokens | SemanticTokensDelta> => {
        const asked = await session.asked(textDocument.uri);
        if (asked === undefined) return { data: [] };
        const builder = builderOf(asked.file.uri);
        builder.previousResult(previousResultId);
        fill(builder, asked);
        return builder.buildEdits();
      },
    );
    semanticTokens.onRange(async ({ textDocument, range }): Promise<SemanticTokens> => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return { data: [] };
      const builder = new SemanticTokensBuilder();
      fill(builder, asked, (line) => line >= range.start.line && line <= range.end.line);
      return builder.build();
    });
  },
};

function fill(
  builder: SemanticTokensBuilder,
  { checked, file, convert }: Asked,
  wanted: (line: number) => boolean = () => true,
): void {
  for (const { kind, at } of nameTokens(checked, file)) {
    const { line, character } = convert.range(at).start;
    if (wanted(line)) builder.push(line, character, at.end - at.start, TYPES.indexOf(TYPE[kind]), 1);
  }
}
