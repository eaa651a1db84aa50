// Hovers as the editor shows them best.
import * as vscode from 'vscode';
import type { HoverMiddleware } from 'vscode-languageclient';
import { spacedTables } from './spaced-tables.ts';

/** The editor leaves no room between the columns of a table: figures and notes would run into each other. */
export const spacedHovers: HoverMiddleware = {
  provideHover: async (document, position, token, next) => {
    const hover = await next(document, position, token);
    for (const content of hover?.contents ?? [])
      if (content instanceof vscode.MarkdownString) content.value = spacedTables(content.value);
    return hover;
  },
};
