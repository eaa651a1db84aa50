/** What a fix offers as free is free, in every respect that a rule looks at. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { nextFreeAddress } from '../../server/src/site/free/address.ts';
import { nextFreeGroup } from '../../server/src/site/free/group.ts';
import { nextFreePort } from '../../server/src/site/free/port.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import type { Site, Stream, Vlan } from '../../server/src/site/model.ts';
import { formatAddress, parseAddress } from '../../server/src/standards/ipv4.ts';

function siteFrom(text: string): Site {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane/all.site.yaml', text);
  return folder.site();
}

function vlan(site: Site, name: string): Vlan {
  const found = site.vlanByName.get(name);
  assert.ok(found !== undefined);
  return found;
}

function stream(site: Site, name: string): Stream {
  const found = site.streamByName.get(name);
  assert.ok(found !== undefined);
  return found;
}

function cameras(addresses: readonly string[]): string {
  return addresses.map((address, i) => `  cam-${i}: {kind: camera, address: ${address}}\n`).join('');
}

describe('the next free address', () => {
  const free = (subnet: string, addresses: readonly string[], near?: string): string | undefined => {
    const site = siteFrom(`vlans:\n  video: {id: 20, ${subnet}}\ndevices:\n${cameras(addresses)}`);
    const address = nextFreeAddress(site, vlan(site, 'video'), near === undefined ? undefined : parseAddress(near));
    return address === undefined ? undefined : formatAddress(address);
  };

  it('is the next above, then the lowest', () => {
    assert.equal(free('subnet: 192.168.20.0/24', ['192.168.20.31', '192.168.20.32'], '192.168.20.31'), '192.168.20.33');
    assert.equal(free('subnet: 192.168.20.0/24', ['192.168.20.254'], '192.168.20.254'), '192.168.20.1');
    assert.equal(free('subnet: 192.168.20.0/24', []), '192.168.20.1');
  });

  it('keeps the place of an address from another subnet where that is free', () => {
    assert.equal(free('subnet: 192.168.20.0/24', [], '192.168.10.45'), '192.168.20.45');
    assert.equal(free('subnet: 192.168.20.0/24', ['192.168.20.45'], '192.168.10.45'), '192.168.20.46');
  });

  it('is outside the DHCP pool', () => {
    assert.equal(
      free('subnet: 192.168.20.0/24, dhcp-pool: 192.168.20.100-192.168.20.199', [], '192.168.20.120'),
      '192.168.20.200',
    );
    assert.equal(free('subnet: 192.168.20.0/30, dhcp-pool: 192.168.20.1-192.168.20.2', []), undefined);
  });

  it('leaves the lowest to a gateway that has none', () => {
    const site = siteFrom(
      'vlans:\n  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}\ndevices:\n  router: {kind: router}\n',
    );
    assert.equal(nextFreeAddress(site, vlan(site, 'video')), parseAddress('192.168.20.2'));
  });

  // Usable hosts: RFC 3021 §2.1 for /31, read; /24 to /30 the size less 2.
  it('gives each host of a subnet an address of its own until the subnet is full', () => {
    fc.assert(
      fc.property(fc.integer({ min: 28, max: 32 }), fc.integer({ min: 0, max: 15 }), (prefix, start) => {
        const hosts = prefix >= 31 ? 2 ** (32 - prefix) : 2 ** (32 - prefix) - 2;
        const given: string[] = [];
        for (;;) {
          const address = free(`subnet: 192.168.20.0/${prefix}`, given, `192.168.20.${start}`);
          if (address === undefined) break;
          given.push(address);
        }
        assert.equal(new Set(given).size, hosts);
        assert.equal(given.length, hosts);
      }),
      { numRuns: 20 },
    );
  });
});

describe('the next free group', () => {
  const free = (groups: readonly string[], near?: string): string | undefined => {
    const site = siteFrom(
      `streams:\n${groups.map((group, i) => `  s-${i}: {source: recorder, group: ${group}}\n`).join('')}`,
    );
    const group = nextFreeGroup(site, near === undefined ? undefined : parseAddress(near));
    return group === undefined ? undefined : formatAddress(group);
  };

  it('is the next in the same scope', () => {
    assert.equal(free(['239.192.20.31'], '239.192.20.31'), '239.192.20.32');
    assert.equal(free(['239.255.20.31'], '239.255.20.31'), '239.255.20.32');
  });

  // Source: RFC 2365 §6.2, read.
  it('is in the organization-local scope where nothing speaks for another', () => {
    assert.equal(free([]), '239.192.0.1');
    assert.equal(free(['224.0.0.31'], '224.0.0.31'), '239.192.0.1');
  });

  it('is in the scope of most groups of the site where its own is none to take from', () => {
    assert.equal(free(['239.255.20.31', '239.255.20.32', '224.1.2.3'], '224.1.2.3'), '239.255.20.33');
  });

  // Source: RFC 1112 §6.4, read: 239.64.20.32 and 239.192.20.32 are both 01:00:5e:40:14:20.
  it('shares no MAC address with a group in use', () => {
    assert.equal(free(['239.192.20.31', '239.64.20.32'], '239.192.20.31'), '239.192.20.33');
  });

  // Source: RFC 2365 §9, read.
  it('is not in the highest /24 of the scope', () => {
    assert.equal(free(['239.195.254.255'], '239.195.254.255'), '239.192.0.1');
  });
});

describe('the next free port', () => {
  const site = siteFrom(`
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [recorder]}
  tv: {source: headend, transport: ts-udp, port: 5007, receivers: [recorder]}
  yard: {source: yard-cam, transport: rtp, port: 5005, receivers: [recorder]}
  yard-live: {source: recorder, transport: rtp, port: 5005, group: 239.192.20.32}
`);

  // Source: RFC 3550 §11, read: RTP on an even port, RTCP on the odd one above.
  it('is even, and neither it nor the one above is taken at the receiver', () => {
    assert.equal(nextFreePort(site, stream(site, 'yard')), 5008);
  });

  it('may be one that is taken at another destination', () => {
    assert.equal(nextFreePort(site, stream(site, 'yard-live')), 5004);
  });
});
