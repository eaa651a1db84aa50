// The file is tried by dnsmasq itself, which then answers and hands out addresses from it, in network namespaces alone.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterEach, before, describe, it } from 'mocha';
import { dnsmasq } from '../../../server/src/make/addresses/dnsmasq.ts';
import { hostLabel } from '../../../server/src/make/quoting/dnsmasq.ts';
import { unavailable } from '../../availability.ts';
import { HostProgram } from '../../lab/host-program.ts';
import { run } from '../../lab/run.ts';
import { hostileText } from '../hostile.ts';
import { inFolder, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { Namespace, whyNoNamespace } from '../namespace.ts';
import { startNetworkd, whyNoNetworkd } from '../network/real-networkd.ts';

const SITE = `
site: {name: Harrow Lane}
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}
  video: {id: 20, subnet: 192.168.20.0/24, clock: recorder}
  empty: {id: 30, subnet: 192.168.30.0/24}
devices:
  router: {kind: router, mac: "02:00:00:00:10:01", address: 192.168.10.1}
  office-pc: {kind: computer, mac: 02-00-00-00-10-AA, address: 192.168.10.20}
  Foaling_Box: {kind: camera, mac: "02:00:00:00:20:44", address: 192.168.20.44}
  porch-cam: {kind: camera, address: 192.168.20.34}
  core: {kind: switch, mac: "02:00:00:00:20:02", address: 192.168.20.2, ports: {1: {}}}
  recorder:
    kind: server
    ports:
      lan: {mac: "02:00:00:00:10:05", address: 192.168.10.5}
      cams: {address: 192.168.20.5}
`;

describe('dnsmasq', function () {
  it('hands out the pool, keeps what has a hardware address, and offers no router where there is none', () => {
    const { files, refused, notes } = dnsmasq.make(planOfText(SITE));
    assert.deepEqual(refused, []);
    assert.equal(
      files[0]?.text,
      `# Made by plumbline from the site Harrow Lane.
# Changes belong in its *.site.yaml files; then: plumbline make dnsmasq

# Names that are only good at home (RFC 8375) are asked of nobody else.
domain=home.arpa
local=/home.arpa/

# VLAN house (10), 192.168.10.0/24
dhcp-range=set:house,192.168.10.100,192.168.10.199,255.255.255.0,12h
dhcp-option=tag:house,option:router,192.168.10.1
dhcp-host=02:00:00:00:10:05,192.168.10.5,recorder.home.arpa
dhcp-host=02:00:00:00:10:aa,192.168.10.20,office-pc.home.arpa

# VLAN video (20), 192.168.20.0/24: only what is kept for a device
dhcp-range=set:video,192.168.20.0,static,255.255.255.0,12h
dhcp-option=tag:video,option:router
dhcp-option=tag:video,option:ntp-server,192.168.20.5
dhcp-host=02:00:00:00:20:02,192.168.20.2,core.home.arpa
dhcp-host=02:00:00:00:20:44,192.168.20.44,foaling-box.home.arpa

# Nothing is kept for these, which have no \`mac\` of their own in the site, or are routers: set the address on the device.
# 192.168.10.1 router
# 192.168.20.5 recorder-cams
# 192.168.20.34 porch-cam

# Names.
host-record=router.home.arpa,192.168.10.1
host-record=recorder.home.arpa,recorder-lan.home.arpa,192.168.10.5
host-record=office-pc.home.arpa,192.168.10.20
host-record=core.home.arpa,192.168.20.2
host-record=recorder-cams.home.arpa,192.168.20.5
host-record=porch-cam.home.arpa,192.168.20.34
host-record=foaling-box.home.arpa,192.168.20.44
`,
    );
    assert.match(notes.join('\n'), /host names have no underscores, so that Foaling_Box has a hyphen there/);
  });

  it('refuses what clashes or is no host name, at its place, and writes the rest', () => {
    const { files, refused } = dnsmasq.make(
      planOfText(`
vlans:
  video: {subnet: 192.168.20.0/24}
  outside: {subnet: 192.168.30.0/24, dhcp-pool: 192.168.31.1-192.168.31.9}
  bare: {dhcp-pool: 192.168.31.1-192.168.31.9}
devices:
  barn_cam: {kind: camera, address: 192.168.20.1}
  Barn-cam: {kind: camera, address: 192.168.20.2}
  -x: {kind: camera, address: 192.168.20.3}
  a: {kind: camera, address: 192.168.20.4, mac: "02:00:00:00:00:01"}
  b: {kind: camera, address: 192.168.20.5, mac: 02-00-00-00-00-01}
  c: {kind: camera, address: 192.168.20.6, mac: "02:00:00:00:00:03"}
  d: {kind: camera, address: 192.168.20.6, mac: "02:00:00:00:00:04"}
  e: {kind: server, ports: {x: {address: 192.168.20.7}, y: {address: 192.168.20.8}}}
  e-y: {kind: camera, address: 192.168.20.9}
`),
    );
    assert.deepEqual(
      refused.map(({ at, message }) => `${at.piece.text.slice(at.start, at.end)}: ${message}`),
      [
        'barn_cam: barn_cam would be called barn-cam.home.arpa, as Barn-cam would: host names know neither capitals nor underscores. Rename one.',
        'Barn-cam: Barn-cam would be called barn-cam.home.arpa, as barn_cam would: host names know neither capitals nor underscores. Rename one.',
        '192.168.20.6: 192.168.20.6 is that of d too, so that nothing can be kept for c in video. Give each its own.',
        '192.168.20.6: 192.168.20.6 is that of c too, so that nothing can be kept for d in video. Give each its own.',
        '192.168.20.4: The hardware address 02:00:00:00:00:01 is that of b too, so that nothing can be kept for a in video. Give each its own.',
        '192.168.20.5: The hardware address 02:00:00:00:00:01 is that of a too, so that nothing can be kept for b in video. Give each its own.',
        '192.168.31.1-192.168.31.9: bare has no subnet, so that no address of it can be handed out. Say its subnet.',
        '192.168.31.1-192.168.31.9: The pool of outside is not all inside 192.168.30.0/24, so that it cannot be handed out. Take addresses inside.',
      ],
    );
    assert.match(files[0]?.text ?? '', /\nhost-record=e-y\.home\.arpa,192\.168\.20\.9\n$/);
  });

  it('takes names as RFC 1123 has them', () => {
    assert.deepEqual(['Gate-Cam', 'a_b', '-a', 'a_', '1h', 'x'.repeat(63)].map(hostLabel), [
      'gate-cam',
      'a-b',
      'a',
      'a',
      '1h',
      'x'.repeat(63),
    ]);
    assert.deepEqual(['__', '', 'a.b', 'x'.repeat(64), 'é', 'a b'].map(hostLabel), Array<undefined>(6).fill(undefined));
  });

  describe('by dnsmasq', () => {
    before(function () {
      if (spawnSync('dnsmasq', ['--version']).status !== 0)
        unavailable(this, 'dnsmasq is not installed: it is in the package dnsmasq-base');
    });

    it('is found to be right, on the samples and on a site with everything', async () => {
      for (const plan of [
        planOfTexts(sampleTexts('harrow-lane')),
        planOfTexts(sampleTexts('first-draft')),
        planOfText(SITE),
      ])
        assert.equal(await complaints(dnsmasq.make(plan).files[0]?.text), '');
    });

    it('is found to be right whatever names and texts the site has, and holds no line that the site did not mean', async () => {
      // Words that dnsmasq takes for something else where it looks for a name, and names to the limit of what a site
      // allows.
      const name = fc.oneof(
        fc.constantFrom(
          '1h',
          '45m',
          '12',
          '2w',
          'infinite',
          'ignore',
          'set',
          'tag',
          'id',
          'static',
          'h',
          '0',
          'x'.repeat(63),
          'x'.repeat(200),
        ),
        fc.stringMatching(/^[A-Za-z0-9_-]{1,12}$/),
        hostileText,
      );
      const device = fc.tuple(name, hostileText, fc.nat({ max: 9 }), fc.nat({ max: 9 }), fc.boolean());
      await fc.assert(
        fc.asyncProperty(
          fc.array(device, { minLength: 1, maxLength: 25 }),
          hostileText,
          name,
          async (list, text, vlan) => {
            const devices = Object.fromEntries(
              list.map(([own, said, address, mac, known]) => [
                own,
                {
                  kind: 'camera',
                  address: `192.168.20.${address}`,
                  location: said,
                  model: said,
                  description: said,
                  ...(known && { mac: `02:00:00:00:00:0${mac}` }),
                },
              ]),
            );
            const { files } = dnsmasq.make(
              planOfData({
                site: { name: text },
                vlans: {
                  [vlan]: { 'id': 20, 'subnet': '192.168.20.0/24', 'dhcp-pool': '192.168.20.100-192.168.20.110' },
                },
                devices,
              }),
            );
            assert.equal(await complaints(files[0]?.text), '');
            for (const line of files[0]?.text.split('\n') ?? [])
              assert.match(
                line,
                /^(#.*|domain=home\.arpa|local=\/home\.arpa\/|dhcp-(range|option)=[\w:.,-]+|dhcp-host=[0-9a-f:]{17},[\d.]+,[a-z0-9-]+\.home\.arpa|host-record=[a-z0-9.-]+,[\d.]+|)$/,
              );
          },
        ),
        { numRuns: 60 },
      );
    });

    it('is told apart from one with a mistake', async () => {
      const text = dnsmasq.make(planOfText(SITE)).files[0]?.text ?? '';
      assert.match(
        await complaints(text.replace('dhcp-host=02:00:00:00:20:02,', 'dhcp-host=02:00:00:00:20:02;')),
        /bad hex constant at line 18/,
      );
      assert.match(await complaints(`${text}dhcp-hots=a\n`), /bad option/);
    });
  });

  describe('running', () => {
    let host: Namespace | undefined;
    before(function () {
      const why = whyNoNamespace('unshare', 'dnsmasq', 'python3') ?? whyNoNetworkd();
      if (why !== undefined) unavailable(this, why);
    });
    afterEach(() => host?.end());

    it('answers for each name, and gives a known device its own address and the gateway', async () => {
      const inside = (host = await Namespace.with(['lan']));
      await inside.place.addNamespaces(['server']);
      const server = inside.place.namespace('server');
      await run('ip', ['-n', inside.name, 'link', 'set', 'far0', 'netns', server]);
      for (const words of [
        ['link', 'set', 'lo', 'up'],
        ['link', 'set', 'far0', 'up'],
        ['address', 'add', '192.168.10.1/24', 'dev', 'far0'],
      ])
        await run('ip', ['-n', server, ...words]);
      await run('ip', ['-n', inside.name, 'link', 'set', 'dev', 'lan', 'address', '02:00:00:00:10:aa']);
      await inFolder(dnsmasq.make(planOfText(SITE)).files, async (folder) => {
        const leases = join(folder, 'leases');
        const program = new HostProgram(inside.place, server, 'dnsmasq', [
          '--keep-in-foreground',
          '--no-resolv',
          '--no-hosts',
          '--user=root',
          '--pid-file=',
          '--log-facility=-',
          `--conf-file=${join(folder, 'dnsmasq.conf')}`,
          `--dhcp-leasefile=${leases}`,
        ]);
        await program.says('started');
        const ask = spawnSync(
          'ip',
          [
            'netns',
            'exec',
            server,
            'python3',
            fileURLToPath(new URL('ask.py', import.meta.url)),
            '192.168.10.1',
            'foaling-box.home.arpa',
            'recorder-cams.home.arpa',
            'nobody.home.arpa',
          ],
          { encoding: 'utf8' },
        );
        assert.equal(
          ask.stdout,
          'foaling-box.home.arpa 192.168.20.44\nrecorder-cams.home.arpa 192.168.20.5\nnobody.home.arpa -\n',
          ask.stderr,
        );
        const client = join(folder, 'client');
        mkdirSync(client);
        writeFileSync(join(client, '10-lan.network'), '[Match]\nName=lan\n[Network]\nDHCP=ipv4\n');
        await (await startNetworkd(inside, client)).says('192.168.10.20/24');
        await program.says('DHCPACK(far0) 192.168.10.20 02:00:00:00:10:aa office-pc');
        assert.match(inside.exec('ip', 'route', 'show', 'default').out, /^default via 192\.168\.10\.1 dev lan /);
      });
    });
  });
});

async function complaints(text = ''): Promise<string> {
  return inFolder([{ path: 'dnsmasq.conf', text }], (folder) => {
    const { status, stderr } = spawnSync('dnsmasq', ['--test', `--conf-file=${join(folder, 'dnsmasq.conf')}`], {
      encoding: 'utf8',
    });
    return status === 0 ? '' : stderr;
  });
}
