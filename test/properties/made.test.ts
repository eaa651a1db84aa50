// What cannot be made is found by a check: sites at random, each with a few keys changed or left out.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { check } from '../../server/src/check.ts';
import { nodeAt } from '../../server/src/site/edit.ts';
import { type Place, itemAt } from '../../server/src/site/item.ts';
import { OUTPUTS } from '../../server/src/make/outputs.ts';
import { type Entry, entriesOf, folderOf, smallSite, textOf } from './small-site.ts';

type Written = Record<string, unknown>;

/** A key of an entry, by its way in, and what it is set to; `undefined` takes it out. */
interface Change {
  readonly section: string;
  readonly route: readonly string[];
  readonly to: unknown;
}

const CHANGES: readonly Change[] = [
  ...[
    '../%s.mkv',
    '%Y-%m-%dT%H-%M-%S%z.mkv',
    'a/./b//%s.ts',
    '%M/%S.mkv',
    '%D %T.mkv',
    '100 % %s.mkv',
    '%Q%s.mp4',
    '%s.avi',
    '%s',
    '%-H%M%S.mkv',
    `${'a'.repeat(260)}%s.mkv`,
    'a\nb%s.mkv',
    '%F_%T%z.mp4',
    undefined,
  ].map((to) => ({ section: 'recordings', route: ['file'], to })),
  ...['500 ms', '1 s', '7 d', undefined].map((to) => ({ section: 'recordings', route: ['segment'], to })),
  ...['30 s', undefined].map((to) => ({ section: 'recordings', route: ['keep'], to })),
  ...['nowhere', 'live-0'].map((to) => ({ section: 'recordings', route: ['stream'], to })),
  ...['/', '/srv/../etc', '/srv/a b', `/srv/"'`, '/srv/\u0007', `/${'p'.repeat(256)}`, '/srv//archive/'].map((to) => ({
    section: 'volumes',
    route: ['path'],
    to,
  })),
  ...['screen-0', 'nowhere', undefined].map((to) => ({ section: 'volumes', route: ['host'], to })),
  ...['rtsp', 'rtp', 'ts-udp', 'ts-rtp', undefined].map((to) => ({ section: 'streams', route: ['transport'], to })),
  ...['239.1.2.3', '232.1.2.3', '224.0.0.9', '10.1.2.3', 'auto', undefined].map((to) => ({
    section: 'streams',
    route: ['group'],
    to,
  })),
  ...[5005, 65535, 'auto', undefined].map((to) => ({ section: 'streams', route: ['port'], to })),
  ...['h265', 'vp9', 'av1', 'mjpeg', 'mpeg2', undefined].map((to) => ({
    section: 'streams',
    route: ['video', 'codec'],
    to,
  })),
  ...['4096x4096', '1920x1080'].map((to) => ({ section: 'streams', route: ['video', 'size'], to })),
  ...['aac', 'opus', 'ac3', 'g722', 'mp2', 'l16', undefined].map((to) => ({
    section: 'streams',
    route: ['audio'],
    to: to === undefined ? undefined : { codec: to, bitrate: '64 kb/s' },
  })),
  { section: 'streams', route: ['audio'], to: { 'codec': 'aac', 'sample-rate': '44 kHz', 'channels': 7 } },
  { section: 'streams', route: ['video'], to: undefined },
  { section: 'streams', route: ['receivers'], to: undefined },
  { section: 'streams', route: ['receivers'], to: ['recorder', 'screen-0'] },
  { section: 'streams', route: ['receivers'], to: ['nowhere'] },
  ...['recorder', 'router', 'nowhere', undefined].map((to) => ({ section: 'streams', route: ['source'], to })),
  ...['live-0', 'live-1', 'pull-0', undefined].map((to) => ({ section: 'streams', route: ['carries'], to })),
  ...['/a b', '/\u0000', '/\ud800'].map((to) => ({ section: 'streams', route: ['path'], to })),
  { section: 'streams', route: ['egress'], to: 'lan' },
  ...['192.168.20.5', '192.168.10.60', '10.9.9.9', 'auto', undefined].map((to) => ({
    section: 'devices',
    route: ['address'],
    to,
  })),
  ...['enp3s0', '7', 'a*b', 'ä', 'en%d'].map((to) => ({
    section: 'devices',
    route: ['ports', 'cams', 'interface'],
    to,
  })),
  ...['cams', 'en-of-fifteen-c'].map((to) => ({ section: 'devices', route: ['ports', 'lan', 'interface'], to })),
  { section: 'devices', route: ['ports', 'lan'], to: { trunk: ['house', 'video'], interface: 'en-of-fifteen-c' } },
  { section: 'devices', route: ['ports', 'a-very-long-name-of-a-port'], to: { address: '192.168.10.7' } },
  ...['192.168.20.1', '192.168.10.1', '10.0.0.1'].map((via) => ({
    section: 'devices',
    route: ['routes'],
    to: [{ to: 'default', port: 'cams', via }],
  })),
  { section: 'devices', route: ['routes'], to: [{ to: '10.0.0.0/8', port: 'nowhere' }] },
  ...['192.168.10.50-192.168.10.99', '192.168.10.200-192.168.11.9'].map((to) => ({
    section: 'vlans',
    route: ['dhcp-pool'],
    to,
  })),
  ...['id', 'subnet'].map((key) => ({ section: 'vlans', route: [key], to: undefined })),
];

const NAMES = ['screen_0', 'Cam-0', 'x'.repeat(70), '__', 'cam_', 'recorder-cams', 'a b'];

interface Spoilt {
  readonly changes: readonly { readonly change: Change; readonly entry: number }[];
  readonly rename: { readonly entry: number; readonly to: string } | undefined;
}

const spoilt: fc.Arbitrary<Spoilt> = fc.record({
  changes: fc.array(fc.record({ change: fc.constantFrom(...CHANGES), entry: fc.nat() }), { maxLength: 4 }),
  rename: fc.option(fc.record({ entry: fc.nat(), to: fc.constantFrom(...NAMES) }), { nil: undefined, freq: 3 }),
});

function spoil(entries: readonly Entry[], { changes, rename }: Spoilt): Entry[] {
  const result = entries.map((entry) => ({ ...entry, data: structuredClone(entry.data) }));
  for (const { change, entry } of changes) {
    const able = result.filter(
      ({ section, data }) => section === change.section && (change.route[0] !== 'ports' || hasRoute(data)),
    );
    const chosen = able[entry % Math.max(1, able.length)];
    if (chosen !== undefined) set(chosen.data as Written, change.route, change.to);
  }
  const named = result.filter(({ name, section }) => name !== undefined && section !== 'site');
  const chosen = named[(rename?.entry ?? 0) % named.length];
  return result.map((entry) => (entry === chosen && rename !== undefined ? { ...entry, name: rename.to } : entry));
}

/** Of the server alone, which has its ports written out. */
function hasRoute(data: unknown): boolean {
  return (data as Written)['kind'] === 'server';
}

function set(data: Written, [key = '', ...rest]: readonly string[], to: unknown): void {
  if (rest.length > 0) set((data[key] ??= {}) as Written, rest, to);
  else if (to === undefined) delete data[key];
  else data[key] = to;
}

/** What a site need not say: then something is left out, and the plan is no worse. */
const UNSAID: ReadonlySet<string> = new Set([
  'not-made',
  'transport-missing',
  'port-missing',
  'unfilled',
  'no-receivers',
  'rate-missing',
]);

/** Whether something can only be meant for what is made. */
function itemAsks(at: Place): boolean {
  const item = itemAt(at);
  return item !== undefined && nodeAt(item, ['credentials']) !== undefined;
}

describe('what cannot be made', () => {
  it('is found by a check: as an error, unless it is what the site does not say or ask for', () => {
    const refused = new Map<string, number>();
    fc.assert(
      fc.property(smallSite(), spoilt, (site, spoiling) => {
        const folder = folderOf(textOf(spoil(entriesOf(site), spoiling)));
        const { plan, diagnostics } = check(folder);
        for (const { kind, make } of OUTPUTS) {
          for (const { rule, at, message, isAsked = false } of make(plan).refused) {
            refused.set(rule, (refused.get(rule) ?? 0) + 1);
            // What follows from an error is told with that alone.
            const hasError = diagnostics.some(({ severity }) => severity === 'error');
            const found = diagnostics.some((diagnostic) => diagnostic.rule.id === rule) || itemAt(at)?.faulty === true;
            // What nobody asked for is left out without a word.
            const isTold = rule !== 'not-made' || isAsked || itemAsks(at);
            assert.ok(found || hasError || !isTold, `${kind} is refused and a check finds no ${rule}: ${message}`);
            assert.ok(hasError || UNSAID.has(rule), `${kind} is refused for ${rule}, which is no error: ${message}`);
          }
        }
      }),
      { numRuns: 150 },
    );
    for (const rule of ['file-pattern', 'file-format', 'volume-path', 'interface-name', 'not-made'])
      assert.ok((refused.get(rule) ?? 0) > 0, `${rule} never came up`);
  });
});
