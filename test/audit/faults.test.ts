import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { diagnose } from '../../server/src/audit/diagnose.ts';
import { faults } from '../../server/src/audit/faults.ts';
import { ruleText } from '../../server/src/features/hover/rule.ts';
import { RulePages } from '../../server/src/lsp/rule-pages.ts';
import { faultIds, ruleIds } from '../../server/src/rules/ids.generated.ts';
import { headOf } from '../../server/src/site/item.ts';
import { diagnosticsOf } from '../site.ts';
import { siteOf } from '../site-of.ts';

describe('What audits find', () => {
  it('has ids of its own, in small letters with hyphens', () => {
    assert.deepEqual(
      faults.map(({ id }) => id),
      faultIds,
    );
    assert.equal(new Set([...ruleIds, ...faultIds]).size, ruleIds.length + faultIds.length);
    for (const id of faultIds) assert.match(id, /^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  for (const { id, summary, why } of faults) {
    it(`${id} says in a line what is wrong, and why it matters, on a page of its own`, () => {
      assert.match(summary, /^[A-Z][^\n]*\.$/);
      assert.ok(why.length > 40);
      assert.ok(existsSync(new URL(`../../schemas/rules/${id}.md`, import.meta.url)));
      assert.equal(new RulePages('file:///rules').of(id), `file:///rules/${id}.md`);
      assert.ok(ruleText(id).includes(why.trim()));
    });
  }

  const [fault] = faults;
  assert.ok(fault !== undefined);
  const told = (lint: string): string[] => {
    const site = siteOf(`devices:\n  core: {kind: switch}\n${lint}`);
    const [core] = site.devices;
    assert.ok(core !== undefined);
    return diagnose(site, [{ fault, at: headOf(core.item), message: 'so\nmuch', about: ['core'] }]).map(
      ({ severity, message, rule }) => `${severity} ${message} ${rule.id}`,
    );
  };

  it('is told in one line', () => assert.deepEqual(told(''), [`warning so much ${fault.id}`]));

  it('is as grave as the site says', () => {
    assert.deepEqual(told(`lint:\n  rules: {${fault.id}: error}\n`), [`error so much ${fault.id}`]);
    assert.deepEqual(told(`lint:\n  rules: {${fault.id}: off}\n`), []);
  });

  it('is accepted where the site accepts it, and no check calls that unknown or unused', () => {
    const lint = `lint:\n  accept: [{rule: ${fault.id}, at: core, because: a backup runs there}]\n`;
    assert.deepEqual(told(lint), []);
    assert.deepEqual(told(lint.replace('at: core', 'at: stable')), [`warning so much ${fault.id}`]);
    const rules = diagnosticsOf({ 'a.site.yaml': lint }).map(({ rule }) => rule.id);
    assert.deepEqual(
      rules.filter((id) => id === 'unknown-rule' || id === 'unused-acceptance'),
      [],
    );
  });
});
