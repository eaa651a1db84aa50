import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { check } from '../server/src/rules/check.ts';
import { SiteFolder } from '../server/src/site/folder.ts';

describe('the README', () => {
  const blocks = [...readFileSync('README.md', 'utf8').matchAll(/^```yaml\n(.*?)^```/gms)].map((match) => match[1] ?? '');

  it('shows a site that checks clean once what it accepts is accepted', () => {
    const [site = '', lint = ''] = blocks;
    const folder = new SiteFolder();
    folder.set('file:///site.site.yaml', site);
    assert.deepEqual(check(folder).diagnostics.map(({ rule }) => rule.id), ['port-speed-mismatch']);
    folder.set('file:///lint.site.yaml', lint);
    assert.deepEqual(check(folder).diagnostics.map(({ message }) => message), []);
  });
});
