/** Shows the files that can be made for the equipment, and neither writes nor runs them. */

import { ErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import type { Plan } from '../../plan.ts';
import type { Output } from '../../make/output.ts';
import { make, outputs } from '../make-request.ts';
import type { Handler } from '../session.ts';
import { withTexts } from '../sound-params.ts';

export const makeHandler: Handler = {
  capabilities: {},
  register(session) {
    const { connection, sites, addresses } = session;
    connection.onRequest(outputs, async (wanted) => {
      const { folder } = withTexts(wanted, 'folder');
      const { plan } = await sites.look(addresses.take(folder));
      return (await allOutputs()).map((output) => ({
        kind: output.kind,
        title: output.title,
        summary: output.summary,
        subjects: output.subjects(plan),
      }));
    });
    connection.onRequest(make, async (wanted) => {
      const { folder, kind, subject } = withTexts(wanted, 'folder', 'kind');
      const { plan, files } = await sites.look(addresses.take(folder));
      const made = outputOf(await allOutputs(), plan, kind, subject).make(plan, subject);
      const convert = session.converter(files);
      const refused = made.refused.map(({ at, message }) => ({ at: convert.location(at), message }));
      return { files: made.files, refused, notes: made.notes };
    });
  },
};

/** Loaded only when asked for. */
async function allOutputs(): Promise<readonly Output[]> {
  const { OUTPUTS } = await import('../../make/outputs.ts');
  return OUTPUTS;
}

function outputOf(all: readonly Output[], plan: Plan, kind: string, subject: string | undefined): Output {
  const output = all.find((candidate) => candidate.kind === kind);
  if (output === undefined) throw new ResponseError(ErrorCodes.InvalidParams, `There is no kind ${kind}.`);
  if (subject !== undefined && !output.subjects(plan).includes(subject))
    throw new ResponseError(ErrorCodes.InvalidParams, `${kind} cannot be made for ${subject}.`);
  return output;
}
