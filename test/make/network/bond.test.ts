// Bonded cards: the commands are those of ip-link(8) and the keys those of systemd.netdev(5), section [Bond].
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { describe, it } from 'mocha';
import { iproute2 } from '../../../server/src/make/network/iproute2.ts';
import { networkd } from '../../../server/src/make/network/networkd.ts';
import { unavailable } from '../../availability.ts';
import { planOfText } from '../made.ts';

const BONDED = `
site: {name: Harrow Lane}
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  recorder:
    kind: server
    ports:
      left: {speed: 1 Gb/s, interface: eno1, lag: bond0, trunk: [house, video], mac: "02:00:00:00:20:05"}
      right: {speed: 1 Gb/s, interface: eno2, lag: bond0, trunk: [house, video], addresses: {house: 192.168.10.5, video: 192.168.20.5}}
    routes: [{to: 224.0.0.0/4, port: left}]
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, lag: store, trunk: [house, video]}}}
cables:
  - {from: core/1, to: recorder/left}
  - {from: core/2, to: recorder/right}
`;

const fileOf = (files: readonly { path: string; text: string }[], path: string): string =>
  files.find((file) => file.path === path)?.text ?? '';
const sectionsOf = (text: string): string[] => text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));

describe('bonded cards', () => {
  it('are one interface of iproute2, with the VLANs and addresses on it', () => {
    const { files, refused } = iproute2.make(planOfText(BONDED));
    assert.deepEqual(refused, []);
    const script = fileOf(files, 'recorder/set-network.sh');
    const commands = script.split('\n').filter((line) => /^ *(ip|grep)\b/.test(line));
    assert.deepEqual(
      commands.filter((line) => !line.includes('route')),
      [
        'ip link show dev eno1 >/dev/null',
        'ip link show dev eno2 >/dev/null',
        'ip link show dev bond0 >/dev/null 2>&1 || ip link add name bond0 type bond mode 802.3ad miimon 100 xmit_hash_policy layer2+3',
        "ip -o link show dev eno1 | grep -q -F ' master bond0 ' || {",
        '  ip link set dev eno1 down',
        '  ip link set dev eno1 master bond0',
        'ip link set dev eno1 up',
        "ip -o link show dev eno2 | grep -q -F ' master bond0 ' || {",
        '  ip link set dev eno2 down',
        '  ip link set dev eno2 master bond0',
        'ip link set dev eno2 up',
        'ip link set dev bond0 up',
        'ip link show dev bond0.10 >/dev/null 2>&1 || ip link add link bond0 name bond0.10 type vlan id 10',
        'ip link set dev bond0.10 up',
        'ip address replace 192.168.10.5/24 broadcast + dev bond0.10',
        'ip link show dev bond0.20 >/dev/null 2>&1 || ip link add link bond0 name bond0.20 type vlan id 20',
        'ip link set dev bond0.20 up',
        'ip address replace 192.168.20.5/24 broadcast + dev bond0.20',
      ],
    );
    const check = fileOf(files, 'recorder/check-network.sh');
    assert.match(check, /^bonded eno1 bond0\nbonded eno2 bond0\nruns_at bond0 2000 '2 Gb\/s'$/m);
  });

  it('are a netdev of systemd-networkd, and each card a part of it, found by its MAC address where that is known', () => {
    const { files } = networkd.make(planOfText(BONDED));
    assert.deepEqual(sectionsOf(fileOf(files, 'recorder/10-bond0.netdev')), [
      '[NetDev]',
      'Name=bond0',
      'Kind=bond',
      '[Bond]',
      'Mode=802.3ad',
      'TransmitHashPolicy=layer2+3',
      'MIIMonitorSec=100ms',
    ]);
    assert.deepEqual(sectionsOf(fileOf(files, 'recorder/20-eno1.network')), [
      '[Match]',
      'MACAddress=02:00:00:00:20:05',
      '[Network]',
      'Bond=bond0',
    ]);
    assert.deepEqual(sectionsOf(fileOf(files, 'recorder/20-eno2.network')), [
      '[Match]',
      'Name=eno2',
      '[Network]',
      'Bond=bond0',
    ]);
    const bond = sectionsOf(fileOf(files, 'recorder/20-bond0.network'));
    assert.deepEqual(bond.slice(0, 5), ['[Match]', 'Name=bond0', '[Network]', 'VLAN=bond0.10', 'VLAN=bond0.20']);
  });

  it('without LACP are a bundle that the other end must make too', () => {
    const { files } = iproute2.make(planOfText(BONDED.replaceAll(/lag: (\w+)/g, 'lag: $1, lacp: off')));
    assert.match(fileOf(files, 'recorder/set-network.sh'), /type bond mode balance-xor /);
  });

  it('have scripts without a fault for shellcheck', function () {
    if (spawnSync('shellcheck', ['--version']).status !== 0) unavailable(this, 'shellcheck is not installed');
    for (const { path, text } of iproute2.make(planOfText(BONDED)).files) {
      const { stdout } = spawnSync('shellcheck', ['-s', 'sh', '-'], { input: text, encoding: 'utf8' });
      assert.equal(stdout, '', path);
    }
  });
});
