/** Pages of a site, shown beside its text. */

import { ErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
import type { AuditKind } from '../../audit/audited.ts';
import type { Measured } from '../../audit/measured.ts';
import { check } from '../../check.ts';
import type { Checked } from '../../lint/check.ts';
import { perObject } from '../../memo.ts';
import type { SiteFolder } from '../../site/folder.ts';
import type { Findings } from '../../lint/held-back.ts';
import type { Plan } from '../../plan.ts';
import type { ReportedFinding, Verdict } from '../../report/verdict.ts';
import { namedHover } from '../../features/hover/named.ts';
import { placeOfName } from '../../features/place-of-name.ts';
import { thingsAt } from '../../features/things-at.ts';
import { nextTurn } from '../check-scheduler.ts';
import type { Converter } from '../convert.ts';
import {
  type DrawingWanted,
  type Page,
  type PageKind,
  type PageWanted,
  drawings,
  hoverOfName,
  page,
  placeOfName as placeRequest,
  thingsAt as thingsRequest,
} from '../page-request.ts';
import { isOfTheSchema } from '../schema-rules.ts';
import type { Handler, LastCommit, Session } from '../session.ts';
import { isPlaced, withTexts } from '../sound-params.ts';

type Asked = Omit<PageWanted, 'page'> & {
  readonly verdict: () => Verdict;
  readonly checked: Checked;
  readonly lastCommit: LastCommit | undefined;
  readonly measured: (kind: AuditKind) => Measured | undefined;
  /** Whether the plan is still that of the site. */
  readonly isCurrent: () => boolean;
};

/** Each page's code is loaded only when asked for. */
const PAGES: Readonly<Record<PageKind, (plan: Plan, asked: Asked) => Promise<Page>>> = {
  report: async (plan, { verdict, isCurrent }) => {
    const [{ reportHtml }, { networkInReport }, { asButton }, { outlookSteps }, { outlookHtml }] = await Promise.all([
      import('../../report/html.ts'),
      import('../../draw/in-report.ts'),
      import('../../report/page/cells.ts'),
      import('../../outlook/outlook.ts'),
      import('../../outlook/page.ts'),
    ]);
    const outlook = await inTurns(outlookSteps(plan), isCurrent);
    const more = outlook === undefined ? '' : outlookHtml(outlook, asButton);
    const html = reportHtml(plan, verdict(), asButton, networkInReport(plan, asButton), more);
    return { title: `Report of ${plan.site.name ?? 'a site without a name'}`, html };
  },
  drawing: async (plan, { drawing: wanted, measured: measuredBy }) => {
    const [{ KINDS }, { canDraw }, { drawingPage, notReadPage }, { asButton }] = await Promise.all([
      import('../../draw/kinds.ts'),
      import('../../draw/drawing.ts'),
      import('../../draw/page.ts'),
      import('../../report/page/cells.ts'),
    ]);
    const kind = KINDS.find((one) => one.kind === wanted?.kind);
    if (kind === undefined || wanted === undefined) throw noSuchPage();
    const { subject, rate = 'peak', vlan, stream } = wanted;
    if (!RATES.includes(rate)) throw noSuchPage();
    if (!canDraw(kind, plan, subject))
      throw new ResponseError(ErrorCodes.InvalidParams, `There is no ${kind.kind} ${subject} to draw.`);
    const read = kind.measured === undefined ? undefined : measuredBy(kind.measured.from);
    const measured = read !== undefined && kind.measured?.has(read, subject) === true ? read : undefined;
    if (measured === undefined && kind.measured?.needed === true) {
      const title = `${kind.title}: ${subject}`;
      return { title, html: notReadPage(title) };
    }
    const drawing = kind.draw(plan, subject, { rate, vlan, stream, measured });
    return { title: drawing.title, html: drawingPage(drawing, asButton) };
  },
  comparison: async (plan, { folder, checked, lastCommit }) => {
    const name = plan.site.name ?? 'Site without a name';
    const title = `${name} since the last commit`;
    const [{ compare }, { comparisonPage, notCompared }, { asButton }] = await Promise.all([
      import('../../compare/compare.ts'),
      import('../../compare/page.ts'),
      import('../../report/page/cells.ts'),
    ]);
    const before = (await lastCommit?.(folder)) ?? 'A browser has no git to look into. Open the site on a desktop.';
    if (typeof before === 'string') return { title, html: notCompared(name, before) };
    return { title, html: comparisonPage(compare(checkedOnce(before), checked), name, 'the last commit', asButton) };
  },
};

/** Runs the steps, with a turn for other requests after each; `undefined` once the plan is no longer current. */
async function inTurns<T>(steps: Generator<undefined, T>, isCurrent: () => boolean): Promise<T | undefined> {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    await new Promise<void>((then) => nextTurn(then));
    if (!isCurrent()) return undefined;
  }
}

/** A commit does not change, so it is checked once. */
const checkedOnce = perObject((site: SiteFolder) => check(site));

const RATES: readonly DrawingWanted['rate'][] = ['nominal', 'peak'];

function noSuchPage(): ResponseError {
  return new ResponseError(ErrorCodes.InvalidParams, 'There is no such page.');
}

export const pageHandler: Handler = {
  capabilities: {},
  register(session) {
    const { connection, sites, addresses } = session;
    connection.onRequest(page, async (wanted) => {
      const { folder, page: kind, drawing } = withTexts(wanted, 'folder', 'page');
      if (!Object.hasOwn(PAGES, kind)) throw noSuchPage();
      const address = addresses.take(folder);
      const checked = await sites.look(address);
      const verdict = (): Verdict => verdictOf(session, session.shown(address) ?? checked);
      const { lastCommit } = session;
      const measured = (by: AuditKind): Measured | undefined =>
        session.auditResults.measured(address, by, checked.plan);
      const isCurrent = (): boolean => sites.in(address)?.isAt(checked) !== false;
      const asked = {
        folder: address,
        ...(drawing !== undefined && { drawing }),
        verdict,
        checked,
        lastCommit,
        measured,
        isCurrent,
      };
      return PAGES[kind](checked.plan, asked);
    });
    connection.onRequest(drawings, async (wanted) => {
      const { folder } = withTexts(wanted, 'folder');
      const address = addresses.take(folder);
      const { plan } = await sites.look(address);
      const [{ KINDS }, { subjectsOf }] = await Promise.all([
        import('../../draw/kinds.ts'),
        import('../../draw/drawing.ts'),
      ]);
      return KINDS.flatMap((one) => {
        const { kind, title, summary, isOfSite, narrows, measured } = one;
        const all = subjectsOf(one, plan);
        const canRead = measured?.needed !== true || session.audits !== undefined;
        if (all.length === 0 || !canRead) return [];
        const names = (of: ReadonlyMap<string, unknown>): string[] => (narrows === true ? [...of.keys()] : []);
        const { vlanByName, streamByName } = plan.site;
        const subjects = isOfSite === true ? [] : all;
        const offer = { kind, title, summary, subjects, vlans: names(vlanByName), streams: names(streamByName) };
        if (measured === undefined) return [offer];
        const found = session.auditResults.measured(address, measured.from, plan);
        const read = found === undefined ? [] : all.filter((subject) => measured.has(found, subject));
        return [{ ...offer, measured: { by: measured.from, needed: measured.needed, read } }];
      });
    });
    connection.onRequest(thingsRequest, async (wanted) => {
      const { uri, position } = withTexts(wanted, 'uri');
      if (!isPlaced({ uri, position })) throw new ResponseError(ErrorCodes.InvalidParams, 'It needs a position.');
      const asked = await session.asked(uri);
      return asked === undefined ? [] : thingsAt(asked.checked, asked.file, asked.offset(position));
    });
    connection.onRequest(hoverOfName, async (wanted) => {
      const { folder, names, name } = withTexts(wanted, 'folder', 'names', 'name');
      const { plan } = await sites.look(addresses.take(folder));
      return namedHover(plan, names, name) || null;
    });
    connection.onRequest(placeRequest, async (wanted) => {
      const { folder, names, name } = withTexts(wanted, 'folder', 'names', 'name');
      const { plan, files } = await sites.look(addresses.take(folder));
      const place = placeOfName(plan.site, names, name);
      return place === undefined ? null : session.converter(files).location(place);
    });
  },
};

/** The findings of the problems list, errors before warnings, file by file. */
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
  // An address may have a `%` that encodes nothing, on which `decodeURIComponent` throws.
  const { path } = URI.parse(uri);
  const file = path.slice(path.lastIndexOf('/') + 1);
  return { severity, message, where: `${file}:${start.line + 1}`, target: { uri, ...start } };
}
