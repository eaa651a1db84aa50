/** Audits of files that a person chose. */

import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
import { AUDIT_KINDS } from '../../audit/audited.ts';
import { Unreadable, Untold } from '../../audit/unreadable.ts';
import { CannotDo, Stopped } from '../../machine/cannot-do.ts';
import { type AuditAnswer, type AuditWanted, audit, clearAudits } from '../audit-request.ts';
import type { Handler, Session } from '../session.ts';
import { withTexts } from '../sound-params.ts';

export const auditHandler: Handler = {
  capabilities: {},
  register(session) {
    const { connection, addresses, auditResults } = session;
    connection.onRequest(audit, (wanted, token) => answer(session, withTexts(wanted, 'folder', 'kind', 'uri'), token));
    connection.onRequest(clearAudits, (wanted) => {
      const folder = addresses.take(withTexts(wanted, 'folder').folder);
      auditResults.clear(folder);
      session.recheck(folder);
    });
  },
};

async function answer(session: Session, wanted: AuditWanted, token: CancellationToken): Promise<AuditAnswer> {
  const { folder: written, kind, uri, workDoneToken, ...saying } = wanted;
  const { audits, auditResults, sites, addresses } = session;
  const folder = addresses.take(written);
  if (audits === undefined)
    return { cannot: 'In a browser no file can be read for an audit: use VS Code on a desktop, or `plumbline audit`.' };
  if (!AUDIT_KINDS.includes(kind)) return { cannot: 'There is no audit of that kind.' };
  const parsed = URI.parse(addresses.take(uri));
  if (parsed.scheme !== 'file') return { cannot: 'Only files on the machine that the server runs on can be read.' };
  const site = sites.in(folder);
  if (site === undefined) return { cannot: 'Open a file of the site first.' };
  await site.loaded;
  const from = parsed.path.replace(/\/$/, '').replace(/^.*\//, '');
  const work = session.connection.window.attachWorkDoneProgress(workDoneToken);
  work.begin(from);
  const stop = new AbortController();
  const stopping = token.onCancellationRequested(() => stop.abort());
  try {
    const begin = (await audits())[kind];
    const waiting = { signal: stop.signal, progress: atTimes((words) => work.report(words)) };
    const read = await begin(parsed.fsPath, site.now().plan, saying, waiting);
    if (!sites.has(site)) return { cannot: 'The site was closed meanwhile.' };
    const summary = auditResults.take(folder, kind, read, from, site.now().plan);
    session.recheck(folder);
    const checked = site.now();
    const convert = session.converter(checked.files);
    return { summary, found: auditResults.of(folder, checked, kind).map(({ at }) => convert.location(at)) };
  } catch (error) {
    if (error instanceof Stopped) throw new ResponseError(LSPErrorCodes.RequestCancelled, error.message);
    if (error instanceof Untold) return { cannot: `${from}: ${error.message}`, choices: error.choices };
    if (error instanceof Unreadable) return { cannot: `${from}: ${error.message}` };
    if (error instanceof CannotDo) return { cannot: error.message };
    throw error;
  } finally {
    work.done();
    stopping.dispose();
  }
}

/** Limits reports of progress to a few a second. */
function atTimes(report: (words: string) => void): (words: string) => void {
  let last = 0;
  return (words) => {
    if (Date.now() - last < BETWEEN) return;
    last = Date.now();
    report(words);
  };
}

/** Milliseconds between two reports. */
const BETWEEN = 200;
