import assert from 'node:assert/strict';
import { type Checked, checkBy } from '../../server/src/lint/check.ts';
import type { AcceptanceRule, Report, Rule, RuleContext } from '../../server/src/lint/rule.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { namePlace } from '../../server/src/site/item.ts';
import { setValue } from '../../server/src/site/edit.ts';

const FILE = 'a.site.yaml';

function ruleOf(id: string, check: (context: RuleContext, report: Report) => void): Rule {
  return { id, severity: 'warning', summary: 'For this test.', why: 'For this test.', check };
}

/** Finds each device, by its name. */
const devices = ruleOf('devices', ({ site }, report) => {
  for (const { item, name } of site.devices) report({ at: namePlace(item), message: name, acceptAt: [name] });
});

function checked(text: string, rules: readonly Rule[], acceptanceRules: readonly AcceptanceRule[] = []): Checked {
  const folder = new SiteFolder();
  folder.set(FILE, text);
  return checkBy({ rules, acceptanceRules, ids: new Set(rules.map(({ id }) => id)) }, folder);
}

function found({ diagnostics }: Checked): string[] {
  return diagnostics.map(({ rule, severity, message }) => `${severity} ${rule.id}: ${message}`);
}

const SITE = `
devices:
  core: {kind: switch}
  gate-cam: {kind: camera}
`;

describe('A check', () => {
  it('gives findings the severity of their rule, their own, or the one that the site sets', () => {
    const hints = ruleOf('hints', ({ site: { items } }, report) => {
      for (const item of items.slice(0, 1))
        report({ at: namePlace(item), message: 'so', severity: 'hint', acceptAt: [] });
    });
    const lint = 'lint:\n  rules: {devices: error}\n';
    assert.deepEqual(found(checked(SITE, [devices, hints])), [
      'warning devices: core',
      'warning devices: gate-cam',
      'hint hints: so',
    ]);
    assert.deepEqual(found(checked(SITE + lint, [devices])), ['error devices: core', 'error devices: gate-cam']);
    assert.deepEqual(found(checked(SITE + lint.replace('error', 'off'), [devices])), []);
  });

  it('names the first of very many findings, and how many more there are; those of one entry hide no others', () => {
    const bounds = { most: 10, named: 3 };
    const many = ruleOf('many', ({ site: { items } }, report) => {
      for (const item of items)
        for (let left = Number(item.name.slice(1)); left > 0; left--)
          report({ at: namePlace(item), message: `${item.name} ${left}`, acceptAt: [item.name] });
    });
    const words = (text: string): string[] => {
      const folder = new SiteFolder();
      folder.set(FILE, text);
      const { diagnostics } = checkBy({ rules: [many], acceptanceRules: [], ids: new Set(['many']), bounds }, folder);
      return diagnostics.map(({ message }) => message.replace(/ of these.*/, ''));
    };
    assert.deepEqual(words('vlans:\n  a3:\n  b2:\n'), ['a3 3', 'a3 2', 'a3 1', 'b2 2', 'b2 1']);
    assert.deepEqual(words('vlans:\n  a5000:\n  b2:\n'), [
      'a5000 5000',
      'a5000 4999',
      'a5000 4998',
      'There are 4,997 more',
      'b2 2',
      'b2 1',
    ]);
    const each = Array.from({ length: 20 }, (_, i) => `  ${String.fromCharCode(97 + i)}2:\n`).join('');
    assert.deepEqual(words(`vlans:\n${each}`), ['a2 2', 'a2 1', 'b2 2', 'There are 37 more']);
  });

  it('leaves out what is accepted by that rule and name', () => {
    const lint = 'lint:\n  accept:\n    - {rule: devices, at: core, because: it stays}\n';
    assert.deepEqual(found(checked(SITE + lint, [devices])), ['warning devices: gate-cam']);
  });

  it('runs rules on acceptances over those that match nothing, with what their rule finds', () => {
    const unused: AcceptanceRule = {
      ...devices,
      id: 'unused',
      checkUnused: (all, report) => {
        for (const { acceptance, isOff, found: own } of all)
          report({ at: namePlace(acceptance.item), message: `${acceptance.at} ${isOff} ${own.length}`, acceptAt: [] });
      },
    };
    const lint = `lint:
  rules: {other: off}
  accept:
    - {rule: devices, at: core, because: it stays}
    - {rule: devices, at: barn, because: it was there}
    - {rule: other, at: core, because: it is off}
    - {rule: of-an-audit, at: core, because: audits find it}
`;
    const other = { ...devices, id: 'other' };
    assert.deepEqual(found(checked(SITE + lint, [devices, other], [unused])), [
      'warning devices: gate-cam',
      'warning unused: barn false 2',
      'warning unused: core true 2',
    ]);
  });

  it('reports a rule that fails, and runs the others', () => {
    const failing = ruleOf('failing', () => {
      throw new Error('no such thing');
    });
    const [first, ...others] = found(checked(SITE, [failing, devices]));
    assert.match(
      first ?? '',
      /^error failing: The rule failing failed, which is a fault of Plumbline: .*no such thing/,
    );
    assert.deepEqual(others, ['warning devices: core', 'warning devices: gate-cam']);
  });

  it('reports only faults of the syntax where an item is half typed', () => {
    const text = SITE.replace('{kind: camera}', '{kind: camera, poe: {');
    const syntax = { ...devices, id: 'yaml-syntax' };
    assert.deepEqual(found(checked(text, [devices])), ['warning devices: core']);
    assert.ok(found(checked(text, [syntax])).includes('warning yaml-syntax: gate-cam'));
  });
});

describe('A check after an edit', () => {
  function counted(): { rule: Rule; runs: () => number } {
    let count = 0;
    const rule = ruleOf('streams', ({ site }, report) => {
      count++;
      for (const { item, name } of site.streams) {
        const at = namePlace(item);
        const fixes = () => [
          { title: `Of ${site.devices.length}`, safe: true, edits: [setValue(item, ['source'], 'core')] },
        ];
        report({ at, message: name, acceptAt: [name], fixes });
      }
    });
    return { rule, runs: () => count };
  }

  const STREAMS = 'streams:\n  gate: {source: gate-cam}\n';

  it('runs a rule again only where something that it read has changed', () => {
    const { rule, runs } = counted();
    const rules = { rules: [rule], acceptanceRules: [], ids: new Set([rule.id]) };
    const folder = new SiteFolder();
    let last: Checked | undefined;
    const messages = (text: string): string[] => {
      folder.set(FILE, text);
      last = checkBy(rules, folder, last);
      return last.diagnostics.map(({ message }) => message);
    };
    assert.deepEqual(messages(SITE + STREAMS), ['gate']);
    assert.deepEqual(messages(`vlans:\n  video: {id: 20}\n${SITE}${STREAMS}`), ['gate']);
    assert.equal(runs(), 1);
    assert.deepEqual(messages(SITE + STREAMS.replace('gate:', 'yard:')), ['yard']);
    assert.equal(runs(), 2);
  });

  it('gives fixes of the site as it is now, for findings that are kept too', () => {
    const { rule, runs } = counted();
    const rules = { rules: [rule], acceptanceRules: [], ids: new Set([rule.id]) };
    const folder = new SiteFolder();
    folder.set(FILE, SITE + STREAMS);
    const before = checkBy(rules, folder);
    assert.equal(before.diagnostics.length, 1);
    folder.set(FILE, `${SITE}  barn: {kind: switch}\n${STREAMS}`);
    const [diagnostic] = checkBy(rules, folder, before).diagnostics;
    assert.equal(runs(), 1);
    assert.deepEqual(
      diagnostic?.fixes?.().map(({ title }) => title),
      ['Of 3'],
    );
  });

  it('runs a few rules at a time until somebody asks for the rest', () => {
    const ran: string[] = [];
    const rules = ['one', 'two', 'three'].map((id) => ruleOf(id, () => void ran.push(id)));
    const check = checked(SITE, rules);
    assert.equal(
      check.proceed(() => true),
      false,
    );
    assert.deepEqual(ran, ['one']);
    assert.deepEqual(check.diagnostics, []);
    assert.deepEqual(ran, ['one', 'two', 'three']);
  });
});
