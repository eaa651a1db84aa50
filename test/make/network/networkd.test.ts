// systemd-networkd itself reads the files, and the check of `iproute2` verifies the result.
import assert from 'node:assert/strict';
import { copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, before, describe, it } from 'mocha';
import { iproute2 } from '../../../server/src/make/network/iproute2.ts';
import { networkd } from '../../../server/src/make/network/networkd.ts';
import type { MadeFile } from '../../../server/src/make/output.ts';
import type { Plan } from '../../../server/src/plan.ts';
import { unavailable } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, inFolder, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { Namespace, type Ran, whyNoNamespace } from '../namespace.ts';
import { complaintsOf, startNetworkd, whyNoNetworkd } from './real-networkd.ts';

const TRUNK = `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, dhcp-pool: 192.168.10.100-192.168.10.199}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  recorder:
    kind: server
    ports:
      lan: {mac: 02-00-00-00-10-05, vlan: house}
      cams: {mac: "02:00:00:00:20:AB", trunk: [video], address: 192.168.20.5, description: "to the cameras \\\\"}
    routes: [{to: 224.0.0.0/4, port: cams}, {to: 10.0.0.0/8, port: cams, via: 192.168.20.1}]
  router: {kind: router, address: 192.168.10.1}
`;

describe('networkd', function () {
  it('matches by hardware address where it is known, and puts tagged VLANs, which have it too, first', () => {
    const made = networkd.make(planOfText(TRUNK), 'recorder');
    assert.deepEqual(made.refused, []);
    assert.deepEqual(
      made.files.map(({ path }) => path),
      [
        'recorder/20-lan.network',
        'recorder/20-cams.network',
        'recorder/10-cams.20.netdev',
        'recorder/10-cams.20.network',
      ],
    );
    assert.equal(
      withoutHead(fileOf(made, 'recorder/20-lan.network')),
      '[Match]\nMACAddress=02:00:00:00:10:05\n\n[Network]\nDHCP=ipv4\n',
    );
    assert.equal(
      withoutHead(fileOf(made, 'recorder/20-cams.network')),
      '[Match]\nMACAddress=02:00:00:00:20:ab\n\n[Network]\nDescription=to the cameras\nVLAN=cams.20\n',
    );
    assert.equal(
      withoutHead(fileOf(made, 'recorder/10-cams.20.netdev')),
      '[NetDev]\nName=cams.20\nKind=vlan\n\n[VLAN]\nId=20\n',
    );
    assert.equal(
      withoutHead(fileOf(made, 'recorder/10-cams.20.network')),
      [
        '[Match]\nName=cams.20\n',
        '[Network]\nDescription=to the cameras\nAddress=192.168.20.5/24\n',
        '[Route]\nDestination=224.0.0.0/4\nScope=link\n',
        '[Route]\nDestination=10.0.0.0/8\nGateway=192.168.20.1\n',
      ].join('\n'),
    );
  });

  it('says how it is begun: without systemd-networkd running, as Debian comes, networkctl has nobody to ask', () => {
    const told = networkd.make(planOfText(TRUNK), 'recorder').notes.join('\n');
    assert.match(told, /`systemctl enable --now systemd-networkd`.* `networkctl reload`/);
  });

  it('refuses names that are patterns to systemd, or none at all', () => {
    const { files, refused } = networkd.make(
      planOfData({
        devices: {
          recorder: {
            kind: 'server',
            ports: { 1: {}, a: { interface: 'eth*' }, b: { interface: '!eth' }, c: { interface: 'default' }, d: {} },
          },
        },
      }),
    );
    assert.deepEqual(
      refused.map(({ message }) => message.slice(0, 60)),
      [1, 'eth*', '!eth', 'default'].map((name) =>
        `systemd-networkd takes no interface name such as ${name} of recorder`.slice(0, 60),
      ),
    );
    assert.deepEqual(
      refused.map(({ at }) => at.piece.text.slice(at.start, at.end)),
      ['"1"', '"eth*"', '"!eth"', '"default"'],
    );
    assert.deepEqual(
      files.map(({ path }) => path),
      ['recorder/20-d.network'],
    );
  });

  describe('by systemd-networkd', () => {
    let host: Namespace | undefined;
    before(function () {
      const why = whyNoNamespace('unshare') ?? whyNoNetworkd();
      if (why !== undefined) unavailable(this, why);
    });
    afterEach(() => host?.end());

    it('makes of the sample just what is planned, and nothing is complained of', async () => {
      const inside = (host = await Namespace.with(['lan', 'cams']));
      const plan = planOfTexts(sampleTexts('harrow-lane'));
      await using(plan, async (folder, check) => {
        const program = await startNetworkd(inside, folder);
        await agreed(() => check(inside));
        assert.deepEqual(complaintsOf(program), []);
        assert.match(
          inside.exec('ip', 'route', 'get', '239.192.20.41').out,
          /^multicast 239\.192\.20\.41 dev cams src 192\.168\.20\.5 /,
        );
        await inside.run(['ip route replace 224.0.0.0/4 dev lan']);
        assert.equal(check(inside).status, 1);
      });
    });

    it('finds the card by its hardware address, whatever it is called, and reads the files of a trunk', async () => {
      const inside = (host = await Namespace.with(['lan', 'enp3s0']));
      await inside.run([
        'ip link set dev lan address 02:00:00:00:10:05',
        'ip link set dev enp3s0 address 02:00:00:00:20:ab',
      ]);
      const real = await inside.hasVlans('enp3s0');
      await using(planOfText(TRUNK), async (folder) => {
        let program = await startNetworkd(inside, folder);
        await program.says('enp3s0: Configuring with /run/systemd/network/20-cams.network');
        await program.says('lan: Configuring with /run/systemd/network/20-lan.network');
        const complaints = complaintsOf(program).filter((line) => real || !line.includes('Unknown device type'));
        assert.deepEqual(complaints, []);
        if (!real) {
          // Of a kernel without VLAN devices: the file that makes one was understood; another interface stands in for
          // it.
          program.stop();
          await program.ended;
          rmSync(join(folder, '10-cams.20.netdev'));
          await inside.plug('cams.20', 'far-20');
          await inside.run(['ip link set dev cams.20 address 02:00:00:00:20:ab']);
          program = await startNetworkd(inside, folder);
        }
        await program.says('cams.20: Configuring with /run/systemd/network/10-cams.20.network');
        console.log(`      cams.20 is ${real ? 'a VLAN device' : 'a stand-in: this kernel has no VLAN devices'}`);
      });
    });

    it('reads a site of hostile text without a complaint, and does what it does of plain text', async () => {
      const inside = (host = await Namespace.with(['eno1']));
      const sites = fc.sample(fc.tuple(hostileText, hostileText), 200);
      const files = sites.flatMap(([name, text], index) =>
        networkd
          .make(hostile(name, text, `lan${index}`))
          .files.map((file) => ({ ...file, path: `recorder/${index}-${file.path.replace('recorder/', '')}` })),
      );
      assert.equal(files.length, sites.length);
      files.push(...networkd.make(hostile('"; $(id)\\', 'ends in a backslash \\', 'eno1')).files);
      await inFolder(files, async (folder) => {
        const program = await startNetworkd(inside, join(folder, 'recorder'));
        assert.deepEqual(complaintsOf(program), []);
        await agreed(() => {
          const { out } = inside.exec('ip', '-4', '-o', 'address', 'show', 'dev', 'eno1');
          return { status: out.includes('inet 192.168.20.5/24') ? 0 : 1, out, err: '' };
        });
      });
    });

    it('reports a planted mistake, so that its silence means something', async () => {
      const inside = (host = await Namespace.with(['lan', 'cams']));
      const { files } = networkd.make(planOfTexts(sampleTexts('harrow-lane')), 'recorder');
      const wrong = files.map((file): MadeFile => ({
        ...file,
        text: file.text
          .replace('Address=', 'Adress=')
          .replace('224.0.0.0/4', '224.0.0.0/40')
          .replace('Gateway=192', 'Gateway=492'),
      }));
      await inFolder(wrong, async (folder) => {
        const program = await startNetworkd(inside, join(folder, 'recorder'));
        const told = complaintsOf(program).join('\n');
        assert.match(told, /20-lan\.network:9: Unknown key '?(name ')?Adress'/);
        assert.match(told, /20-cams\.network:\d+: .*224\.0\.0\.0\/40/);
        assert.match(told, /20-lan\.network:\d+: .*492\.168\.10\.1/);
      });
    });
  });
});

function hostile(name: string, text: string, card: string): Plan {
  return planOfData({
    site: { name },
    vlans: { video: { id: 20, subnet: '192.168.20.0/24', description: text } },
    devices: {
      recorder: {
        kind: 'server',
        location: text,
        model: text,
        ports: { cams: { interface: card, address: '192.168.20.5', description: text } },
        routes: [{ to: '224.0.0.0/4', port: 'cams' }],
      },
    },
  });
}

function withoutHead(text: string): string {
  return text.replace(/^(#.*\n)+\n/, '');
}

/** With the folder of the recorder's files, and the script that checks. */
async function using(
  plan: Plan,
  use: (folder: string, check: (host: Namespace) => Ran) => Promise<void>,
): Promise<void> {
  const scripts = iproute2.make(plan, 'recorder').files;
  await inFolder([...networkd.make(plan, 'recorder').files, ...scripts], async (folder) => {
    const own = join(folder, 'network');
    mkdirSync(own);
    for (const file of readdirSync(join(folder, 'recorder')).filter((name) => !name.endsWith('.sh')))
      copyFileSync(join(folder, 'recorder', file), join(own, file));
    await use(own, (host) => host.exec(join(folder, 'recorder/check-network.sh')));
  });
}

/** Waits until it is as planned; the time that it may take is for a machine with much else to do. */
async function agreed(check: () => Ran): Promise<void> {
  const end = Date.now() + 120_000;
  for (;;) {
    const { status, out, err } = check();
    if (status === 0) return;
    assert.ok(Date.now() < end, `${out}${err}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
