/** Figures beside the text and above it: inlay hints and code lenses. */

import { inlayHints } from '../../features/inlay-hints.ts';
import { lensTitle, lenses } from '../../features/lenses.ts';
import type { CodeLens, Command } from 'vscode-languageserver-protocol';
import { locate } from '../../site/locate.ts';
import type { Handler } from '../session.ts';

/** The data of a lens whose title is computed once it is in sight. */
interface Late {
  readonly uri: string;
}

/** A lens without a command's name is text alone. */
function said(title: string): Command {
  return { title, command: '' };
}

export const besideTextHandler: Handler = {
  capabilities: { inlayHintProvider: true, codeLensProvider: { resolveProvider: true } },
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
      return lenses(asked.checked, asked.file).map(({ at, title }): CodeLens => {
        const range = asked.convert.range(at);
        if (title === undefined) return { range, data: { uri: textDocument.uri } satisfies Late };
        return { range, command: said(title) };
      });
    });
    connection.onCodeLensResolve(async (lens) => {
      const late = lens.data as Late | undefined;
      if (late === undefined) return lens;
      const asked = await session.asked(late.uri);
      const item = asked === undefined ? undefined : locate(asked.file, asked.offset(lens.range.start))?.item;
      const title = asked === undefined || item === undefined ? undefined : lensTitle(asked.checked, item);
      return { ...lens, command: said(title ?? '') };
    });
  },
};
