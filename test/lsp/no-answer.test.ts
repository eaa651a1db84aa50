// Files that never come, or come late: what is known is checked, and the rest when it comes. Changes on disk by the
// hundred thousand: a bounded number of sites, each read once.
import assert from 'node:assert/strict';
import { type FileSource, type Keeping, MAX_UNOPENED, type OpenSite, Sites } from '../../server/src/lsp/sites.ts';
import { WorkspaceSites } from '../../server/src/lsp/workspace-sites.ts';
import { Workspace } from '../../server/src/lsp/workspace.ts';

const TEXT = 'devices:\n  paddock-cam: {kind: camera}\n';
const never = <T>(): Promise<T> => new Promise(() => undefined);

/** A disk whose every folder has one site. */
const disk: FileSource = {
  list: (folder) => Promise.resolve([`${folder}/a.site.yaml`]),
  folders: () => Promise.resolve([]),
  read: () => Promise.resolve({ text: TEXT }),
};

const keepAll: Keeping = {
  keeps: () => true,
  forget: () => undefined,
  late: () => undefined,
  failed: (error) => assert.fail(String(error)),
};

const devices = (site: OpenSite): number => site.now().plan.site.devices.length;

describe('where files do not come', () => {
  for (const asked of ['list', 'read'] as const)
    it(`the open file is checked although ${asked} is never answered`, async () => {
      const sites = new Sites({ ...disk, [asked]: never }, keepAll, 1);
      const site = sites.opened('memory:/house/open.site.yaml', TEXT);
      await site.loaded;
      assert.equal(devices(site), 1);
      assert.equal((await sites.look('memory:/other')).plan.site.devices.length, 0);
    });

  it('each file that comes late is reported, and one whose turn never comes keeps none back', async () => {
    const give: ((read: { readonly text: string }) => void)[] = [];
    const late: string[] = [];
    const source: FileSource = {
      ...disk,
      list: (folder) => Promise.resolve(['never', 'late', 'soon'].map((name) => `${folder}/${name}.site.yaml`)),
      read: (uri) =>
        uri.includes('soon') ? disk.read(uri) : new Promise((give_) => uri.includes('late') && give.push(give_)),
    };
    const came = new Promise<void>((resolve) => {
      const keeping = { ...keepAll, late: ({ folder }: OpenSite) => (late.push(folder), resolve()) };
      const sites = new Sites(source, keeping, 1);
      void sites.kept('memory:/house').then((site) => {
        assert.ok(site !== undefined, 'it is kept, as files may still come');
        assert.equal(devices(site), 1);
        assert.deepEqual(late, []);
        for (const each of give) each({ text: TEXT.replace('paddock', 'gate') });
        void came.then(() => assert.equal(devices(site), 2));
      });
    });
    await came;
    assert.deepEqual(late, ['memory:/house']);
  });

  it('a folder of the workspace that cannot be listed keeps no other back, and is taken when it comes', async () => {
    const checked: string[] = [];
    let answer: (files: readonly string[]) => void = () => undefined;
    const slow = new Promise<readonly string[]>((give) => (answer = give));
    const source: FileSource = {
      ...disk,
      list: (folder) => (folder === 'memory:/slow' ? slow : disk.list(folder)),
    };
    const workspace = new Workspace();
    workspace.change(
      ['memory:/slow', 'memory:/house'].map((uri) => ({ uri, name: uri })),
      [],
    );
    const sites = new Sites(source, keepAll, 1);
    await new Promise<void>((resolve) => {
      const unopened = new WorkspaceSites({
        source,
        sites,
        workspace,
        checkSoon: ({ folder }) => {
          checked.push(folder);
          if (folder === 'memory:/house') answer(['memory:/slow/a.site.yaml']);
          else resolve();
        },
        idle: () => Promise.resolve(),
        log: (message) => assert.fail(message),
        patience: 1,
      });
      for (const folder of workspace.all) unopened.look(folder);
    });
    assert.deepEqual(checked, ['memory:/house', 'memory:/slow']);
  });
});

describe('a hundred thousand changes on disk', () => {
  it('in as many folders: no more sites are kept than are shown', async () => {
    let reads = 0;
    const sites = new Sites({ ...disk, read: (uri) => (reads++, disk.read(uri)) }, keepAll);
    const changed = new Set<string>();
    const uris = Array.from({ length: 100_000 }, (_, i) => `memory:/house-${i}/a.site.yaml`);
    await sites.changedOnDisk(uris, ({ folder }) => changed.add(folder));
    assert.equal([...sites.all()].length, MAX_UNOPENED);
    assert.equal(changed.size, MAX_UNOPENED);
    assert.equal(reads, 2 * MAX_UNOPENED, 'each at its opening, and for its change');
  });

  it('of one site: it is read once, and few files at a time', async () => {
    let [lists, reading, most] = [0, 0, 0];
    const source: FileSource = {
      ...disk,
      list: (folder) => (lists++, disk.list(folder)),
      async read() {
        most = Math.max(most, ++reading);
        await Promise.resolve();
        reading--;
        return undefined;
      },
    };
    const sites = new Sites(source, keepAll);
    const open = sites.opened('memory:/farm/house/open.site.yaml', TEXT);
    await open.loaded;
    lists = 0;
    const files = Array.from({ length: 50_000 }, (_, i) => `memory:/farm/house/${i}.site.yaml`);
    const folders = Array.from({ length: 50_000 }, (_, i) => (i % 2 === 0 ? 'memory:/farm' : `memory:/farm/${i}`));
    const changed: OpenSite[] = [];
    await sites.changedOnDisk([...files, ...files, ...folders], (site) => changed.push(site));
    assert.equal(lists, 1);
    assert.ok(most <= 65, `${most} at a time`);
    assert.deepEqual(new Set(changed), new Set([open]));
    assert.ok(changed.length <= 2);
  });
});
