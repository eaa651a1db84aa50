/** Properties of any text. */

import { runInThisContext } from 'node:vm';
import { parseAllDocuments } from 'yaml';
import { USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { OF_PLAN } from '../../server/src/draw/kinds.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { placeOfName } from '../../server/src/features/place-of-name.ts';
import { picture } from '../draw/picture.ts';
import { explain } from '../../server/src/report/explain.ts';
import { explanationMarkdown, explanationText } from '../../server/src/report/explain/explanation.ts';
import { reportHtml } from '../../server/src/report/html.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { reportText } from '../../server/src/report/text.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { check } from '../../server/src/check.ts';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import type { Edit, Fix } from '../../server/src/site/edit.ts';
import { type Place, fileOf } from '../../server/src/site/item.ts';
import { type Texts, edited, folderOf, spanAt } from '../site.ts';
import { AT_A_PLACE, OF_A_FILE } from './features.ts';
import type { Random } from './random.ts';

/** A step is ended after so long: none takes a second on an idle machine. */
const HANGS_MS = 120_000;

/** The most fixes of a site that are tried, each with a check of its own. */
const FIXES = 6;
const PLACES = 8;
const PATHS = 6;
/** The most drawings of each kind for a site. */
const DRAWN = 2;

/** Thrown where a property does not hold. */
export class Broken extends Error {}

function must(holds: boolean, otherwise: () => string): void {
  if (!holds) throw new Broken(otherwise());
}

/** Checks a site with every rule. */
function whole(checked: Checked): Checked {
  checked.proceed(() => false);
  return checked;
}

/** @throws Broken, or what else goes wrong */
export function tryOut(texts: Texts, random: Random): void {
  const checked = watchedStep('check', () => whole(check(folderOf(texts))));
  for (const diagnostic of checked.diagnostics) mustBeWell(texts, diagnostic);
  const withFixes = checked.diagnostics.flatMap((diagnostic) =>
    fixesOf(texts, diagnostic).map((fix) => ({ diagnostic, fix })),
  );
  for (const { diagnostic, fix } of random.some(withFixes, FIXES)) mustMend(texts, checked, diagnostic, fix);
  askAbout(texts, checked, random);
  watchedStep('report', () => mustAddUp(checked, random));
}

/** Runs a step with a time limit. */
function watchedStep<T>(name: string, step: () => T): T {
  // Only the time limit of a script can end an endless loop.
  const result = runInThisContext('(step) => step()', { filename: 'step' }) as (step: () => T) => T;
  watched.step = () => void (watched.result = result(step));
  try {
    runInThisContext('globalThis.plumblineFuzz.step()', { timeout: HANGS_MS });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ERR_SCRIPT_EXECUTION_TIMEOUT')
      throw new Broken(`${name} does not end`);
    throw error;
  }
  return watched.result as T;
}

const watched: { step: () => void; result: unknown } = { step: () => undefined, result: undefined };
Object.assign(globalThis, { plumblineFuzz: watched });

function mustBeWell(texts: Texts, { rule, at, message, related = [] }: Diagnostic): void {
  must(!message.includes('a fault of Plumbline'), () => message);
  must(
    !/\bundefined\b|\bNaN\b|\[object /.test(message) || /undefined|nan|object/i.test(Object.values(texts).join()),
    () => `${rule.id} says: ${message}`,
  );
  must(!/[\u0000-\u001f]/.test(message) && message.length <= 1001, () => `${rule.id} says: ${message}`);
  mustBeInside(texts, at, rule.id);
  for (const other of related) mustBeInside(texts, other.at, `${rule.id}, related`);
}

function mustBeInside(texts: Texts, place: Place, what: string): void {
  const text = texts[fileOf(place).uri];
  const { start, end } = spanAt(place);
  must(
    text !== undefined && start >= 0 && start <= end && end <= text.length,
    () => `${what} is at ${start} to ${end} of ${fileOf(place).uri}, which has ${text?.length} characters`,
  );
}

function fixesOf(texts: Texts, diagnostic: Diagnostic): readonly Fix[] {
  const fixes = watchedStep(`fixes of ${diagnostic.rule.id}`, () => diagnostic.fixes?.() ?? []);
  for (const { edits, title } of fixes) {
    must(edits.length > 0, () => `“${title}” of ${diagnostic.rule.id} changes nothing`);
    for (const { at } of edits) mustBeInside(texts, at, `“${title}” of ${diagnostic.rule.id}`);
    must(!overlap(edits), () => `edits of “${title}” of ${diagnostic.rule.id} overlap`);
  }
  return fixes;
}

function overlap(edits: readonly Edit[]): boolean {
  const places = edits.map(({ at }) => ({
    uri: fileOf(at).uri,
    ...spanAt(at),
  }));
  return places.some((one, index) =>
    places.slice(index + 1).some((two) => one.uri === two.uri && one.start < two.end && two.start < one.end),
  );
}

/**
 * A fix ends its finding, leaves text that parses, and adds no error. Of several faults in the syntax of an item only
 * the first is reported, so the next may be reported in its place and in the same words; so may the first of two equal
 * keys, once the last has another name.
 */
function mustMend(texts: Texts, before: Checked, { rule, message }: Diagnostic, fix: Fix): void {
  const after = edited(texts, fix.edits);
  const what = (): string => `“${fix.title}” of ${rule.id} (${message})`;
  const { diagnostics } = watchedStep(`check after ${what()}`, () => whole(check(folderOf(after))));
  const same = (all: readonly Diagnostic[]): number =>
    all.filter((other) => other.rule === rule && other.message === message).length;
  const isTwice = before.diagnostics.some((other) => other.rule.id === 'duplicate-key');
  must(
    rule.id === 'yaml-syntax' || isTwice || same(diagnostics) < same(before.diagnostics),
    () => `${what()} leaves its finding in\n${shown(after)}`,
  );
  must(!parse(texts) || parse(after), () => `${what()} leaves text that does not parse:\n${shown(after)}`);
  // In text that does not parse, an edit may change how the rest is read.
  if (UNCOVERS[rule.id] !== undefined || !parse(texts)) return;
  const worse = newErrors(before, diagnostics);
  must(
    worse === undefined,
    () => `${what()} makes a new error, ${worse?.rule.id}: ${worse?.message}, in\n${shown(after)}`,
  );
}

/** Fixes after which more of the site is known, so that errors may be found that were there before. */
const UNCOVERS: Readonly<Record<string, string>> = {
  'yaml-syntax': 'the item was half read before',
  'malformed-value': 'the value was not read before',
  'wrong-type': 'the value was not read before',
  'value-not-allowed': 'the value was not read before',
  'quantity': 'the value was not read before',
  'unknown-key': 'the value under the key was not read before',
  'unknown-name': 'the name led nowhere before',
  'no-such-port': 'the name led nowhere before',
  'missing-key': 'the item said too little before',
  'poe-of-switch': 'what it draws was not known before',
  'unreached-receiver': 'other streams are forwarded too from then on, and meet what is wrong on their way',
  'unintended-egress': 'the group goes another way from then on, and meets what is wrong there',
  'group-not-multicast': 'the stream was no multicast before',
  'transport-missing': 'nobody could tell which ports it takes before',
  'port-without-vlan': 'then streams cross the port, and meet what is wrong on their way',
};

/** The syntax problems that a reader of full YAML finds. */
function parse(texts: Texts): boolean {
  return Object.values(texts).every((text) => {
    const documents = parseAllDocuments(text, { uniqueKeys: false, logLevel: 'silent' });
    return !Array.isArray(documents) || documents.every(({ errors }) => errors.length === 0);
  });
}

/** A finding that was dropped as a consequence of another is not new once that one is fixed. */
function newErrors(before: Checked, after: readonly Diagnostic[]): Diagnostic | undefined {
  // An invalid name is reported where it is declared, and again where a fix mentions it.
  const isTold = ({ message }: Diagnostic): boolean => message.includes('is not a name');
  const errors = after.filter(({ severity }) => severity === 'error');
  const found = new Map(
    [...before.runs].map(([rule, { findings }]) => [
      rule.id,
      findings.filter(({ severity }) => (severity ?? rule.severity) === 'error').length,
    ]),
  );
  const ofNames = before.diagnostics.some(isTold);
  return errors.find(
    (each) =>
      !(ofNames && isTold(each)) &&
      errors.filter(({ rule }) => rule.id === each.rule.id).length > (found.get(each.rule.id) ?? 0),
  );
}

function askAbout(texts: Texts, checked: Checked, random: Random): void {
  for (let left = PLACES; left > 0; left--) {
    const file = random.pick(checked.files);
    if (file === undefined) return;
    const offset = random.below(file.text.length + 1);
    for (const [name, ask] of Object.entries(AT_A_PLACE)) {
      for (const place of watchedStep(name, () => ask(checked, file, offset)))
        mustBeInside(texts, place, `${name} at ${offset}`);
    }
  }
  for (const file of random.some(checked.files, 2)) {
    for (const [name, ask] of Object.entries(OF_A_FILE)) {
      for (const place of watchedStep(name, () => ask(checked, file))) mustBeInside(texts, place, name);
    }
  }
}

function mustAddUp(checked: Checked, random: Random): void {
  const report = reportOf(checked.plan);
  mustBeFinite(report, '');
  must(reportText(checked.plan, []) !== '' && reportHtml(checked.plan, []) !== '', () => 'the report is empty');
  for (const kind of OF_PLAN)
    for (const subject of random.some(subjectsOf(kind, checked.plan), DRAWN)) {
      // It must be readable with any names.
      const { things } = picture(svgFile(kind.draw(checked.plan, subject, USUAL_OPTIONS)));
      for (const { names, at } of things)
        must(placeOfName(checked.plan.site, names, at) !== undefined, () => `${kind.kind} draws ${names} ${at}`);
    }
  for (let left = PATHS; left > 0; left--) {
    const explained = explain(checked.plan, pathIn(report, random));
    for (const explanation of 'explanations' in explained ? explained.explanations : []) {
      must(
        explanationText(explanation) !== '' && explanationMarkdown(explanation) !== '',
        () => 'an explanation is empty',
      );
    }
  }
}

function mustBeFinite(value: unknown, path: string): void {
  if (typeof value === 'number')
    must(Number.isFinite(value) && (value >= 0 || path.startsWith('/rf')), () => `the report has ${value} at ${path}`);
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) mustBeFinite(inner, `${path}/${key}`);
}

/** The words of a path in the report, correct or nearly so. */
function pathIn(report: Report, random: Random): string[] {
  const link = random.pick(report.links);
  const stream = random.pick(report.streams)?.name ?? '';
  const volume = random.pick(report.volumes);
  const rate = random.some(['line', 'frame', 'payload', 'tagged', 'reply', 'nominal', 'peak'], random.below(3));
  const path = random.pick([
    ['links', link?.from ?? '', ...random.some(['forward', 'backward', 'capacity'], random.below(2)), ...rate],
    [
      'links',
      link?.to ?? '',
      'forward',
      'streams',
      random.pick(Object.keys(link?.forward.streams ?? {})) ?? stream,
      ...rate,
    ],
    ['streams', stream, ...random.some(['mac', 'reaches', 'unreached'], random.below(2))],
    ['streams', stream, ...rate],
    ['volumes', volume?.name ?? '', ...random.some(['usableBytes', 'bytesPerDay', 'daysUntilFull'], random.below(2))],
    ['volumes', volume?.name ?? '', 'recordings', random.pick(Object.keys(volume?.recordings ?? {})) ?? ''],
    ['poe', random.pick(report.poe)?.device ?? '', ...random.some(['draw', 'budget'], 1)],
    ['devices', link?.from.split('/')[0] ?? ''],
    ['addresses', random.pick(['192.168.20.31', '239.192.20.31', '0.0.0.0', '255.255.255.255', '1', ''])],
    ['quantity', ...random.pick(['6 Mb/s', '1e400 TB', '3 x', ''] as const).split(' ')],
  ]);
  return random.chance(0.1) ? [...path, random.pick(['__proto__', 'constructor', ''])] : path;
}

function shown(texts: Texts): string {
  return Object.entries(texts)
    .map(([name, text]) => `--- ${name}\n${text}`)
    .join('\n');
}
