/** Folding, growing selections, links to the pages of rules. */

import { FoldingRangeKind, type SelectionRange } from 'vscode-languageserver-protocol';
import { folds } from '../../features/folding.ts';
import { ruleLinks } from '../../features/links.ts';
import { selections } from '../../features/selection.ts';
import type { Handler } from '../session.ts';

export const structureHandler: Handler = {
  capabilities: { foldingRangeProvider: true, selectionRangeProvider: true, documentLinkProvider: {} },
  register(session) {
    const { connection } = session;
    connection.onFoldingRanges(async ({ textDocument }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      return folds(asked.file).map(({ first, last, isComment }) => ({
        startLine: first,
        endLine: last,
        ...(isComment && { kind: FoldingRangeKind.Comment }),
      }));
    });
    connection.onSelectionRanges(async ({ textDocument, positions }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      const lines = asked.file.lines();
      return positions.map((position) => {
        let range: SelectionRange | undefined;
        for (const { start, end } of selections(asked.file, asked.offset(position)).reverse()) {
          range = {
            range: { start: lines.position(start), end: lines.position(end) },
            ...(range !== undefined && { parent: range }),
          };
        }
        return range ?? { range: { start: position, end: position } };
      });
    });
    connection.onDocumentLinks(async ({ textDocument }) => {
      const asked = await session.asked(textDocument.uri);
      if (asked === undefined) return null;
      return ruleLinks(asked.file).flatMap(({ at, rule }) => {
        const target = session.pages.of(rule);
        return target === undefined
          ? []
          : [{ range: asked.convert.range(at), target, tooltip: 'Open the page of the rule' }];
      });
    });
  },
};
