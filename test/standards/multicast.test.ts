import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatAddress, parseAddress, parseSubnet, broadcast } from '../../server/src/standards/ipv4.ts';
import {
  blockOf,
  blocks,
  groupMac,
  groupsOnMac,
  isLinkLocalGroup,
  macKey,
  onAlwaysFloodedMac,
  sapGroupFor,
  scopeRelativeReserved,
  sourceSpecificHeld,
  type BlockUse,
} from '../../server/src/standards/multicast.ts';

const group = (text: string): number => {
  const parsed = parseAddress(text);
  assert.ok(parsed !== undefined, `${text} is an address`);
  return parsed;
};

const anyGroup = fc.integer({ min: 0xe0000000, max: 0xefffffff });

describe('IPv4 multicast', () => {
  describe('MAC address of a group (RFC 1112 §6.4: the rule read, the values derived by hand)', () => {
    for (const [address, mac] of [
      ['224.0.0.1', '01:00:5e:00:00:01'],
      ['224.128.0.1', '01:00:5e:00:00:01'],
      ['239.0.0.1', '01:00:5e:00:00:01'],
      ['239.128.0.1', '01:00:5e:00:00:01'],
      ['224.0.0.22', '01:00:5e:00:00:16'],
      ['224.0.0.251', '01:00:5e:00:00:fb'],
      ['232.0.0.251', '01:00:5e:00:00:fb'],
      ['224.2.127.254', '01:00:5e:02:7f:fe'],
      ['225.1.2.3', '01:00:5e:01:02:03'],
      ['230.129.2.3', '01:00:5e:01:02:03'],
      ['239.1.2.3', '01:00:5e:01:02:03'],
      ['239.129.2.3', '01:00:5e:01:02:03'],
      ['233.252.0.1', '01:00:5e:7c:00:01'],
      ['239.192.20.31', '01:00:5e:40:14:1f'],
      ['239.192.10.20', '01:00:5e:40:0a:14'],
      ['239.64.10.20', '01:00:5e:40:0a:14'],
      ['239.255.255.250', '01:00:5e:7f:ff:fa'],
      ['239.127.255.250', '01:00:5e:7f:ff:fa'],
    ] as const) {
      it(`of ${address} is ${mac}`, () => assert.equal(groupMac(group(address)), mac));
    }

    it('is shared by 32 groups: on 01:00:5e:01:02:03 those of 224 to 239 with .1.2.3 and .129.2.3', () => {
      const expected = Array.from({ length: 16 }, (_, index) => 224 + index).flatMap((first) => [
        `${first}.1.2.3`,
        `${first}.129.2.3`,
      ]);
      assert.deepEqual(groupsOnMac(group('239.1.2.3')).map(formatAddress), expected);
    });

    // RFC 1112 §6.4 and RFC 4541 §2.1.2(5), read: 28 significant bits less 23 leave 32 groups to a MAC address.
    it('is shared by exactly the 32 groups listed, whichever group is asked about', () => {
      fc.assert(
        fc.property(anyGroup, anyGroup, (asked, other) => {
          const sharing = groupsOnMac(asked);
          assert.equal(new Set(sharing).size, 32);
          assert.ok(sharing.includes(asked));
          assert.ok(sharing.every((one) => groupMac(one) === groupMac(asked) && blockOf(one).first <= one));
          assert.equal(sharing.includes(other), groupMac(other) === groupMac(asked));
          assert.equal(macKey(asked) === macKey(other), groupMac(other) === groupMac(asked));
        }),
      );
    });

    // RFC 7042 §2.1.1, read: IPv4 multicast has 01-00-5E-00-00-00 to 01-00-5E-7F-FF-FF.
    it('stays in the lower half of the block', () => {
      fc.assert(
        fc.property(anyGroup, (one) => {
          assert.match(groupMac(one), /^01:00:5e:[0-7][0-9a-f]:[0-9a-f]{2}:[0-9a-f]{2}$/);
        }),
      );
    });
  });

  describe('blocks', () => {
    it('cover 224.0.0.0/4 without gap or overlap', () => {
      assert.equal(blocks[0]?.first, group('224.0.0.0'));
      assert.equal(blocks.at(-1)?.last, group('239.255.255.255'));
      blocks.forEach((block, index) => {
        assert.ok(block.first <= block.last, block.name);
        const next = blocks[index + 1];
        if (next !== undefined) assert.equal(next.first, block.last + 1, block.name);
      });
    });

    // RFC 5771 §3–§9, RFC 4607 §1 and §4.3, RFC 6034 §3, RFC 2365 §6: each read, first and last address of each.
    for (const [first, last, use] of [
      ['224.0.0.0', '224.0.0.255', 'local-control'],
      ['224.0.1.0', '224.0.1.255', 'internetwork'],
      ['224.0.2.0', '224.0.255.255', 'ad-hoc'],
      ['224.1.0.0', '224.1.255.255', 'reserved'],
      ['224.2.0.0', '224.2.255.255', 'sdp-sap'],
      ['224.3.0.0', '224.4.255.255', 'ad-hoc'],
      ['224.5.0.0', '231.255.255.255', 'reserved'],
      ['232.0.0.0', '232.255.255.255', 'ssm'],
      ['233.0.0.0', '233.251.255.255', 'glop'],
      ['233.252.0.0', '233.252.0.255', 'test-net'],
      ['233.252.1.0', '233.255.255.255', 'ad-hoc'],
      ['234.0.0.0', '234.255.255.255', 'unicast-prefix'],
      ['235.0.0.0', '238.255.255.255', 'reserved'],
      ['239.0.0.0', '239.191.255.255', 'unassigned-admin'],
      ['239.192.0.0', '239.195.255.255', 'organization-local'],
      ['239.196.0.0', '239.252.255.255', 'admin-scoped'],
      ['239.253.0.0', '239.254.255.255', 'unassigned-admin'],
      ['239.255.0.0', '239.255.255.255', 'local-scope'],
    ] as const satisfies readonly (readonly [string, string, BlockUse])[]) {
      it(`${first} to ${last} is ${use}`, () => {
        assert.equal(blockOf(group(first)).use, use);
        assert.equal(blockOf(group(last)).use, use);
      });
    }

    it('give every group one block that holds it, with advice and source', () => {
      fc.assert(
        fc.property(anyGroup, (one) => {
          const block = blockOf(one);
          assert.ok(block.first <= one && one <= block.last);
          assert.ok(block.advice !== '' && block.source.startsWith('RFC '));
        }),
      );
    });

    it('hold no unicast address', () => {
      for (const text of ['192.168.20.31', '223.255.255.255', '240.0.0.0']) {
        assert.throws(() => blockOf(group(text)), new RangeError(`${text} is not a multicast group`));
      }
    });
  });

  describe('flooding', () => {
    // RFC 4541 §2.1.2(2) and RFC 4607 §9, read.
    it('is certain in 224.0.0.0/24 and for the groups that share its MAC addresses', () => {
      assert.equal(isLinkLocalGroup(group('224.0.0.251')), true);
      assert.equal(isLinkLocalGroup(group('224.0.1.0')), false);
      for (const text of ['232.0.0.5', '232.128.0.5', '239.0.0.1', '239.128.0.1', '224.128.0.22']) {
        assert.equal(onAlwaysFloodedMac(group(text)), true, text);
      }
      for (const text of ['224.0.0.1', '239.192.20.31', '239.255.0.1', '232.0.1.5', '239.64.0.1']) {
        assert.equal(onAlwaysFloodedMac(group(text)), false, text);
      }
    });

    it('strikes just those groups outside 224.0.0.0/24 whose MAC address starts with 01:00:5e:00:00', () => {
      const block = parseSubnet('224.0.0.0/24');
      assert.ok(block !== undefined);
      const nearby = fc
        .tuple(fc.constantFrom(0xe0000000, 0xe8800000, 0xef800000), fc.nat(0x1ff))
        .map(([start, offset]) => start + offset);
      fc.assert(
        fc.property(fc.oneof(anyGroup, nearby), (one) => {
          const inBlock = one >= block.network && one <= broadcast(block);
          assert.equal(onAlwaysFloodedMac(one), groupMac(one).startsWith('01:00:5e:00:00') && !inBlock);
        }),
      );
    });
  });

  // RFC 2365 §9, read: the highest /24 of each scope.
  it('keeps the highest /24 of a scope for scope-relative assignments', () => {
    for (const text of ['239.255.255.0', '239.255.255.250', '239.195.255.0', '239.195.255.255']) {
      assert.equal(scopeRelativeReserved(group(text)), true, text);
    }
    for (const text of ['239.255.254.255', '239.192.20.31', '239.194.255.255', '224.2.255.255', '238.255.255.255']) {
      assert.equal(scopeRelativeReserved(group(text)), false, text);
    }
  });

  // RFC 4607 §1, read: 232.0.0.0 must not be used, 232.0.0.1 to 232.0.0.255 are for allocation by IANA.
  it('holds the lowest /24 of source-specific groups', () => {
    for (const text of ['232.0.0.0', '232.0.0.1', '232.0.0.255'])
      assert.equal(sourceSpecificHeld(group(text)), true, text);
    for (const text of ['231.255.255.255', '232.0.1.0', '232.255.0.0', '239.232.0.0'])
      assert.equal(sourceSpecificHeld(group(text)), false, text);
  });

  // RFC 2974 §3, read; 239.195.255.255 derived from its rule.
  it('knows on which group a session is announced', () => {
    for (const [session, announcement] of [
      ['239.255.20.31', '239.255.255.255'],
      ['239.192.20.31', '239.195.255.255'],
      ['224.2.128.1', '224.2.127.254'],
    ] as const) {
      assert.equal(sapGroupFor(group(session)), group(announcement), session);
    }
    for (const session of ['224.0.0.5', '239.1.2.3', '239.200.0.1', '239.254.0.1']) {
      assert.equal(sapGroupFor(group(session)), undefined, session);
    }
  });
});
