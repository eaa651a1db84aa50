// The scripts are read by shellcheck and run, in network namespaces alone.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, before, describe, it } from 'mocha';
import type { Made } from '../../../server/src/make/output.ts';
import { iproute2 } from '../../../server/src/make/network/iproute2.ts';
import { needs, unavailable } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { inFolder, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { Namespace, type Ran, whyNoNamespace } from '../namespace.ts';

const TRUNK = `
site: {name: Harrow Lane}
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  recorder:
    kind: server
    ports:
      trunk: {speed: 1 Gb/s, interface: eno1, trunk: [video, house], native: house, addresses: {house: 192.168.10.5, video: 192.168.20.5}}
    routes: [{to: 224.0.0.0/4, port: trunk}]
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, trunk: [house, video], native: house}}}
  router: {kind: router, address: 192.168.10.1}
cables:
  - {from: core/1, to: recorder/trunk}
  - {from: core/2, to: router}
`;

describe('iproute2', function () {
  it('sets the interfaces of a trunk by their tags, and routes by the one that the plan sends by', () => {
    const { files } = iproute2.make(planOfText(TRUNK));
    assert.deepEqual(commandsOf(files[0]?.text ?? ''), [
      'set -eu',
      'ip link show dev eno1 >/dev/null',
      'ip link set dev eno1 up',
      'ip address replace 192.168.10.5/24 broadcast + dev eno1',
      'ip link show dev eno1.20 >/dev/null 2>&1 || ip link add link eno1 name eno1.20 type vlan id 20',
      'ip link set dev eno1.20 up',
      'ip address replace 192.168.20.5/24 broadcast + dev eno1.20',
      'ip route replace 224.0.0.0/4 dev eno1',
      'ip route replace default via 192.168.10.1 dev eno1',
    ]);
  });

  it('refuses what Linux cannot set up, at its place, and makes the rest', () => {
    const { files, refused, notes } = iproute2.make(
      planOfData({
        vlans: { video: { id: 4000, subnet: '192.168.20.0/24' }, spare: { id: 9 } },
        devices: {
          recorder: {
            kind: 'server',
            ports: {
              'a-name-of-16-let': { address: '192.168.20.4' },
              'lan': { address: '192.168.2.5', vlan: 'video' },
              'cams': { address: '10.0.0.1' },
              'again': { interface: 'lan' },
              'elevenletter': { trunk: ['video'] },
            },
            routes: [
              { to: 'default', port: 'lan' },
              { to: '10.0.0.0/8', port: 'lan', via: '172.16.0.1' },
              { to: '10.9.0.0/16', port: 'wan' },
            ],
          },
        },
      }),
    );
    assert.deepEqual(
      refused.map(({ message }) => message),
      [
        'recorder/a-name-of-16-let cannot be set up as a-name-of-16-let: Linux has interface names of 1 to 15 characters of ASCII, without space, / : or %. Say its name in `interface`.',
        '192.168.2.5 is outside video, 192.168.20.0/24, so that recorder/lan would reach nobody. Take an address inside.',
        'recorder/again cannot be set up as lan: recorder/lan has that name already. Say its name in `interface`.',
        'video at recorder/elevenletter would be the interface elevenletter.4000: that is 17 characters, and Linux takes 15 at most. Give the port another `interface`.',
        'The default route of recorder names no router, and the VLAN of lan has no gateway with an address. Say the address of the router in `via`.',
        '172.16.0.1 is in no subnet of recorder/lan, so that nothing can be handed to it there. Name a router on that link.',
        'recorder has no port wan, so that there is no route by it. Name one of its ports.',
      ],
    );
    assert.match(
      notes.join('\n'),
      /^10\.0\.0\.1: no VLAN has a subnet that holds it, so the prefix is assumed to be \/24/m,
    );
    const places = refused.map(({ at }) => at.piece.text.slice(at.start, at.end));
    assert.deepEqual(places, [
      '"a-name-of-16-let"',
      '"192.168.2.5"',
      '"lan"',
      '["video"]',
      '{"to":"default","port":"lan"}',
      '"172.16.0.1"',
      '"wan"',
    ]);
    assert.ok(commandsOf(files[0]?.text ?? '').includes('ip link set dev elevenletter up'));
  });

  it('is for servers, and for other hosts with several ports or routes', () => {
    const plan = planOfText(`
devices:
  recorder: {kind: server}
  office-pc: {kind: computer, ports: {1: {}, 2: {}}}
  kitchen-screen: {kind: display, routes: [{to: default, port: eth, via: 192.168.20.1}]}
  porch-cam: {kind: camera}
  core: {kind: switch, ports: {1-2: {}}}
  router: {kind: router, ports: {a: {}, b: {}}}
`);
    assert.deepEqual(iproute2.subjects(plan), ['kitchen-screen', 'office-pc', 'recorder']);
  });

  describe('by shellcheck', () => {
    before(function () {
      if (spawnSync('shellcheck', ['--version']).status !== 0) unavailable(this, 'shellcheck is not installed');
    });

    it('has nothing to be said of it, on the samples', async () => {
      for (const plan of [
        planOfTexts(sampleTexts('harrow-lane')),
        planOfTexts(sampleTexts('first-draft')),
        planOfText(TRUNK),
      ])
        assert.equal(await complaints(iproute2.make(plan)), '');
    });

    it('nor whatever names and texts the site has, and holds them in their lines', async () => {
      await fc.assert(
        fc.asyncProperty(interfaceName, hostileText, hostileText, async (name, text, port) => {
          const made = iproute2.make(hostileSite(name, text, port));
          assert.equal(await complaints(made), '');
          const plain = iproute2.make(hostileSite('eno1', 'plain', 'plain'));
          assert.deepEqual(
            made.files.map((file) => commandsOf(file.text).length),
            plain.files.map((file) => commandsOf(file.text).length),
          );
        }),
        { numRuns: 25 },
      );
    });

    it('catches a word without quotes', async () => {
      assert.match(
        await complaints({
          files: [{ path: 'a.sh', text: '#!/bin/sh\nip link set dev $1 up\n' }],
          refused: [],
          notes: [],
        }),
        /SC2086/,
      );
    });
  });

  describe('in a network namespace', () => {
    let host: Namespace | undefined;
    before(function () {
      const why = whyNoNamespace();
      if (why !== undefined) unavailable(this, why);
    });
    afterEach(() => host?.end());

    it('sets the recorder of the sample up, twice to the same, as its check agrees', async () => {
      host = await Namespace.with(['lan', 'cams']);
      await using(iproute2.make(planOfTexts(sampleTexts('harrow-lane')), 'recorder'), host, async (set, check) => {
        const before = check();
        assert.equal(before.status, 1);
        assert.match(
          before.out,
          /^lan: is down\n(.*\n)*cams: has not the address 192\.168\.20\.5\/24\n(.*\n)*224\.0\.0\.0\/4: there is no route for it; it should go out of cams\n/,
        );
        succeeded(set());
        const first = host?.state();
        succeeded(set());
        assert.equal(host?.state(), first);
        assert.deepEqual(check(), { status: 0, out: 'recorder: all is as planned\n', err: '' });
        assert.equal(host?.state(), first);
        assert.match(first ?? '', /inet 192\.168\.20\.5\/24 brd 192\.168\.20\.255 scope global cams/);
        assert.match(
          host?.exec('ip', 'route', 'get', '239.192.20.41').out ?? '',
          /^multicast 239\.192\.20\.41 dev cams src 192\.168\.20\.5 /,
        );
      });
    });

    const PLANTED: readonly (readonly [what: string, command: string, told: RegExp])[] = [
      [
        'the route on the other card',
        'ip route replace 224.0.0.0/4 dev lan',
        /224\.0\.0\.0\/4: goes as '224\.0\.0\.0\/4 dev lan scope link', should go out of cams\n(.*\n)*239\.192\.20\.41: leaves as 'multicast 239\.192\.20\.41 dev lan /,
      ],
      [
        'a more specific route on the other card',
        'ip route add 239.192.20.41/32 dev lan',
        /^239\.192\.20\.41: leaves as .* dev lan .*, should leave by cams\n$/,
      ],
      ['no route', 'ip route delete 224.0.0.0/4', /224\.0\.0\.0\/4: there is no route for it/],
      [
        'another gateway',
        'ip route replace default via 192.168.20.1 dev cams',
        /default: goes as 'default via 192\.168\.20\.1 dev cams', should go out of lan by way of 192\.168\.10\.1\n/,
      ],
      [
        'a default route without a gateway',
        'ip route replace default dev lan',
        /default: goes as 'default dev lan scope link', should go out of lan by way of 192\.168\.10\.1\n/,
      ],
      [
        'another address',
        'ip address delete 192.168.20.5/24 dev cams; ip address add 192.168.20.50/24 dev cams',
        /cams: has not the address 192\.168\.20\.5\/24\n/,
      ],
      [
        'another prefix',
        'ip address delete 192.168.10.5/24 dev lan; ip address add 192.168.10.5/16 dev lan',
        /lan: has not the address 192\.168\.10\.5\/24\n/,
      ],
      ['a card that is down', 'ip link set dev cams down', /cams: is down\n/],
      [
        'no cable',
        'ip link set dev far1 down',
        /cams: no link; look at the cable to core\/5, and whether both ends are on\n/,
      ],
      ['no card', 'ip link delete dev cams', /cams: there is no such interface\n/],
      [
        'a card of 100 Mb/s',
        'ip link delete dev cams; ip tuntap add dev cams mode tap; ip link set dev cams up; ethtool -s cams speed 100 duplex full',
        /cams: runs at 100 Mb\/s, the plan counts on 1 Gb\/s; look at the cable and at what the ports are set to\n/,
      ],
    ];
    for (const [what, command, told] of PLANTED) {
      it(`reports ${what}`, async function () {
        if (command.includes('ethtool')) needs(this, 'ethtool');
        const inside = (host = await Namespace.with(['lan', 'cams']));
        await using(iproute2.make(planOfTexts(sampleTexts('harrow-lane')), 'recorder'), inside, async (set, check) => {
          succeeded(set());
          await inside.run([command]);
          const state = inside.state();
          const { status, out, err } = check();
          assert.equal(status, 1, err);
          assert.match(out, told);
          assert.equal(inside.state(), state);
        });
      });
    }

    it('sets a trunk up, where the kernel has VLAN devices with their tags', async () => {
      const inside = (host = await Namespace.with(['eno1']));
      const real = await inside.hasVlans('eno1');
      if (!real) await inside.plug('eno1.20', 'far-20');
      await using(iproute2.make(planOfText(TRUNK), 'recorder'), inside, async (set, check) => {
        succeeded(set());
        const first = inside.state();
        succeeded(set());
        assert.equal(inside.state(), first);
        const { status, out } = check();
        // An interface of the right name that is no VLAN's is just what the check has to find.
        if (real) assert.equal(status, 0, out);
        else assert.equal(out, 'eno1.20: is not the VLAN interface of eno1 with the tag 20\n');
        console.log(`      eno1.20 is ${real ? 'a VLAN device' : 'a stand-in: this kernel has no VLAN devices'}`);
      });
    });

    it('changes nothing where an interface is missing', async () => {
      const inside = (host = await Namespace.with(['lan']));
      await using(iproute2.make(planOfTexts(sampleTexts('harrow-lane')), 'recorder'), inside, async (set) => {
        const state = inside.state();
        const { status, err } = set();
        assert.equal(status, 1);
        assert.match(err, /"cams" does not exist/);
        assert.equal(inside.state(), state);
      });
    });

    it('takes whatever name Linux allows an interface', async () => {
      const inside = (host = await Namespace.with([]));
      let count = 0;
      await fc.assert(
        fc.asyncProperty(interfaceName, async (name) => {
          await inside.plug(name, `p${++count}`);
          await using(iproute2.make(hostileSite(name, 'x', 'y')), inside, async (set, check) => {
            succeeded(set());
            assert.deepEqual(check(), { status: 0, out: 'recorder: all is as planned\n', err: '' });
          });
          await inside.run([`ip link delete dev p${count}`]);
        }),
        { numRuns: 25 },
      );
    });
  });
});

/** Names that Linux takes: printable ASCII without / : and %. Such as `lo` are taken already. */
const interfaceName = fc
  .string({
    unit: fc.constantFrom(
      ...Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).filter((mark) => !'/:%'.includes(mark)),
    ),
    minLength: 1,
    maxLength: 15,
  })
  .filter((name) => !['.', '..', 'lo'].includes(name) && !/^(p|if)\d+$/.test(name));

function hostileSite(interfaceName: string, text: string, port: string): ReturnType<typeof planOfData> {
  return planOfData({
    site: { name: text },
    vlans: { video: { id: 20, subnet: '192.168.20.0/24', gateway: 'router', description: text } },
    devices: {
      recorder: {
        kind: 'server',
        description: text,
        location: text,
        model: text,
        interface: interfaceName,
        address: '192.168.20.5',
        routes: [{ to: '224.0.0.0/4', port: 'eth' }],
      },
      router: { kind: 'router', address: '192.168.20.1', description: port },
    },
    cables: [{ from: 'recorder', to: 'router', label: text, description: port }],
    streams: { live: { source: 'recorder', group: '239.192.20.41', port: 5004, description: text } },
  });
}

/** What of a script is run. */
function commandsOf(script: string): string[] {
  return script.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
}

async function complaints({ files }: Made): Promise<string> {
  return inFolder(
    files,
    (folder) =>
      spawnSync(
        'shellcheck',
        files.map(({ path }) => join(folder, path)),
        { encoding: 'utf8' },
      ).stdout,
  );
}

async function using(
  made: Made,
  host: Namespace,
  use: (set: () => Ran, check: () => Ran) => Promise<void>,
): Promise<void> {
  await inFolder(made.files, (folder) =>
    use(
      () => host.exec(join(folder, 'recorder/set-network.sh')),
      () => host.exec(join(folder, 'recorder/check-network.sh')),
    ),
  );
}

function succeeded({ status, out, err }: Ran): void {
  assert.equal(status, 0, `${out}${err}`);
}
