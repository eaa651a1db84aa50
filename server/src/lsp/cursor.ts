/** Our own client reports where its cursor is; for any other client the server uses the place of the last edit. */

import { NotificationType, type Position } from 'vscode-languageserver-protocol';

/** The cursor was moved in a document, and not by an edit that ends there. */
export const cursorMoved = new NotificationType<{ readonly uri: string; readonly position: Position }>(
  'plumbline/cursor',
);
