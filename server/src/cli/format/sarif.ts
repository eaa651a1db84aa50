/** SARIF 2.1.0 (OASIS): locations relative to the working folder, a fingerprint that survives moved lines. */

import { ruleById } from '../../check.ts';
import { visibleJson } from './json.ts';
import type { PlacedFindings, Placed, Range } from '../placed.ts';
import { createHash } from 'node:crypto';

const LEVEL = { error: 'error', warning: 'warning', information: 'note', hint: 'note' } as const;

/** The rules of checks and of audits, the same in each log. */
const RULES = [...ruleById.values()];

export function sarifFormat({ found }: PlacedFindings): string {
  const ids = RULES.map(({ id }) => id);
  const seen = new Map<string, number>();
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'plumbline',
            rules: RULES.map(({ id, summary, why, severity }) => ({
              id,
              shortDescription: { text: summary },
              fullDescription: { text: why.replace(/\s+/g, ' ') },
              defaultConfiguration: { level: LEVEL[severity] },
            })),
          },
        },
        columnKind: 'utf16CodeUnits',
        results: found.map((finding) => ({
          ruleId: finding.rule,
          ruleIndex: ids.indexOf(finding.rule),
          level: LEVEL[finding.severity],
          message: { text: finding.message },
          locations: [{ physicalLocation: location(finding) }],
          ...(finding.related.length > 0 && {
            relatedLocations: finding.related.map((other, id) => ({
              id,
              physicalLocation: location(other),
              message: { text: other.message },
            })),
          }),
          partialFingerprints: { 'plumbline/v1': fingerprint(finding, seen) },
        })),
      },
    ],
  };
  return `${visibleJson(log)}\n`;
}

function location({ file, line, column, endLine, endColumn }: Range): object {
  return {
    artifactLocation: { uri: file.split('/').map(encodeURIComponent).join('/') },
    region: { startLine: line, startColumn: column, endLine, endColumn },
  };
}

/** A hash of the rule, the file and the line's text; equal ones are numbered. */
function fingerprint({ rule, file, source }: Placed, seen: Map<string, number>): string {
  const key = [rule, file, source.trim()].join('\n');
  const number = seen.get(key) ?? 0;
  seen.set(key, number + 1);
  return createHash('sha256').update(`${key}\n${number}`).digest('hex').slice(0, 32);
}
