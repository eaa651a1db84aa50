import assert from 'node:assert/strict';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { check } from '../server/src/check.ts';
import { SiteFolder } from '../server/src/site/folder.ts';

describe('the README', () => {
  const text = readFileSync('README.md', 'utf8');
  const blocks = [...text.matchAll(/^```yaml\n(.*?)^```/gms)].map((match) => match[1] ?? '');

  it('shows a site that checks clean once what it accepts is accepted', () => {
    const [site = '', , lint = ''] = blocks;
    const folder = new SiteFolder();
    folder.set('file:///site.site.yaml', site);
    assert.deepEqual(
      check(folder).diagnostics.map(({ rule }) => rule.id),
      ['poe-missing'],
    );
    folder.set('file:///lint.site.yaml', lint);
    assert.deepEqual(
      check(folder).diagnostics.map(({ message }) => message),
      [],
    );
  });

  it('shows an aerial system that checks clean', () => {
    const folder = new SiteFolder();
    folder.set('file:///television.site.yaml', blocks[1] ?? '');
    const { diagnostics, plan } = check(folder);
    assert.deepEqual(diagnostics, []);
    const [point] = plan.television.reception.outlets[0]?.points ?? [];
    assert.ok(text.includes(`${point?.signal.level.toFixed(1)} dBµV where`), 'the level');
    assert.ok(text.includes(`a margin of ${point?.margin?.toFixed(1)} dB`), 'the margin');
  });

  it('shows every picture that is taken, each small and with words for those who do not see it', () => {
    const inLight = [...text.matchAll(/<img alt="([^"]*)" src="client\/pictures\/([^"]*)">/g)];
    const inDark = [
      ...text.matchAll(/<source (media="\(prefers-color-scheme: dark\)") srcset="client\/pictures\/([^"]*)">/g),
    ];
    const shown = [...text.matchAll(/!\[([^\]]*)\]\(client\/pictures\/([^)]*)\)/g), ...inLight, ...inDark];
    const taken = readdirSync('client/pictures').filter((name) => name.endsWith('.png'));
    assert.deepEqual(shown.map(([, , name]) => name).sort(), taken.sort());
    for (const [, words = '', name = ''] of shown) {
      assert.ok(words.length > 20, name);
      assert.ok(statSync(`client/pictures/${name}`).size < 150_000, name);
    }
  });
});
