import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { ruleFiles } from '../server/generate/rule-files.ts';
import { fixAll } from '../server/src/check.ts';
import { acceptanceRules, rules } from '../server/src/rules/index.generated.ts';
import type { Diagnostic, Example, RuleInfo } from '../server/src/lint/rule.ts';
import { differences, readMarks } from './marks.ts';
import { diagnosticsOf, edited, folderOf, foundIn, spanAt } from './site.ts';

const FILE = 'harrow-lane.site.yaml';

/** Rules that no text can trigger. */
const WITHOUT_EXAMPLE = ['unreadable-file'];

function of(rule: RuleInfo, diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return diagnostics.filter((diagnostic) => diagnostic.rule.id === rule.id);
}

function messages(diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics.map(({ message }) => message);
}

const files = await ruleFiles();

describe('Rules', () => {
  it('are all in the list, each in a file of its name', () => {
    assert.deepEqual(
      [...rules, ...acceptanceRules],
      files.map(({ rule }) => rule),
    );
  });

  it('have ids of their own, in small letters with hyphens', () => {
    const ids = files.map(({ id }) => id);
    assert.equal(new Set(ids).size, ids.length);
    for (const id of ids) assert.match(id, /^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('have a page each', () => {
    for (const { id } of files) assert.ok(existsSync(new URL(`../schemas/rules/${id}.md`, import.meta.url)), id);
  });

  it('say in a line what is wrong, and why it matters', () => {
    for (const { id, rule } of files) {
      assert.match(rule.summary, /^[A-Z][^\n]*\.$/, id);
      assert.ok(rule.why.length > 40, id);
    }
  });

  it('have an example each', () => {
    const without = files.filter(({ examples }) => examples.length === 0).map(({ id }) => id);
    assert.deepEqual(without, WITHOUT_EXAMPLE);
  });
});

for (const { rule, examples } of files) {
  describe(`Rule ${rule.id}`, () => {
    examples.forEach((example, index) => describe(`example ${index + 1}`, () => exampleTests(rule, example)));
  });
}

function exampleTests(rule: RuleInfo, example: Example): void {
  const { text: bad, marks } = readMarks(example.bad, false);
  const texts = { [FILE]: bad };
  let all: readonly Diagnostic[] = [];
  let own: readonly Diagnostic[] = [];
  before(() => {
    all = diagnosticsOf(texts);
    own = of(rule, all);
  });
  after(() => ([all, own] = [[], []]));

  it('finds what is marked, where it is marked, and nothing else', () => {
    assert.ok(marks.length > 0, 'nothing is marked');
    assert.deepEqual(
      differences(
        own.map((diagnostic) => foundIn(bad, diagnostic)),
        marks,
      ),
      [],
    );
  });

  it('marks places inside the text', () => {
    for (const { at, related = [] } of all) {
      for (const place of [at, ...related.map((other) => other.at)]) {
        const { start, end } = spanAt(place);
        assert.ok(0 <= start && start <= end && end <= bad.length, `${start}-${end} in a text of ${bad.length}`);
      }
    }
  });

  const right = example.good ?? example.fixed;
  if (right !== undefined)
    it('finds nothing where all is right', () =>
      assert.deepEqual(messages(of(rule, diagnosticsOf({ [FILE]: right }))), []));

  it('shows what its first fix makes of it', () => {
    const [first] = own.flatMap((finding) => finding.fixes?.() ?? []);
    if (first === undefined) assert.equal(example.fixed, undefined, 'there is no fix');
    else if (example.fixed !== undefined) assert.equal(edited(texts, first.edits)[FILE]?.trim(), example.fixed.trim());
  });

  it('is rid of each finding by each of its fixes, once and for all', () => {
    for (const finding of own) {
      for (const { title, edits } of finding.fixes?.() ?? []) {
        const text = edited(texts, edits)[FILE] ?? '';
        assert.notEqual(text, bad, title);
        const found = diagnosticsOf({ [FILE]: text });
        const left = of(rule, found);
        assert.ok(!messages(left).includes(finding.message), `“${title}”: still found in\n${text}`);
        const broken = found.filter((other) => other.rule.id === 'yaml-syntax');
        if (rule.id !== 'yaml-syntax') assert.deepEqual(messages(broken), [], title);
      }
    }
  });

  it('has safe fixes that leave nothing more to fix', () => {
    const { texts: once, fixes } = fixAll(folderOf(texts));
    // Unchanged text has been checked before.
    if (fixes === 0) return;
    const { texts: twice, fixes: more } = fixAll(folderOf(Object.fromEntries(once)));
    assert.equal(more, 0);
    assert.deepEqual(twice, once);
  });
}
