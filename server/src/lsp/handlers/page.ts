/** Pages of a site, shown beside its text. */

import { ErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import type { Checked } from '../../lint/check.ts';
import type { Findings } from '../../lint/held-back.ts';
import type { ReportedFinding, Verdict } from '../../report/verdict.ts';
import { placeOfName } from '../../features/place-of-name.ts';
import type { Converter } from '../convert.ts';
import { type PageKind, page, placeOfName as placeRequest } from '../page-request.ts';
import { isOfTheSchema } from '../schema-rules.ts';
import type { Handler, Session } from '../session.ts';

/** Each is loaded only when somebody asks for it. */
const PAGES: Readonly<Record<PageKind, (checked: Checked, verdict: Verdict) => Promise<string>>> = {
  report: async ({ plan }, verdict) => {
    const [{ reportHtml }, { asButton }] = await Promise.all([
      import('../../report/html.ts'),
      import('../../report/page/cells.ts'),
    ]);
    return reportHtml(plan, verdict, asButton);
  },
};

export const pageHandler: Handler = {
  capabilities: {},
  register(session) {
    const { connection, sites, addresses } = session;
    connection.onRequest(page, async ({ folder, page: kind }) => {
      if (!Object.hasOwn(PAGES, kind)) throw new ResponseError(ErrorCodes.InvalidParams, 'There is no such page.');
      const address = addresses.take(folder);
      const checked = await sites.look(address);
      const html = await PAGES[kind](checked, verdictOf(session, session.shown(address) ?? checked));
      return { title: `Report of ${checked.plan.site.name ?? 'a site without a name'}`, html };
    });
    connection.onRequest(placeRequest, async ({ folder, names, name }) => {
      const { plan, files } = await sites.look(addresses.take(folder));
      const place = placeOfName(plan.site, names, name);
      return place === undefined ? null : session.converter(files).location(place);
    });
  },
};

/** What the problems list has, errors before warnings, file by file. */
function verdictOf(session: Session, { diagnostics, files }: Findings): Verdict {
  const convert = session.converter(files);
  const shown = session.settings.schemaFeatures ? diagnostics : diagnostics.filter((one) => !isOfTheSchema(one));
  const of = (wanted: ReportedFinding['severity']): ReportedFinding[] =>
    shown
      .filter(({ severity }) => severity === wanted)
      .map(({ at, message }) => reported(convert, wanted, message, at))
      .sort(byPlace);
  return [...of('error'), ...of('warning')];
}

function byPlace({ target: a }: ReportedFinding, { target: b }: ReportedFinding): number {
  if (a === undefined || b === undefined) return 0;
  return a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : a.line - b.line || a.character - b.character;
}

function reported(
  convert: Converter,
  severity: ReportedFinding['severity'],
  message: string,
  at: Parameters<Converter['location']>[0],
): ReportedFinding {
  const {
    uri,
    range: { start },
  } = convert.location(at);
  const file = decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
  return { severity, message, where: `${file}:${start.line + 1}`, target: { uri, ...start } };
}
