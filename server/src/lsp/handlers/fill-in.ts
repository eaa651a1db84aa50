/** Fills in all `auto` values of a site: as a command for any client, and as a request for one that shows the list. */

import { MessageType, ShowMessageNotification } from 'vscode-languageserver-protocol';
import { fillIn } from '../../features/actions/fill-in.ts';
import { type FillAnswer, fillIn as fillInRequest } from '../fill-in-request.ts';
import type { Handler, Session } from '../session.ts';
import { withTexts } from '../sound-params.ts';

/** Takes the address of a file of the site; a message lists what was filled in, and what was not and why. */
export const FILL_IN = 'plumbline.fillInSite';

export const fillInHandler: Handler = {
  capabilities: { executeCommandProvider: { commands: [FILL_IN] } },
  register(session) {
    const { connection } = session;
    connection.onRequest(fillInRequest, (wanted) => fill(session, withTexts(wanted, 'uri').uri));
    connection.onExecuteCommand(async ({ command, arguments: [uri] = [] }) => {
      const answer = command === FILL_IN && typeof uri === 'string' ? await fill(session, uri) : null;
      if (answer === null) return null;
      const { summary, filled, left } = answer;
      const message = [summary, ...[...left, ...filled].map(({ words }) => words)].join('\n');
      const type = left.length > 0 ? MessageType.Warning : MessageType.Info;
      await connection.sendNotification(ShowMessageNotification.type, { type, message });
      return answer;
    });
  },
};

async function fill(session: Session, uri: string): Promise<FillAnswer | null> {
  const asked = await session.asked(uri);
  if (asked === undefined) return null;
  const { edits, files, summary, filled, left } = fillIn(asked.checked);
  if (edits.length > 0) {
    const edit = asked.convert.workspaceEdit(edits);
    const { applied } = await session.connection.workspace.applyEdit({ label: 'Fill in', edit });
    if (!applied) return null;
  }
  const convert = session.converter(files);
  const located = (lines: typeof filled): FillAnswer['filled'] =>
    lines.map(({ at, words }) => ({ at: convert.location(at), words }));
  return { summary, filled: located(filled), left: located(left) };
}
