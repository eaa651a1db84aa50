/** The command that fills in whatever a site has as `auto`. */

import { fixFile } from '../../features/actions/fix-file.ts';
import type { Handler } from '../session.ts';

/** Takes the address of a file of the site. */
export const FILL_IN = 'plumbline.fillInSite';

export const fillInHandler: Handler = {
  capabilities: { executeCommandProvider: { commands: [FILL_IN] } },
  register(session) {
    session.connection.onExecuteCommand(async ({ command, arguments: [uri] = [] }) => {
      const asked = command === FILL_IN && typeof uri === 'string' ? await session.asked(uri) : undefined;
      if (asked === undefined) return null;
      const { checked, convert } = asked;
      const edits = checked.files.flatMap((file) => fixFile(checked, file, { rule: 'unfilled' }));
      if (edits.length > 0)
        await session.connection.workspace.applyEdit({ label: 'Fill in', edit: convert.workspaceEdit(edits) });
      return null;
    });
  },
};
