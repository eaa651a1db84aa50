import assert from 'node:assert/strict';
import { diagnosticsOf } from '../site.ts';

const CABLES = `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 130 m}
`;

/** What is told of a site whose two files set a rule so. */
function told(first: string, second: string): string[] {
  const lint = (severity: string): string => `lint: {rules: {cable-length: ${severity}}}\n`;
  return diagnosticsOf({ 'a.site.yaml': lint(first) + CABLES, 'b.site.yaml': lint(second) })
    .filter(({ rule }) => ['cable-length', 'duplicate-name'].includes(rule.id))
    .map(({ rule, severity, message }) => `${severity} ${rule.id}: ${message.split(/[,;]/)[0] ?? ''}`);
}

describe('A rule that two files set', () => {
  it('to different severities has the first, and that is told', () => {
    assert.deepEqual(told('off', 'hint'), ['error duplicate-name: cable-length is set to off already']);
    assert.deepEqual(
      told('hint', 'off')
        .map((line) => line.split(':')[0])
        .sort(),
      ['error duplicate-name', 'hint cable-length'],
    );
  });

  it('to the same severity has that, and nothing is told of it', () => {
    assert.deepEqual(told('off', 'off'), []);
  });
});
