// Fixes of a whole file, and findings that are accepted with a reason.
import assert from 'node:assert/strict';
import { acceptance } from '../../server/src/features/actions/accept.ts';
import { countFixes, fixFile } from '../../server/src/features/actions/fix-file.ts';
import { REASON } from '../../server/src/lint/reason.ts';
import { check } from '../../server/src/check.ts';
import { type Texts, diagnosticsOf, edited, folderOf } from '../site.ts';

const CAMERAS = `# Cameras of the yard
devices:
  a: {kind: camera, speed: 100Mbps}   # the old one
  b: {kind: camera, speed: 100 Mbps}
  c: {kind: camera, speed: 100 Mb/s}
`;

const OTHER = 'devices:\n  d: {kind: camera, speed: 10 Mbps}\n';

function fixed(texts: Texts, uri: string, wanted: Parameters<typeof fixFile>[2]): { count: number; texts: Texts } {
  const checked = check(folderOf(texts));
  const file = checked.files.find((candidate) => candidate.uri === uri);
  assert.ok(file !== undefined);
  return { count: countFixes(checked, file, wanted), texts: edited(texts, fixFile(checked, file, wanted)) };
}

describe('Fixing all of a file', () => {
  it('applies what is safe to that file, and keeps comments and the other files', () => {
    const { texts } = fixed({ a: CAMERAS, b: OTHER }, 'a', 'safe');
    assert.equal(texts['a'], CAMERAS.replaceAll('100Mbps', '100 Mb/s').replaceAll('100 Mbps', '100 Mb/s'));
    assert.equal(texts['b'], OTHER);
    assert.equal(fixed(texts, 'a', 'safe').count, 0);
  });

  it('applies the first fix of each finding of one rule, none of which makes the next clash', () => {
    const text = `vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  a: {kind: camera, address: 192.168.20.31}
  b: {kind: camera, address: 192.168.20.31}
  c: {kind: camera, address: 192.168.20.31}
`;
    const { texts, count } = fixed({ a: text }, 'a', { rule: 'duplicate-address' });
    assert.ok(count >= 2);
    assert.deepEqual(
      diagnosticsOf(texts).filter(({ rule }) => rule.id === 'duplicate-address'),
      [],
    );
  });

  it('changes nothing where nothing is to be fixed', () => {
    assert.deepEqual(fixed({ b: OTHER, a: CAMERAS.replaceAll(/100 ?Mbps/g, '1 Gb/s') }, 'a', 'safe').count, 0);
  });
});

describe('Accepting a finding', () => {
  const finding = `vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  a: {kind: camera, address: 192.168.20.31}
  b: {kind: camera, address: 192.168.20.31}
`;

  function accepted(text: string, others: Texts = {}): string {
    const texts = { ...others, a: text };
    const checked = check(folderOf(texts));
    const [diagnostic] = checked.diagnostics.filter(
      ({ rule, at }) => rule.id === 'duplicate-address' && at.piece.file.uri === 'a',
    );
    const file = checked.files.find(({ uri }) => uri === 'a');
    assert.ok(diagnostic !== undefined && file !== undefined);
    const found = acceptance(checked, file, diagnostic);
    assert.ok(found !== undefined);
    assert.match(found.title, /^Accept duplicate-address for (‘a’|b) …$/);
    const after = edited(texts, [found.edit]);
    const left = diagnosticsOf(after).filter(
      ({ rule, message }) => message === diagnostic.message || /syntax|duplicate-(key|name)/.test(rule.id),
    );
    assert.deepEqual(
      left.map(({ message }) => message),
      [],
      after['a'],
    );
    assert.ok(after['a']?.includes(`because: ${REASON}`));
    return after['a'] ?? '';
  }

  it('makes the section where there is none', () => {
    assert.equal(
      accepted(finding),
      `${finding}\nlint:\n  accept:\n    - {rule: duplicate-address, at: a, because: say why}\n`,
    );
  });

  for (const [where, lint] of [
    ['a list', 'lint:\n  accept:\n    - {rule: loop, at: x, because: y}   # known\n'],
    ['a list in brackets', 'lint:\n  accept: [{rule: loop, at: x, because: y}]\n'],
    ['an empty list', 'lint:\n  accept: []\n'],
    ['a key without a value', 'lint:\n  accept:\n'],
    ['a section that sets severities alone', 'lint:\n    rules: {cable-length: off}\n'],
    ['a section on one line', 'lint: {rules: {cable-length: off}}\n'],
    ['a section with nothing in it', 'lint:\n'],
    ['a section on one line with a list', 'lint: {accept: [{rule: loop, at: x, because: y}]}\n'],
  ] as const) {
    it(`adds to ${where}`, () => {
      accepted(`${lint}${finding}`);
      accepted(`${finding}${lint}`);
      accepted(`${finding}${lint.trimEnd()}`);
    });
  }

  it('adds to the file of the finding, whatever other files accept', () => {
    accepted(finding, { z: 'lint:\n  accept:\n    - {rule: loop, at: x, because: y}\n' });
  });
});
