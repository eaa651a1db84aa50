import assert from 'node:assert/strict';
import { planOf } from '../../../server/src/plan.ts';
import type { Plan } from '../../../server/src/plan.ts';
import { foundIn } from '../../site.ts';
import { siteOf } from '../../site-of.ts';
import { type Rate, START, asIfMib, asLinux, asPlanned, audited, harrowLane, told } from './counted.ts';

const DEVICES = ['core', 'stable', 'recorder'];

/** What a stream puts in a direction, without acknowledgements. */
function of(plan: Plan, name: string): Rate {
  const stream = plan.site.streamByName.get(name);
  assert.ok(stream !== undefined);
  const rates = plan.network.rates(stream);
  return ({ link, out }) => {
    const crossing = plan.network.copies(link, out).find((each) => each.stream === stream);
    return (
      (crossing?.untagged ?? 0) * rates.untagged.frame.nominal + (crossing?.tagged ?? 0) * rates.tagged.frame.nominal
    );
  };
}

describe('Counters against the plan of Harrow Lane', () => {
  const plan = harrowLane();
  const planned = asPlanned(plan);
  const run = (change: Rate, devices = DEVICES): string[] =>
    told(
      audited(
        plan,
        asLinux(plan, (direction, second) => planned(direction, second) + change(direction, second), { devices }),
      ),
    );
  const blamed = (messages: readonly string[]): string[] =>
    messages.map((message) => /as much as (.*?):/.exec(message)?.[1]?.replace(/ \([^)]*\)/g, '') ?? 'nobody');

  it('find nothing where every port carries what is planned, whoever counts', () => {
    for (const text of [
      asLinux(plan, planned, { devices: DEVICES }),
      asIfMib(plan, asPlanned(plan, 'frameWithFcs'), { devices: DEVICES }),
      asIfMib(plan, asPlanned(plan, 'frameWithFcs'), { devices: DEVICES }, 32, 4_294_900_000),
    ]) {
      const { found, summary } = audited(plan, text);
      assert.deepEqual(found, []);
      assert.match(summary.join('\n'), /52 of 52 directions as planned/);
    }
  });

  it('count what the Interfaces MIB does with the check sequence, 4 octets a frame', () => {
    // At 0.1 %, what counts without it is told apart: 4 of 1,456 octets are 0.27 %.
    const exact = { tolerance: 10, other: 0 };
    assert.deepEqual(
      told(audited(plan, asIfMib(plan, asPlanned(plan, 'frameWithFcs'), { devices: ['recorder'] }), exact)),
      [],
    );
    assert.ok(told(audited(plan, asIfMib(plan, planned, { devices: ['recorder'] }), exact)).length > 0);
  });

  it('name a stream that is missing, at every port that lacks it, and report a cable once', () => {
    const messages = run((direction) => -of(plan, 'hayloft')(direction, 0), ['stable', 'recorder']);
    assert.deepEqual(messages, [
      'warning port-below-plan: hayloft-cam/eth → stable/5 carried 0 b/s on average: 2.12 Mb/s less than the 2.12 Mb/s planned, ' +
        '3.18 Mb/s at peak. That is as much as hayloft (2.12 Mb/s): look whether it is sent, and arrives.',
    ]);
  });

  it('name the one of equal streams whose own port lacks it too', () => {
    // gate, drive and yard are alike.
    const messages = run((direction) => -of(plan, 'yard')(direction, 0) - of(plan, 'yard-live')(direction, 0));
    assert.deepEqual(new Set(blamed(messages)), new Set(['yard', 'yard-live']));
  });

  it('name all of equal streams where nothing tells them apart', () => {
    const messages = run((direction) => -of(plan, 'yard')(direction, 0), ['recorder']);
    assert.deepEqual(blamed(messages), ['gate, drive or yard']);
  });

  it('name a stream of twice its rate, and of any other', () => {
    assert.deepEqual(new Set(blamed(run(of(plan, 'tv-one')))), new Set(['tv-one']));
    const messages = run((direction) => of(plan, 'tv-one')(direction, 0) * 0.6);
    assert.deepEqual(new Set(blamed(messages)), new Set(['tv-one']));
    assert.match(messages.join('\n'), /is its bit rate other than declared\?/);
  });

  it('name a group that is not planned there', () => {
    const port = plan.site.deviceByName.get('stable')?.portByName.get('7');
    const link = port === undefined ? undefined : plan.network.topology.linkAt(port);
    assert.ok(port !== undefined && link !== undefined);
    const stream = plan.site.streamByName.get('tv-two');
    assert.ok(stream !== undefined);
    const seedlings = plan.network.rates(stream).untagged.frame.nominal;
    const messages = run((direction) => (direction.out === port ? seedlings : 0));
    assert.deepEqual(messages.length, 1);
    assert.match(
      messages[0] ?? '',
      /^information port-above-plan: stable\/7 → stable-screen\/eth .* as much as tv-two \(5\.\d+ Mb\/s\): not planned there, so is it flooded, or has somebody joined it\?$/,
    );
  });

  it('name two that come to the difference where none does', () => {
    const messages = run(
      (direction) => -of(plan, 'tack-room')(direction, 0) - of(plan, 'paddock-north')(direction, 0),
      ['recorder'],
    );
    assert.equal(messages.length, 1);
    assert.match(messages[0] ?? '', /as much as [\w-]+ \([\d.]+ Mb\/s\)/);
  });

  it('see what was missing at times in the quietest stretch', () => {
    const [message, ...more] = run((direction, second) => (second > 40 ? -of(plan, 'gate')(direction, 0) : 0));
    assert.deepEqual(more, []);
    assert.match(message ?? '', /gate-cam\/eth → core\/1 .* at times as much as gate \(6\.35 Mb\/s\)/);
  });

  it('say where nothing comes at all', () => {
    const messages = run((direction) => -planned(direction, 0), ['recorder']);
    assert.match(messages.join('\n'), /as much as all 12 streams together/);
  });

  it('take missing acknowledgements for nothing: a receiver sends fewer where it takes segments in bulk', () => {
    assert.deepEqual(
      run((direction) => {
        const shares = plan.network
          .copies(direction.link, direction.out)
          .filter(({ untagged, tagged }) => untagged + tagged > 0);
        return shares.length === 0 ? -planned(direction, 0) : 0;
      }),
      [],
    );
  });

  it('know 32-bit counters that are read too seldom', () => {
    const text = asIfMib(plan, asPlanned(plan, 'frameWithFcs'), { devices: ['recorder'], seconds: 120, every: 60 }, 32);
    assert.deepEqual(
      told(audited(plan, text))[0],
      'warning counter-too-small: recorder/lan → core/9: 2 times nobody can tell what was carried, since the samples lie up to 1 min apart and the counter has 32 bits. At 1 Gb/s it is full after 34 s: sample more often, or take counters of 64 bits.',
    );
  });

  it('come in any order, and twice', () => {
    const [header = '', ...rows] = asIfMib(plan, asPlanned(plan, 'frameWithFcs'), { devices: DEVICES })
      .trim()
      .split('\n');
    const mixed = [header, ...rows.reverse(), ...rows.slice(0, 30)].join('\n');
    const { found, summary } = audited(plan, mixed);
    assert.deepEqual(found, []);
    assert.ok(!summary.join('\n').includes('of a time that has another'));
    const contradicted = audited(plan, `${mixed}\n${(rows[0] ?? '').replace(/\d+$/, '1')}`);
    assert.match(contradicted.summary.join('\n'), /1 samples? of a time that has another already/);
  });

  it('of nobody are asked about', () => {
    const text = 'time,ifName,ifInOctets\n1772366400,5,5\n';
    assert.throws(() => audited(plan, text), /name the device by --device/);
    assert.throws(
      () => audited(plan, text, { device: 'nobody\u001b[31m' }),
      /The site has no device nobody\ufffd\[31m; it has gate-cam, drive-cam/,
    );
  });
});

const SITE = `
devices:
  core: {kind: switch, ports: {1: {speed: 1 Gb/s, interface: sw1p1}, 2: {speed: 100 Mb/s}, 3: {speed: 1 Gb/s, description: spare}}}
  recorder: {kind: server, speed: 1 Gb/s, address: 192.168.20.5, interface: enp3s0}
  gate-cam: {kind: camera, speed: 100 Mb/s, address: 192.168.20.31}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: gate-cam}
streams:
  gate: {source: gate-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [recorder]}
`;

describe('Interfaces and ports', () => {
  const plan = planOf(siteOf(SITE));
  const line = (
    second: number,
    links: Readonly<Record<string, readonly [rx: number, tx: number, more?: object]>>,
  ): string =>
    JSON.stringify({
      time: START / 1000 + second + 0.25,
      links: Object.entries(links).map(([ifname, [rx, tx, more]], index) => ({
        ifname,
        ifindex: index,
        link_type: 'ether',
        stats64: { rx: { bytes: whole(rx), errors: 0 }, tx: { bytes: whole(tx), dropped: 0 } },
        ...more,
      })),
    });
  const [stream] = plan.site.streams;
  const gate = ((stream === undefined ? 0 : plan.network.rates(stream).untagged.frame.nominal) * 10) / 8;
  const whole = (bytes: number): number => Math.round(bytes);
  const findings = (device: string, links: Readonly<Record<string, readonly [number, number, object?]>>) => {
    const zero = Object.fromEntries(
      Object.entries(links).map(([name, [, , more = {}]]) => [name, [0, 0, more] as const]),
    );
    return audited(plan, `${line(0, zero)}\n${line(10, links)}\n`, { device });
  };

  it('meet by the name that the operating system gives', () => {
    const { found, summary } = findings('recorder', { enp3s0: [gate, 0] });
    assert.deepEqual(found, []);
    assert.match(summary.join('\n'), /core\/1 → recorder\/eth +4\.\d+ Mb\/s/);
  });

  it('are less sure of a stream that comes at another rate than of one that is missing', () => {
    assert.match(
      told(findings('recorder', { enp3s0: [gate * 0.75, 0] })).join('\n'),
      /^information port-below-plan: .* as much as gate \(1\.04 Mb\/s\): is its bit rate other than declared\?$/,
    );
    assert.match(
      told(findings('recorder', { enp3s0: [0, 0] })).join('\n'),
      /^warning port-below-plan: .* as much as gate \(4\.16 Mb\/s\): look whether/,
    );
  });

  it('that are a VLAN of a port are counted with it', () => {
    const { found, summary } = findings('recorder', {
      'enp3s0': [gate, 0],
      'enp3s0.20': [gate, 0],
      'cams': [gate, 0, { link: 'enp3s0' }],
    });
    assert.deepEqual(found, []);
    assert.match(summary.join('\n'), /enp3s0\.20 of recorder is a VLAN of eth/);
    assert.match(summary.join('\n'), /cams of recorder is a VLAN of eth/);
  });

  it('that the site does not know are reported where they carry something, unless they are no wire', () => {
    const lo = { link_type: 'loopback' };
    const bridge = { linkinfo: { info_kind: 'bridge' } };
    assert.deepEqual(
      told(findings('recorder', { enp3s0: [gate, 0], wlan0: [1000, 1000], lo: [9e9, 9e9, lo], br0: [9e9, 0, bridge] })),
      [],
    );
    assert.deepEqual(told(findings('recorder', { 'enp3s0': [gate, 0], 'enp4s0\u0007': [1e7, 0] })), [
      'information port-not-planned: recorder carried 8 Mb/s on its interface enp4s0\ufffd, which is no port of it in the site. ' +
        'Declare the port and its cable, or say by interface which port it is.',
    ]);
    assert.deepEqual(told(findings('core', { sw1p1: [0, gate], 2: [gate, 0], 3: [0, 1e7] })), [
      'warning port-not-planned: core/3 carried 8 Mb/s, and no cable is at it in the site. Declare the cable.',
    ]);
  });

  it('that lose frames are reported', () => {
    const dropped = { stats64: { rx: { bytes: whole(gate), errors: 0 }, tx: { bytes: 0, dropped: 12 } } };
    const text = `${line(0, { enp3s0: [0, 0] })}\n${line(10, { enp3s0: [gate, 0, dropped] })}`;
    assert.deepEqual(told(audited(plan, text, { device: 'recorder' })), [
      'warning port-drops: recorder/eth lost frames in 10 s: 12 tx dropped. More was sent to it at once than it could pass on: look at its load.',
    ]);
  });

  it('are reported at their end of the cable', () => {
    const [one] = findings('core', { sw1p1: [0, 0] }).found;
    assert.ok(one !== undefined);
    const { line: at, start, end } = foundIn(SITE, one);
    assert.equal((SITE.split('\n')[at] ?? '').slice(start, end), 'core/1');
    assert.deepEqual(one.acceptAt, ['core/1', 'recorder/eth', 'core', 'recorder']);
    assert.deepEqual(
      one.related?.map(({ message }) => message),
      ['gate, of 4.16 Mb/s there'],
    );
  });
});
