import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { diagnose } from '../../server/src/lint/diagnose.ts';
import { auditRules } from '../../server/src/audit/rules.ts';
import { ruleText } from '../../server/src/features/hover/rule.ts';
import { RulePages } from '../../server/src/lsp/rule-pages.ts';
import { ruleById } from '../../server/src/check.ts';
import { namePlace } from '../../server/src/site/item.ts';
import { diagnosticsOf } from '../site.ts';
import { siteOf } from '../site-of.ts';

describe('What audits find', () => {
  it('has ids of its own, in small letters with hyphens', () => {
    const ids = auditRules.map(({ id }) => id);
    assert.deepEqual([...ruleById.keys()].slice(-ids.length), ids);
    assert.equal(new Set(ids).size, ids.length);
    for (const id of ids) assert.match(id, /^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  for (const { id, summary, why } of auditRules) {
    it(`${id} says in a line what is wrong, and why it matters, on a page of its own`, () => {
      assert.match(summary, /^[A-Z][^\n]*\.$/);
      assert.ok(why.length > 40);
      assert.ok(existsSync(new URL(`../../schemas/rules/${id}.md`, import.meta.url)));
      assert.equal(new RulePages('file:///rules').of(id), `file:///rules/${id}.md`);
      assert.ok(ruleText(id).includes(why.trim()));
    });
  }

  const [audited] = auditRules;
  assert.ok(audited !== undefined);
  const told = (lint: string): string[] => {
    const site = siteOf(`devices:\n  core: {kind: switch}\n${lint}`);
    const [core] = site.devices;
    assert.ok(core !== undefined);
    return diagnose(site.lint, [
      { rule: audited, at: namePlace(core.item), message: 'so\nmuch', acceptAt: ['core'] },
    ]).map(({ severity, message, rule }) => `${severity} ${message} ${rule.id}`);
  };

  it('is reported in one line', () => assert.deepEqual(told(''), [`warning so much ${audited.id}`]));

  it('is as grave as the site says', () => {
    assert.deepEqual(told(`lint:\n  rules: {${audited.id}: error}\n`), [`error so much ${audited.id}`]);
    assert.deepEqual(told(`lint:\n  rules: {${audited.id}: off}\n`), []);
  });

  it('is accepted where the site accepts it, and no check calls that unknown or unused', () => {
    const lint = `lint:\n  accept: [{rule: ${audited.id}, at: core, because: a backup runs there}]\n`;
    assert.deepEqual(told(lint), []);
    assert.deepEqual(told(lint.replace('at: core', 'at: stable')), [`warning so much ${audited.id}`]);
    const rules = diagnosticsOf({ 'a.site.yaml': lint }).map(({ rule }) => rule.id);
    assert.deepEqual(
      rules.filter((id) => id === 'unknown-rule' || id === 'unused-acceptance'),
      [],
    );
  });
});
