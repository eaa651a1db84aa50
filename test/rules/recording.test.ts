import assert from 'node:assert/strict';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { diagnosticsOf, edited } from '../site.ts';

const FILE = 'harrow-lane.site.yaml';

function of(rule: string, text: string): Diagnostic[] {
  return diagnosticsOf({ [FILE]: text }).filter((diagnostic) => diagnostic.rule.id === rule);
}

function messages(rule: string, text: string): string[] {
  return of(rule, text).map(({ message }) => message);
}

function afterFirstFix(rule: string, text: string): string {
  const fix = of(rule, text).flatMap(({ fixes }) => fixes?.() ?? [])[0];
  assert.ok(fix !== undefined, `${rule} offers a fix`);
  return edited({ [FILE]: text }, fix.edits)[FILE] ?? '';
}

/** Two cameras of 8 Mb/s, 86.4 GB a day each (Mb/s × 10.8), on a volume of 1 TB. */
function site({ paddock = '', yard = '', policies = '' }): string {
  return `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s, keyframe-interval: 2 s}}
  yard: {source: yard-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s, keyframe-interval: 2 s}}
volumes:
  archive: {host: recorder, capacity: 1 TB}
recordings:
  paddock: {stream: paddock, volume: archive${paddock}}
  yard: {stream: yard, volume: archive${yard}}
${policies}`;
}

describe('Recordings that do not fit', () => {
  it('are shortened alike', () => {
    // 900 GB / (14 + 6) d at 86.4 GB a day: 52 % of each, in whole days.
    const fixed = afterFirstFix('volume-fill', site({ paddock: ', keep: 14 d', yard: ', keep: 6 d' }));
    assert.match(fixed, /paddock: \{stream: paddock, volume: archive, keep: 7 d\}/);
    assert.match(fixed, /yard: \{stream: yard, volume: archive, keep: 3 d\}/);
    assert.deepEqual(messages('volume-fill', fixed), []);
  });

  it('are not shortened below what policy asks: the others make room', () => {
    const policies = 'policies: {retention: [{recordings: [paddock], at-least: 9 d}]}\n';
    const fixed = afterFirstFix('volume-fill', site({ paddock: ', keep: 14 d', yard: ', keep: 14 d', policies }));
    assert.match(fixed, /paddock, volume: archive, keep: 9 d\}/);
    // 900 GB − 9 × 86.4 GB = 122.4 GB, 34 h of the other.
    assert.match(fixed, /yard, volume: archive, keep: 34 h\}/);
    assert.deepEqual([...messages('volume-fill', fixed), ...messages('retention', fixed)], []);
  });

  it('are left to the person where policy asks for more than fits', () => {
    const policies = 'policies: {retention: [{recordings: [paddock, yard], at-least: 7 d}]}\n';
    const text = site({ paddock: ', keep: 14 d', yard: ', keep: 14 d', policies });
    assert.deepEqual(
      of('volume-fill', text).flatMap(({ fixes }) => fixes?.() ?? []),
      [],
    );
    // 14 · 172.8 GB: told once, of the volume.
    assert.match(messages('volume-fill', text).join('\n'), /^archive must hold 2\.42 TB.*$/);
    assert.deepEqual(messages('retention', text), []);
  });

  it('may be just at the limit', () => {
    // 2 × 86.4 GB × 5 d = 864 GB.
    const keep = { paddock: ', keep: 5 d', yard: ', keep: 5 d' };
    assert.deepEqual(
      messages('volume-fill', site({ ...keep, policies: 'policies: {volume-fill: {limit: 86.4 %}}\n' })),
      [],
    );
    assert.equal(
      messages('volume-fill', site({ ...keep, policies: 'policies: {volume-fill: {limit: 86.39 %}}\n' })).length,
      1,
    );
    const warned = of('volume-fill', site({ ...keep, policies: 'policies: {volume-fill: {warn: 80 %}}\n' }));
    assert.deepEqual(
      warned.map(({ severity }) => severity),
      ['warning'],
    );
  });
});

describe('File names', () => {
  const named = (file: string, more = 'segment: 60 s'): string[] => [
    ...messages('file-name-collision', site({ paddock: `, ${more}, file: "${file}"` })),
  ];

  it('are fine to the second, with the date', () => {
    for (const file of ['%Y-%m-%d_%H-%M-%S.mp4', '%F/%T.mp4', 'paddock/%s.mp4', '%Y/%j/%H%M%S.mp4'])
      assert.deepEqual(named(file), [], file);
  });

  it('may come again once what had them is deleted', () => {
    assert.deepEqual(named('%a/%H-%M-%S.mp4', 'segment: 60 s, keep: 7 d'), []);
    assert.match(
      named('%a/%H-%M-%S.mp4', 'segment: 60 s, keep: 8 d')[0] ?? '',
      /repeat every week, and it is kept for 8 d/,
    );
  });

  for (const [file, more] of [
    ['paddock.mp4', 'segment: 60 s'],
    ['%F.mp4', 'segment: 60 s'],
    ['%Y%m%d-%H.mp4', 'segment: 10 min'],
    ['%F_%R.mp4', 'segment: 30 s'],
    ['%Y-%m-%d_%H-%M.mp4', 'segment: 60 s'],
    ['%H%M%S', 'segment: 60 s'],
    ['%M-%S.mp4', 'segment: 60 s'],
    ['100%%/%H:%M.mp4', 'segment: 10 s'],
  ] as const) {
    it(`${file} is completed, so that nothing more is found`, () => {
      const fixed = afterFirstFix('file-name-collision', site({ paddock: `, ${more}, file: "${file}"` }));
      assert.deepEqual(messages('file-name-collision', fixed), [], fixed);
    });
  }

  it('of zones whose clocks never go back need no offset', () => {
    const file = { paddock: ', segment: 60 s, file: "%F_%T.mp4"' };
    // Neither has had summer time since before 2026: zoneinfo, tzdata 2025b.
    for (const zone of ['UTC', 'Asia/Tokyo'])
      assert.deepEqual(messages('repeated-hour', `site: {timezone: ${zone}}${site(file)}`), []);
    // 2027-04-03 16:00Z and 2026-04-04 16:00Z; the first of the window: zoneinfo, tzdata 2025b.
    assert.match(
      messages('repeated-hour', `site: {timezone: Australia/Sydney}${site(file)}`)[0] ?? '',
      /from 02:00 to 03:00, as on 2026-04-05, comes twice/,
    );
    assert.match(
      messages('repeated-hour', `site: {timezone: America/New_York}${site(file)}`)[0] ?? '',
      /from 01:00 to 02:00, as on 2026-11-01, comes twice/,
    );
  });

  it('of a day need no offset: the hour is not in them', () => {
    assert.deepEqual(
      messages(
        'repeated-hour',
        `site: {timezone: Europe/London}${site({ paddock: ', segment: 1 d, file: "%F.mp4"' })}`,
      ),
      [],
    );
  });
});

describe('Files and keyframes', () => {
  it('fit where one is a multiple of the other, and nothing is said where no interval is known', () => {
    assert.deepEqual(messages('segment-keyframe', site({ paddock: ', segment: 60 s', yard: ', segment: 2 s' })), []);
    assert.deepEqual(
      messages('segment-keyframe', site({ paddock: ', segment: 61 s' }).replaceAll(', keyframe-interval: 2 s', '')),
      [],
    );
  });

  it('keep the unit in which they are written', () => {
    assert.match(afterFirstFix('segment-keyframe', site({ paddock: ', segment: 61 s' })), /segment: 62 s/);
  });
});

describe('A recorder that is not reached', () => {
  const text = `
vlans: {house: {id: 10}, video: {id: 20}}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}}}
  paddock-cam: {kind: camera}
  recorder: {kind: server}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder]}
volumes: {archive: {host: recorder, capacity: 8 TB}}
recordings: {paddock: {stream: paddock, volume: archive, keep: 14 d}}
`;
  const severities = (rule: string, site: string): string[] => of(rule, site).map(({ severity }) => severity);

  it('is an error where the way is broken, which reports the recording too', () => {
    assert.deepEqual(severities('unreached-receiver', text), ['error']);
    assert.deepEqual(severities('recorder-not-receiving', text), []);
  });

  it('is an error at the recording where nobody lets it receive', () => {
    assert.deepEqual(severities('recorder-not-receiving', text.replace('[recorder]', '[]')), ['error']);
  });

  it('is not found before the first cable is written', () => {
    assert.deepEqual(severities('recorder-not-receiving', text.replace(/cables:[^]*(?=streams:)/, '')), []);
  });
});

describe('Policies for one recording', () => {
  it('count together', () => {
    const policies = `policies:
  retention:
    - {recordings: [paddock, paddock], at-least: 7 d, at-most: 30 d}
    - {recordings: [paddock], at-least: 10 d}
`;
    const kept = (days: number): string[] =>
      messages('retention', site({ paddock: `, keep: ${days} d`, policies }).replace('1 TB', '8 TB'));
    assert.deepEqual(kept(8), ['paddock is kept for 8 d, and policy asks for 10 d at least. Keep it longer.']);
    assert.deepEqual(kept(10), []);
    assert.deepEqual(kept(31), ['paddock is kept for 31 d, and policy allows 30 d at most. Delete it sooner.']);
  });
});
