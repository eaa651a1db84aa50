// What a page may send to the extension, and what the editor may have kept of it: forged, it leads nowhere.
import assert from 'node:assert/strict';
import { URI } from 'vscode-uri';
import { isOfSite, messageOf } from '../../client/src/pages/from-page.ts';
import { keyIn } from '../../client/src/pages/kept-key.ts';
import { hasTexts, isDrawing, parsed } from '../../client/src/pages/untrusted-json.ts';

const NOTHING = { isReady: false };
const FILE = 'file:///home/ruth/harrow-lane/network.site.yaml';

describe('a message of a page', () => {
  it('is taken as the page sends it', () => {
    assert.deepEqual(messageOf({ ready: true }), { isReady: true });
    const [names, name] = ['devices', 'paddock-cam'];
    assert.deepEqual(messageOf({ chosen: { names, name } }), { ...NOTHING, chosen: { names, name } });
    assert.deepEqual(messageOf({ chosen: { names, at: name } }), { ...NOTHING, chosen: { names, name } });
    assert.deepEqual(messageOf({ hover: { names, name } }), { ...NOTHING, hover: { names, name } });
    assert.deepEqual(messageOf({ chosen: { uri: FILE, line: '4', character: '0' } }), {
      ...NOTHING,
      chosen: { uri: FILE, line: 4, character: 0 },
    });
  });

  const getter = Object.defineProperty({ names: 'devices' }, 'name', { get: () => assert.fail('it was run') });
  const place = { uri: FILE, line: '1', character: '1' };
  it('is passed over where it is forged', () => {
    for (const sent of [
      undefined,
      null,
      5,
      'ready',
      [],
      [{ ready: true }],
      { ready: 'yes' },
      { ready: { toString: 5 } },
      ...['chosen', 'hover'].flatMap((kind) =>
        [
          null,
          5,
          'devices paddock-cam',
          [],
          {},
          getter,
          { names: 'devices' },
          { name: 'paddock-cam' },
          { names: 5, name: 'paddock-cam' },
          { names: 'devices', name: { toString: () => 'x' } },
          { ...place, uri: 5 },
          { ...place, uri: [FILE] },
          { ...place, line: -1 },
          { ...place, line: '-1' },
          { ...place, line: '1e9' },
          { ...place, line: '9999999999' },
          { ...place, character: 'NaN' },
          { ...place, character: undefined },
          Object.create({ names: 'devices', name: 'paddock-cam' }),
        ].map((value: unknown) => ({ [kind]: value })),
      ),
      Object.create({ ready: true }),
    ] as readonly unknown[])
      assert.deepEqual(
        messageOf(sent),
        NOTHING,
        JSON.stringify(sent, (key, value: unknown) => (key === 'name' ? '' : value)),
      );
  });
});

describe('a page leads to', () => {
  const leads = (file: string, folder = 'file:///home/ruth/harrow-lane'): boolean =>
    isOfSite(URI.parse(file), URI.parse(folder));

  it('a file of its site, however its address is written', () => {
    assert.ok(leads(FILE));
    assert.ok(leads(FILE.replace('network', 'h%C3%BChner%20100%25')));
    assert.ok(leads(FILE, 'file:///home/ruth/harrow-lane/'));
    assert.ok(leads('file:///C%3A/site/a.site.yaml', 'file:///c:/site'));
    assert.ok(leads('vscode-vfs://github/ruth/a.site.yaml', 'vscode-vfs://github/ruth'));
  });

  it('no other file', () => {
    for (const file of [
      'file:///etc/passwd',
      'file:///home/ruth/.ssh/id_ed25519',
      'file:///home/ruth/harrow-lane/notes.yaml',
      'file:///home/ruth/harrow-lane/below/a.site.yaml',
      'file:///home/ruth/harrow-lane/../other/a.site.yaml',
      'file:///home/ruth/harrow-lane/%2e%2e/other/a.site.yaml',
      'file:///home/ruth/harrow-lane/..%2fa.site.yaml',
      'file:///home/ruth/harrow-lane/..%5Ca.site.yaml',
      'file:///home/ruth/harrow-lane-2/a.site.yaml',
      'file:///home/ruth/a.site.yaml',
      'file://server/home/ruth/harrow-lane/a.site.yaml',
      'command:workbench.action.quit?a.site.yaml',
      'https://example.org/home/ruth/harrow-lane/a.site.yaml',
      `${FILE}?x`,
      `${FILE}#x`,
      '',
    ])
      assert.equal(leads(file), false, file);
  });
});

describe('what the editor kept of a page', () => {
  it('is a key, or nothing', () => {
    assert.equal(keyIn({ of: 'plumbline.report file:///a' }), 'plumbline.report file:///a');
    for (const state of [undefined, null, 5, [], {}, { of: 5 }, { of: null }, 'of'])
      assert.equal(keyIn(state), undefined);
  });

  it('says a drawing, or a made file, or nothing', () => {
    assert.ok(isDrawing(parsed('{"kind": "switch", "subject": "core", "rate": "peak"}')));
    for (const text of [
      '',
      '{',
      'null',
      '[]',
      '5',
      '{"kind": "switch"}',
      '{"kind": 5, "subject": "core"}',
      '{"kind": "switch", "subject": "core", "vlan": {}}',
    ])
      assert.ok(!isDrawing(parsed(text)), text);
    assert.ok(hasTexts({ folder: 'file:///a', kind: 'labels' }, ['folder', 'kind'], ['subject']));
    assert.ok(!hasTexts({ folder: 'file:///a', kind: 'labels', subject: 5 }, ['folder', 'kind'], ['subject']));
    assert.ok(!hasTexts(null, [], []));
  });
});
