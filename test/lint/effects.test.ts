// What follows from another finding is left out: by identity, through any number of steps, and never in a circle.
import assert from 'node:assert/strict';
import { checkBy } from '../../server/src/lint/check.ts';
import type { Rule } from '../../server/src/lint/rule.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { namePlace } from '../../server/src/site/item.ts';
import { houses } from '../houses/read.ts';
import { diagnosticsOf } from '../site.ts';

/** A rule with one finding, which is `effects` and from which `entails` follow. */
function rule(id: string, effects: readonly object[], entails: readonly object[]): Rule {
  return {
    id,
    severity: 'warning',
    summary: 'For this test.',
    why: 'For this test.',
    check: ({ site }, report) => {
      for (const { item, name } of site.devices)
        report({ at: namePlace(item), message: id, acceptAt: [name], effects, entails });
    },
  };
}

function told(rules: readonly Rule[], lint = ''): string[] {
  const folder = new SiteFolder();
  folder.set('a.site.yaml', `devices:\n  core: {kind: switch}\n${lint}`);
  const { diagnostics } = checkBy({ rules, acceptanceRules: [], ids: new Set(rules.map(({ id }) => id)) }, folder);
  return diagnostics.filter(({ acceptAt }) => acceptAt.includes('core')).map(({ rule: { id } }) => id);
}

const [a, b, c] = [{}, {}, {}];

describe('Effects', () => {
  it('are reported at their cause alone, also what follows from an effect', () => {
    assert.deepEqual(told([rule('last', [b], []), rule('cause', [], [a]), rule('first', [a], [b])]), ['cause']);
  });

  it('are reported as well if something else is among them that no cause entails', () => {
    assert.deepEqual(told([rule('cause', [], [a]), rule('both', [a, c], [])]), ['cause', 'both']);
  });

  it('of each other are reported once', () => {
    assert.deepEqual(told([rule('one', [a], [b]), rule('other', [b], [a])]), ['one']);
    assert.deepEqual(told([rule('itself', [a], [a])]), ['itself']);
  });

  it('come back where the cause is accepted, or its rule is off', () => {
    const rules = [rule('cause', [], [a]), rule('effect', [a], [])];
    assert.deepEqual(told(rules, 'lint: {rules: {cause: off}}\n'), ['effect']);
    const accepted = 'lint:\n  accept:\n    - {rule: cause, at: core, because: it stays}\n';
    assert.deepEqual(told(rules, accepted), ['effect']);
  });

  it('come back in a house too', () => {
    const trunk = '8: {speed: 1 Gb/s, trunk: [house, video]}\n  recorder';
    const wrong = (houses.get('two-buildings') ?? '').replace(trunk, trunk.replace(', video', ''));
    const ids = (text: string): string[] => diagnosticsOf({ 'a.site.yaml': text }).map(({ rule: { id } }) => id);
    assert.deepEqual(ids(wrong), ['vlan-mismatch']);
    const off = ids(`${wrong}lint: {rules: {vlan-mismatch: off}}\n`);
    assert.ok(off.includes('unreached-receiver') && !off.includes('vlan-mismatch'), off.join());
  });
});
