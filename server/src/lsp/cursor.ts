/** What our own client says of its cursor; one that does not is served by the place of its last edit. */

import { NotificationType, type Position } from 'vscode-languageserver-protocol';

/** The cursor was moved in a document, and not by an edit that ends there. */
export const cursorMoved = new NotificationType<{ readonly uri: string; readonly position: Position }>(
  'plumbline/cursor',
);
