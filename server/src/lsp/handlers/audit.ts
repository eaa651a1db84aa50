/** Audits of files that a person chose. */

import { URI } from 'vscode-uri';
import { AUDIT_KINDS } from '../../audit/audited.ts';
import { Unreadable, Untold } from '../../audit/unreadable.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { type AuditAnswer, type AuditWanted, audit, clearAudits } from '../audit-request.ts';
import type { Handler, Session } from '../session.ts';

export const auditHandler: Handler = {
  capabilities: {},
  register(session) {
    const { connection, addresses, auditResults } = session;
    connection.onRequest(audit, (wanted) => answer(session, wanted));
    connection.onRequest(clearAudits, ({ folder: written }) => {
      const folder = addresses.take(written);
      auditResults.clear(folder);
      session.recheck(folder);
    });
  },
};

async function answer(session: Session, { folder: written, kind, uri, ...saying }: AuditWanted): Promise<AuditAnswer> {
  const { audits, auditResults, sites, addresses } = session;
  const folder = addresses.take(written);
  if (audits === undefined)
    return { cannot: 'In a browser no file can be read for an audit: use VS Code on a desktop, or `plumbline audit`.' };
  if (!AUDIT_KINDS.includes(kind)) return { cannot: 'There is no audit of that kind.' };
  const parsed = URI.parse(uri);
  if (parsed.scheme !== 'file') return { cannot: 'Only files on the machine that the server runs on can be read.' };
  const site = sites.in(folder);
  if (site === undefined) return { cannot: 'Open a file of the site first.' };
  await site.loaded;
  const from = parsed.path.replace(/\/$/, '').replace(/^.*\//, '');
  try {
    const begin = (await audits())[kind];
    const read = await begin(parsed.fsPath, site.now().plan, saying);
    if (!sites.has(site)) return { cannot: 'The site was closed meanwhile.' };
    const summary = auditResults.take(folder, kind, read, from, site.now().plan);
    session.recheck(folder);
    const checked = site.now();
    const convert = session.converter(checked.files);
    return { summary, found: auditResults.of(folder, checked, kind).map(({ at }) => convert.location(at)) };
  } catch (error) {
    if (error instanceof Untold) return { cannot: `${from}: ${error.message}`, choices: error.choices };
    if (error instanceof Unreadable) return { cannot: `${from}: ${error.message}` };
    if (error instanceof CannotDo) return { cannot: error.message };
    throw error;
  }
}
