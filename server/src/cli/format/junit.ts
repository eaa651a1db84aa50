/**
 * JUnit's XML, as CI services read it: a suite for each file of the site, a test case for each finding.
 * It has no schema of its own; elements and attributes are those of Ant's JUnit report, which every reader takes.
 */

import { withoutUnseen } from '../../text/visible.ts';
import type { PlacedFindings, Placed } from '../placed.ts';

/** Findings at which the command fails are failures; the others pass, with the finding as their output. */
export function junitFormat({ found, files, fails }: PlacedFindings): string {
  const suites = files.map((file) =>
    suiteOf(
      file,
      found.filter((finding) => finding.file === file),
      fails,
    ),
  );
  const attributes = { name: 'plumbline', tests: sum(suites, 'tests'), failures: sum(suites, 'failures'), errors: 0 };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element(
    'testsuites',
    attributes,
    suites.map(({ text }) => text),
  )}\n`;
}

interface Suite {
  readonly text: string;
  readonly tests: number;
  readonly failures: number;
}

function suiteOf(file: string, found: readonly Placed[], fails: PlacedFindings['fails']): Suite {
  const cases = found.map((finding) => testCase(finding, fails(finding)));
  // A suite without a case would count as not run.
  if (cases.length === 0) cases.push(element('testcase', { name: 'nothing found', classname: file, file }));
  const counts = { tests: cases.length, failures: found.filter(fails).length };
  return { ...counts, text: element('testsuite', { name: file, ...counts, errors: 0 }, cases) };
}

function sum(suites: readonly Suite[], key: 'tests' | 'failures'): number {
  return suites.reduce((total, suite) => total + suite[key], 0);
}

function testCase(finding: Placed, isFailure: boolean): string {
  const { file, line, column, rule, severity, message } = finding;
  const said = `${file}:${line}:${column} ${severity} ${message}`;
  return element('testcase', { name: `${rule} at ${line}:${column}`, classname: file, file, line }, [
    isFailure
      ? element('failure', { message, type: rule }, [escaped(said)])
      : element('system-out', {}, [escaped(said)]),
  ]);
}

function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  content: readonly string[] = [],
): string {
  const list = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(String(value))}"`)
    .join('');
  return content.length === 0 ? `<${name}${list}/>` : `<${name}${list}>${content.join('')}</${name}>`;
}

/** XML 1.0 allows no C0 control characters, not even as references (2.2); other invisible ones become references. */
function escaped(text: string): string {
  const reference = (character: string): string => `&#${character.charCodeAt(0)};`;
  const allowed = text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replace(/[&<>"]/g, reference);
  return withoutUnseen(allowed, reference);
}
