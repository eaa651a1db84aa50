/** Figures beside the text and above it: inlay hints and code lenses. */

import { inlayHints } from '../../features/inlay-hints.ts';
import { lenses } from '../../features/lenses.ts';
import type { Handler } from '../session.ts';

export const besideTextHandler: Handler = {
  capabilities: { inlayHintProvider: true, codeLensProvider: {} },
  register(session) {
    const { connection } = session;
    connection.languages.inlayHint.on(async ({ textDocument, range }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const { checked, file, offset, convert } = asked;
      return inlayHints(checked, file, offset(range.start), offset(range.end), session.settings.inlayHints).map(
        ({ at, label, tooltip }) => ({
          position: convert.range(at).start,
          label,
          tooltip,
          paddingLeft: true,
        }),
      );
    });
    connection.onCodeLens(async ({ textDocument }) => {
      if (!session.settings.codeLens) return null;
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      // A lens without a command's name is text alone.
      return lenses(asked.checked, asked.file).map(({ at, title }) => ({
        range: asked.convert.range(at),
        command: { title, command: '' },
      }));
    });
  },
};
