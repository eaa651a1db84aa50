import assert from 'node:assert/strict';
import { diagnosticsOf } from '../site.ts';

const CABLES = `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 130 m}
`;

/** The findings in a site whose two files set a rule so. */
function found(first: string, second: string): string[] {
  const lint = (severity: string): string => `lint: {rules: {cable-length: ${severity}}}\n`;
  return diagnosticsOf({ 'a.site.yaml': lint(first) + CABLES, 'b.site.yaml': lint(second) })
    .filter(({ rule }) => ['cable-length', 'duplicate-name'].includes(rule.id))
    .map(({ rule, severity, message }) => `${severity} ${rule.id}: ${message.split(/[,;]/)[0] ?? ''}`);
}

describe('A rule that two files set', () => {
  it('to different severities has the first, with a finding', () => {
    assert.deepEqual(found('off', 'hint'), ['error duplicate-name: cable-length is set to off already']);
    assert.deepEqual(
      new Set(found('hint', 'off').map((line) => line.split(':')[0])),
      new Set(['error duplicate-name', 'hint cable-length']),
    );
  });

  it('to the same severity has that, without a finding', () => {
    assert.deepEqual(found('off', 'off'), []);
  });
});
