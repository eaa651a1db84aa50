import assert from 'node:assert/strict';
import ipaddr from 'ipaddr.js';
import fc from 'fast-check';
import {
  broadcast,
  contains,
  firstHost,
  formatAddress,
  formatSubnet,
  isMulticast,
  isPrivate,
  lastHost,
  overlaps,
  parseAddress,
  parseRange,
  parseSubnet,
  type Subnet,
  type ParsedSubnet,
} from '../../server/src/standards/ipv4.ts';

const address = (text: string): number => {
  const parsed = parseAddress(text);
  assert.ok(parsed !== undefined, `${text} is an address`);
  return parsed;
};

const subnet = (text: string): ParsedSubnet => {
  const parsed = parseSubnet(text);
  assert.ok(parsed !== undefined, `${text} is a subnet`);
  return parsed;
};

const anyAddress = fc.nat(0xffffffff);
const anySubnet: fc.Arbitrary<Subnet> = fc
  .tuple(anyAddress, fc.nat(32))
  .map(([network, prefix]) => subnet(`${formatAddress(network)}/${prefix}`));

describe('IPv4 (RFC 791, RFC 1918, RFC 3021)', () => {
  describe('addresses', () => {
    it('reads a dotted quad as an unsigned number', () => {
      assert.equal(address('0.0.0.0'), 0);
      assert.equal(address('192.168.20.31'), 0xc0a8141f);
      assert.equal(address('255.255.255.255'), 0xffffffff);
    });

    // The forms that RFC 6943 §3.1.1 calls loose (from memory), and misprints.
    for (const text of [
      '',
      '192.168.20',
      '192.168.20.31.',
      '192.168.20.256',
      '192.168.020.31',
      '0300.0250.0.1',
      '0xc0.168.1.1',
      '3232240671',
      ' 192.168.20.31',
      '192.168.20.31\n',
      '192.168.20.-1',
      '192.168.20.1e1',
      '192.168..31',
    ]) {
      it(`does not read ${JSON.stringify(text)}`, () => assert.equal(parseAddress(text), undefined));
    }

    it('agrees with ipaddr.js on every address, both ways', () => {
      fc.assert(
        fc.property(anyAddress, (number) => {
          const text = formatAddress(number);
          assert.equal(parseAddress(text), number);
          assert.equal(ipaddr.IPv4.isValidFourPartDecimal(text), true);
          assert.deepEqual(ipaddr.IPv4.parse(text).octets, text.split('.').map(Number));
        }),
      );
    });
  });

  describe('subnets', () => {
    it('keeps host bits off and reports them', () => {
      assert.deepEqual(subnet('192.168.20.0/24'), { network: 0xc0a81400, prefix: 24, hostBits: false });
      assert.deepEqual(subnet('192.168.20.31/24'), { network: 0xc0a81400, prefix: 24, hostBits: true });
      assert.equal(formatSubnet(subnet('192.168.20.31/24')), '192.168.20.0/24');
    });

    for (const text of ['192.168.20.0', '192.168.20.0/33', '192.168.20.0/024', '192.168.20.0/', '/24', '1.2.3.4/2/4']) {
      it(`does not read ${JSON.stringify(text)}`, () => assert.equal(parseSubnet(text), undefined));
    }

    // Usable hosts: /24 254, /30 2 (arithmetic); /31 2, RFC 3021 §2.1, read; /32 1 (arithmetic).
    for (const [text, first, last, hosts] of [
      ['192.168.20.0/24', '192.168.20.1', '192.168.20.254', 254],
      ['192.168.20.4/30', '192.168.20.5', '192.168.20.6', 2],
      ['192.168.20.4/31', '192.168.20.4', '192.168.20.5', 2],
      ['192.168.20.4/32', '192.168.20.4', '192.168.20.4', 1],
    ] as const) {
      it(`has ${hosts} hosts in ${text}`, () => {
        assert.equal(formatAddress(firstHost(subnet(text))), first);
        assert.equal(formatAddress(lastHost(subnet(text))), last);
        assert.equal(lastHost(subnet(text)) - firstHost(subnet(text)) + 1, hosts);
      });
    }

    it('agrees with ipaddr.js on network, broadcast and membership', () => {
      fc.assert(
        fc.property(anySubnet, anyAddress, (block, number) => {
          const text = formatSubnet(block);
          assert.equal(formatAddress(block.network), ipaddr.IPv4.networkAddressFromCIDR(text).toString());
          assert.equal(formatAddress(broadcast(block)), ipaddr.IPv4.broadcastAddressFromCIDR(text).toString());
          const inside = ipaddr.IPv4.parse(formatAddress(number)).match(ipaddr.IPv4.parseCIDR(text));
          assert.equal(contains(block, number), inside);
        }),
      );
    });

    it('finds an overlap exactly where the spans of addresses meet', () => {
      fc.assert(
        fc.property(anySubnet, anySubnet, (a, b) => {
          assert.equal(overlaps(a, b), a.network <= broadcast(b) && b.network <= broadcast(a));
          assert.equal(overlaps(a, b), overlaps(b, a));
        }),
      );
      assert.equal(overlaps(subnet('192.168.0.0/16'), subnet('192.168.20.0/24')), true);
      assert.equal(overlaps(subnet('192.168.10.0/24'), subnet('192.168.20.0/24')), false);
      assert.equal(overlaps(subnet('0.0.0.0/0'), subnet('239.0.0.0/8')), true);
    });
  });

  describe('ranges', () => {
    it('reads two addresses and all between', () => {
      const range = { first: address('192.168.10.100'), last: address('192.168.10.199') };
      assert.deepEqual(parseRange('192.168.10.100-192.168.10.199'), range);
      assert.deepEqual(parseRange('192.168.10.100 - 192.168.10.199'), range);
      assert.deepEqual(parseRange('192.168.10.100-192.168.10.100'), { first: range.first, last: range.first });
    });

    for (const text of ['192.168.10.9-192.168.10.1', '192.168.10.1', '192.168.10.1-9', '1.1.1.1-2.2.2.2-3.3.3.3']) {
      it(`does not read ${text}`, () => assert.equal(parseRange(text), undefined));
    }
  });

  // Edges of RFC 1918 §3 and RFC 5771 §3, read.
  it('knows private addresses', () => {
    for (const text of [
      '10.0.0.0',
      '10.255.255.255',
      '172.16.0.0',
      '172.31.255.255',
      '192.168.0.0',
      '192.168.255.255',
    ]) {
      assert.equal(isPrivate(address(text)), true, text);
    }
    for (const text of [
      '9.255.255.255',
      '11.0.0.0',
      '172.15.255.255',
      '172.32.0.0',
      '192.167.255.255',
      '192.169.0.0',
    ]) {
      assert.equal(isPrivate(address(text)), false, text);
    }
  });

  it('agrees with ipaddr.js on what is private and what is multicast', () => {
    const nearPrivate = fc.oneof(
      ...[0x0a000000, 0xac000000, 0xc0a80000].map((start) =>
        fc.integer({ min: start - 0x10000, max: start + 0xffffff }),
      ),
    );
    fc.assert(
      fc.property(fc.oneof(anyAddress, nearPrivate), (number) => {
        const range = ipaddr.IPv4.parse(formatAddress(number)).range();
        assert.equal(isPrivate(number), range === 'private');
        assert.equal(isMulticast(number), range === 'multicast');
      }),
    );
    assert.equal(isMulticast(address('223.255.255.255')), false);
    assert.equal(isMulticast(address('224.0.0.0')), true);
    assert.equal(isMulticast(address('239.255.255.255')), true);
    assert.equal(isMulticast(address('240.0.0.0')), false);
  });
});
