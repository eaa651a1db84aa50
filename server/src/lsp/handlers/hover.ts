import type { Hover } from 'vscode-languageserver-protocol';
import { hover } from '../../features/hover/hover.ts';
import type { Handler } from '../session.ts';

export const hoverHandler: Handler = {
  capabilities: { hoverProvider: true },
  register(session) {
    session.connection.onHover(async ({ textDocument, position }): Promise<Hover | null> => {
      const asked = await session.asked(textDocument.uri);
      const { schemaFeatures } = session.settings;
      const found =
        asked === undefined ? undefined : hover(asked.checked, asked.file, asked.offset(position), { schemaFeatures });
      return asked === undefined || found === undefined
        ? null
        : { contents: { kind: 'markdown', value: found.markdown }, range: asked.convert.range(found.at) };
    });
  },
};
