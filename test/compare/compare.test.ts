import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../../server/src/check.ts';
import { checkedSides } from '../../server/src/cli/compare.ts';
import { type Comparison, type Side, compare, isSamePlan } from '../../server/src/compare/compare.ts';
import { comparisonPage } from '../../server/src/compare/page.ts';
import { comparisonText } from '../../server/src/compare/text.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

const FROZEN = 'test/fixtures/harrow-lane-0.1';

/** The frozen sample, with some words of it replaced. */
function frozen(...edits: readonly (readonly [from: string, to: string])[]): Side {
  return check(frozenFolder(...edits));
}

function frozenFolder(...edits: readonly (readonly [from: string, to: string])[]): SiteFolder {
  const folder = new SiteFolder();
  const left = new Set(edits.map(([from]) => from));
  for (const name of readdirSync(FROZEN)) {
    let text = readFileSync(join(FROZEN, name), 'utf8');
    for (const [from, to] of edits)
      if (text.includes(from)) {
        text = text.replaceAll(from, to);
        left.delete(from);
      }
    folder.set(`file:///${name}`, text);
  }
  assert.deepEqual([...left], [], 'words that are not there');
  return folder;
}

function of(text: string): Side {
  const folder = new SiteFolder();
  folder.set('file:///a.site.yaml', text);
  return check(folder);
}

const work = ({ work: all }: Comparison): string[] =>
  all.map((one) => `${one.work}: ${one.before ?? '–'} → ${one.after ?? '–'}`);

// By hand: +2 Mb/s are 2 · 86,400 ÷ 8 = 21.6 GB a day; kept are 108 · 28 − 86.4 · 21 = 1,209.6 GB more.
describe('paddock-north of the frozen sample, at 10 Mb/s and kept for 28 days', () => {
  const stream = readFileSync(join(FROZEN, 'cameras.site.yaml'), 'utf8');
  const before = frozen();
  const [, own = ''] = /^ {2}paddock-north:\n([\s\S]*?)^ {2}\S/m.exec(stream) ?? [];
  const after = frozen(
    [own, own.replace('bitrate: 8 Mb/s, peak-bitrate: 14 Mb/s', 'bitrate: 10 Mb/s, peak-bitrate: 16 Mb/s')],
    ['volume: archive, segment: 60 s, keep: 21 d', 'volume: archive, segment: 60 s, keep: 28 d'],
  );
  const all = compare(before, after);

  it('brings no finding and solves none', () => assert.deepEqual(all.findings, { new: [], solved: [] }));

  it('is kept for longer, and fills the archive by 21.6 GB a day and 1,209.6 GB more', () => {
    assert.deepEqual(
      all.user.map(({ of: thing, what, before: then, after: now }) => [thing.after, what, then, now]),
      [
        ['paddock-north', 'kept', '21 d', '28 d'],
        ['archive', 'a day', '304 GB', '326 GB'],
        ['archive', 'needed', '7.94 TB', '9.15 TB'],
        ['archive', 'full after', '49.9 d', '46.6 d'],
      ],
    );
    const volume = ({ plan }: Side): { bytesPerDay: number; bytesKept: number } => {
      const found = plan.storage.volumes.find((one) => one.volume.name === 'archive');
      assert.ok(found !== undefined);
      return found;
    };
    assert.equal(volume(after).bytesPerDay - volume(before).bytesPerDay, 21.6e9);
    assert.equal(volume(after).bytesKept - volume(before).bytesKept, 1209.6e9);
  });

  it('reports the link that moves by more than a hundredth, and no other', () => {
    assert.deepEqual(
      all.links.map(({ from, to }) => `${from.after} → ${to.after}`),
      ['paddock-north-cam/eth → stable/2'],
    );
  });

  it('has the rate and the time to set, no work, and nothing to buy', () => {
    assert.deepEqual(
      all.settings.map((one) => `${one.of.after} ${one.key}: ${one.before} → ${one.after}`),
      [
        'paddock-north video bitrate: 8 Mb/s → 10 Mb/s',
        'paddock-north video peak-bitrate: 14 Mb/s → 16 Mb/s',
        'paddock-north keep: 21 d → 28 d',
      ],
    );
    assert.deepEqual(all.work, []);
    assert.deepEqual(all.purchases, { buy: [], left: [] });
  });
});

describe('Renamed devices', () => {
  const site = (name: string, rest: string): string => `
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  ${name}: {kind: camera, speed: 100 Mb/s${rest}}
cables: [{from: core/1, to: ${name}, type: cat6, length: 20 m, label: P-01}]
streams: {gate: {source: ${name}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}}}
`;

  for (const [sign, rest] of [
    ['MAC address', ', mac: 02:00:00:00:00:01'],
    ['address', ', address: 10.0.0.5'],
    ['label of its cable', ''],
  ] as const)
    it(`are known by the ${sign}`, () => {
      const all = compare(of(site('gate-cam', rest)), of(site('front-cam', rest)));
      assert.deepEqual(work(all), [
        'rename: gate-cam → front-cam',
        'relabel: P-01: core/1 – gate-cam/eth → P-01: core/1 – front-cam/eth',
      ]);
      assert.deepEqual([all.settings, all.user, all.links, all.purchases.buy], [[], [], [], []]);
      assert.deepEqual(all.findings, { new: [], solved: [] });
    });

  it('of another kind are others', () => {
    const other = site('gate-cam', '').replace('kind: camera', 'kind: server');
    assert.deepEqual(work(compare(of(site('gate-cam', '')), of(other.replaceAll('gate-cam', 'nas')))).slice(0, 2), [
      'install: – → nas, server',
      'remove: gate-cam, camera → –',
    ]);
  });
});

describe('What else was renamed', () => {
  const site = `
vlans: {video: {id: 20, subnet: 10.0.0.0/24}}
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s, vlan: video}}}
  cam: {kind: camera, address: 10.0.0.5, speed: 100 Mb/s}
  nas: {kind: server, address: 10.0.0.6, speed: 1 Gb/s}
  den: {kind: display, address: 10.0.0.7, speed: 1 Gb/s}
cables: [{from: core/1, to: cam}, {from: core/2, to: nas}, {from: core/3, to: den}]
streams:
  gate: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [nas]}
  wall: {carries: gate, source: nas, transport: rtp, group: 239.192.20.1, port: 5004, receivers: [den]}
volumes: {disk: {host: nas, path: /srv/disk, capacity: 1 TB}}
recordings: {gate: {stream: gate, volume: disk, segment: 60 s, keep: 9 d, file: "gate/%Y-%m-%dT%H-%M-%S%z.mkv"}}
`;
  const renamed = (...names: readonly (readonly [string, string])[]): string =>
    names.reduce((text, [old, name]) => text.replaceAll(old, name), site);

  for (const [what, text, set] of [
    ['a VLAN', renamed(['{video:', '{pictures:'], ['vlan: video', 'vlan: pictures']), ['vlans video → pictures']],
    ['a volume', renamed(['volume: disk', 'volume: store'], ['{disk:', '{store:']), ['volumes disk → store']],
    ['a stream that is sent to a group', renamed(['wall:', 'den-wall:']), ['streams wall → den-wall']],
  ] as const)
    it(`is told from what comes and goes: ${what}`, () => {
      const all = compare(of(site), of(text));
      assert.deepEqual(
        all.settings.map(({ section, key, before, after }) => [section, key, before, after]),
        set.map((words) => [words.split(' ')[0], 'name', words.split(' ')[1], words.split(' ')[3]]),
      );
      assert.deepEqual([all.findings, all.user, all.links, all.work], [{ new: [], solved: [] }, [], [], []]);
    });

  it('may be a stream, its recording and the folder that it writes to, all at once', () => {
    const all = compare(of(site), of(renamed(['gate', 'drive'])));
    assert.deepEqual(
      all.settings.map(({ section, key, before, after }) => `${section} ${key}: ${before} → ${after}`),
      [
        'streams name: gate → drive',
        'recordings name: gate → drive',
        'recordings file: gate/%Y-%m-%dT%H-%M-%S%z.mkv → drive/%Y-%m-%dT%H-%M-%S%z.mkv',
      ],
    );
    assert.deepEqual([all.findings, all.user, all.work], [{ new: [], solved: [] }, [], []]);
  });

  it('is another stream where another camera sends to the same group', () => {
    const other = site
      .replace('  nas:', '  yard: {kind: camera, address: 10.0.0.8, speed: 100 Mb/s}\n  nas:')
      .replace('{from: core/3', '{from: core/4, to: yard}, {from: core/3')
      .replace('carries: gate, source: nas', 'source: yard, video: {bitrate: 6 Mb/s}')
      .replace('wall:', 'view:');
    const { user } = compare(of(site), of(other));
    assert.deepEqual(
      user.map(({ of: { after }, what, before, after: now }) => [after, what, before, now]),
      [
        ['den', 'receives', null, 'view'],
        ['den', 'receives', 'wall', null],
      ],
    );
  });
});

describe('Cables', () => {
  const site = (...cables: readonly string[]): Side =>
    of(`
devices:
  core: {kind: switch, ports: {1-4: {speed: 1 Gb/s}}}
  cam: {kind: camera, address: 10.0.0.5, speed: 100 Mb/s}
  nas: {kind: server, address: 10.0.0.6, speed: 1 Gb/s}
cables:
${cables.map((cable) => `  - {${cable}}`).join('\n')}
`);
  const cam = 'from: core/1, to: cam, type: cat6, length: 20 m';

  it('are laid and pulled, bought by cut length and left over', () => {
    const all = compare(site(cam), site(cam, 'from: core/2, to: nas, type: cat6, length: 30 m'));
    assert.deepEqual(work(all), ['lay: – → core/2 – nas/eth, cat6, 30 m']);
    assert.deepEqual(all.purchases.buy, [
      { group: 'cable', what: 'cat6, 33 m', count: 1 },
      { group: 'connector', what: 'cat6, end of a cable', count: 2 },
    ]);
  });

  it('are moved where one end stays', () => {
    assert.deepEqual(work(compare(site(cam), site(cam.replace('core/1', 'core/3')))), [
      'move: cam/eth – core/1 → cam/eth – core/3',
      'relabel: cam/eth – core/1 → cam/eth – core/3',
    ]);
  });

  it('are the same the other way round', () =>
    assert.ok(isSamePlan(compare(site(cam), site('from: cam, to: core/1, type: cat6, length: 20 m')))));

  it('of another make are replaced', () =>
    assert.deepEqual(work(compare(site(cam), site(cam.replace('cat6', 'cat6a')))), [
      'replace: cam/eth – core/1, cat6, 20 m → cam/eth – core/1, cat6a, 20 m',
    ]));
});

describe('A comparison', () => {
  it('shows a new finding first, and no markup of a hostile name', () => {
    const before = of('devices: {core: {kind: switch, poe-budget: 10 W, ports: {1: {poe: af}}}}');
    const after = of(
      'devices: {core: {kind: switch, poe-budget: 10 W, ports: {1: {poe: af}}}, cam: {kind: camera, poe: {class: 3}, description: "<b>&"}}\ncables: [{from: core/1, to: cam}]',
    );
    const all = compare(before, after);
    assert.match(comparisonText(all), /^New findings\n {2}error core must feed 15\.4 W/);
    const page = comparisonPage(all, '<i>', '<u>');
    assert.doesNotMatch(page, /<i>|<u>|<script/);
  });

  it('says so where nothing differs', () =>
    assert.equal(comparisonText(compare(frozen(), frozen())), 'The two plans are the same.\n'));

  it('checks equal texts once', () => {
    const [plan, copy] = [frozenFolder(), frozenFolder()];
    const { before, after } = checkedSides(plan, copy);
    assert.equal(after, before);
    assert.equal(comparisonText(compare(before, after)), 'The two plans are the same.\n');
    copy.delete(copy.files[0]?.uri ?? '');
    assert.notEqual(checkedSides(plan, copy).after, before);
  });
});
