// What is kept of a rule from one edit to the next never shows: two sites in which it once did.
import assert from 'node:assert/strict';
import { check } from '../../server/src/check.ts';
import { type Checked, type Rules, checkBy } from '../../server/src/lint/check.ts';
import type { Rule } from '../../server/src/lint/rule.ts';
import { editedTexts } from '../../server/src/site/edit.ts';
import { SiteFolder, spanOf } from '../../server/src/site/folder.ts';
import { placeOf } from '../../server/src/site/item.ts';

const FILE = 'file:///harrow-lane/all.site.yaml';

/** Checks the texts one after the other, each as an edit of the one before. */
function editedThrough(
  texts: readonly string[],
  checked: (folder: SiteFolder, previous?: Checked) => Checked,
): Checked {
  const folder = new SiteFolder();
  let last: Checked | undefined;
  for (const text of texts) {
    folder.set(FILE, text);
    last = checked(folder, last);
    assert.ok(last.diagnostics.length >= 0);
  }
  assert.ok(last !== undefined);
  return last;
}

describe('what is kept of a rule', () => {
  it('follows a cable whose length alone has changed, for a rule that reads no cable itself', () => {
    const loopLengths: Rule = {
      id: 'loop-lengths',
      severity: 'error',
      summary: 'How long the cables that close loops are.',
      why: 'For this test.',
      check({ network }, report) {
        const [domain] = network.topology.domains;
        if (domain === undefined) return;
        for (const { cable } of network.tree(domain).loops)
          report({ at: placeOf(cable.item), message: `${(cable.length ?? 0) / 1000} m`, acceptAt: [] });
      },
    };
    const rules: Rules = { rules: [loopLengths], acceptanceRules: [], ids: new Set([loopLengths.id]) };
    const text = (length: string): string => `
devices:
  core: {kind: switch, ports: {1-2: {}}}
  barn: {kind: switch, ports: {1-2: {}}}
cables:
  - {from: core/1, to: barn/1}
  - {from: core/2, to: barn/2, length: ${length}}
`;
    const { diagnostics } = editedThrough([text('5 m'), text('50 m')], (folder, previous) =>
      checkBy(rules, folder, previous),
    );
    assert.deepEqual(
      diagnostics.map(({ message }) => message),
      ['50 m'],
    );
  });

  it('is of what the rule reads by name, so a copy of the context, which would be empty, is refused', () => {
    const copying: Rule = {
      id: 'copying',
      severity: 'error',
      summary: 'Copies the site.',
      why: 'For this test.',
      check({ site }, report) {
        for (const { item } of { ...site }.devices) report({ at: placeOf(item, []), message: 'found', acceptAt: [] });
      },
    };
    const rules: Rules = { rules: [copying], acceptanceRules: [], ids: new Set([copying.id]) };
    const { diagnostics } = editedThrough(['devices: {core: {kind: switch}}'], (folder) => checkBy(rules, folder));
    assert.equal(diagnostics.length, 1);
    assert.match(diagnostics[0]?.message ?? '', /a rule reads keys of its context by name: a copy would be empty/);
  });

  it('a quick fix destroys no text: it stands at the second route where the first is taken out, and changes that one', () => {
    const before = `
devices:
  core: {kind: switch, ports: {1-3: {speed: 1 Gb/s}}}
  recorder:
    kind: server
    ports: {eth: {address: 192.168.20.5}, spare: {}}
    routes:
      - {to: 224.0.0.0/4, port: eth}
      - {to: 239.192.20.0/14, port: eth}
`;
    const after = before.replace('      - {to: 224.0.0.0/4, port: eth}\n', '');
    const { diagnostics, files } = editedThrough([before, after], check);
    const [file] = files;
    const [finding] = diagnostics.filter(({ rule }) => rule.id === 'subnet-host-bits');
    assert.ok(file !== undefined && finding !== undefined);
    const { start, end } = spanOf(file, finding.at);
    assert.equal(after.slice(start, end), '239.192.20.0/14');
    const [fix] = finding.fixes?.() ?? [];
    assert.ok(fix !== undefined);
    const fixed = after.replace('239.192.20.0/14', '239.192.0.0/14');
    assert.deepEqual([...editedTexts(files, fix.edits)], [[FILE, fixed]]);
  });
});
