import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NEW_SITES } from '../../server/src/site/new-site/new-site.ts';
import { plumblineHere } from './run.ts';

describe('plumbline new', () => {
  let folder: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-new-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  for (const like of Object.keys(NEW_SITES)) {
    it(`writes a site like ${like} that checks clean, with not so much as a hint`, async () => {
      const site = join(folder, 'deep', 'home');
      const { status, out } = await plumblineHere(['new', '--like', like, site]);
      assert.equal(status, 0);
      assert.match(out, /plumbline check/);
      assert.deepEqual(await plumblineHere(['check', '--fail-on', 'hint', site]), { status: 0, out: '', err: '' });
    });
  }

  it("has this computer's time zone", async () => {
    await plumblineHere(['new', folder]);
    const own = new Intl.DateTimeFormat().resolvedOptions().timeZone;
    assert.match(readFileSync(join(folder, 'home.site.yaml'), 'utf8'), new RegExp(`timezone: (?:Etc/)?${own}\\b`));
  });

  it('has a first line that keeps its word: a slower recorder cannot take both cameras', async () => {
    await plumblineHere(['new', folder]);
    const file = join(folder, 'home.site.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace(/(recorder: .*speed: )1 Gb/, '$110 Mb'));
    const { status, out } = await plumblineHere(['check', folder]);
    assert.equal(status, 1);
    assert.match(out, /is to carry 16\.1 Mb\/s at peak, 161 % of 10 Mb\/s/);
  });

  it('says where no folder can be: below a file, in links in a circle, of too long a name', async () => {
    writeFileSync(join(folder, 'file'), '');
    symlinkSync(join(folder, 'a'), join(folder, 'b'));
    symlinkSync(join(folder, 'b'), join(folder, 'a'));
    for (const name of ['file', 'file/x', 'a/x', 'x'.repeat(5000)]) {
      const { status, err } = await plumblineHere(['new', join(folder, name)]);
      assert.equal(status, 2, name);
      assert.match(err, /cannot be (?:read|made|written)/);
    }
  });

  it('leaves a site that is there as it is', async () => {
    writeFileSync(join(folder, 'mine.site.yaml'), 'site: {name: Mine}\n');
    const { status, err } = await plumblineHere(['new', folder]);
    assert.equal(status, 2);
    assert.match(err, /mine\.site\.yaml/);
    assert.deepEqual(readdirSync(folder), ['mine.site.yaml']);
    assert.equal((await plumblineHere(['new', join(folder, 'mine.site.yaml')])).status, 2);
    assert.equal(readFileSync(join(folder, 'mine.site.yaml'), 'utf8'), 'site: {name: Mine}\n');
  });
});
