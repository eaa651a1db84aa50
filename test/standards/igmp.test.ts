import assert from 'node:assert/strict';
import { formatAddress, parseAddress } from '../../server/src/standards/ipv4.ts';
import {
  ALL_SYSTEMS_GROUP,
  electedQuerier,
  groupMembershipInterval,
  lastMemberQueryTime,
  otherQuerierPresentInterval,
  QUERY_INTERVAL,
  QUERY_RESPONSE_INTERVAL,
  REPORTS_GROUP,
  startupQueryInterval,
} from '../../server/src/standards/igmp.ts';

describe('IGMP timers (RFC 3376 §8, RFC 2236 §8)', () => {
  // Formulas and defaults read in both RFCs; the values are their arithmetic.
  it('keep a membership for 260 s by default', () => {
    assert.equal(groupMembershipInterval(), 260);
    assert.equal(otherQuerierPresentInterval(), 255);
    assert.equal(startupQueryInterval(), 31.25);
    // RFC 3376 §8.8 (1 s) times §8.9 (the robustness), from memory
    assert.equal(lastMemberQueryTime(), 2);
  });

  it('follow robustness and query interval', () => {
    assert.equal(groupMembershipInterval(3, 60, 10), 190);
    assert.equal(otherQuerierPresentInterval(3, 60, 10), 185);
  });

  it('leave hosts less time to answer than passes between queries', () => {
    // RFC 3376 §8.3, read
    assert.ok(QUERY_RESPONSE_INTERVAL < QUERY_INTERVAL);
  });

  it('send queries to 224.0.0.1 and IGMPv3 reports to 224.0.0.22', () => {
    // RFC 3376 §4.1.12, §4.2.14, read
    assert.deepEqual([ALL_SYSTEMS_GROUP, REPORTS_GROUP].map(formatAddress), ['224.0.0.1', '224.0.0.22']);
  });

  // RFC 3376 §6.6.2 and RFC 4541 §2.1.1(4), read.
  it('are kept by the querier with the lowest address, 0.0.0.0 apart', () => {
    const addresses = ['192.168.20.5', '192.168.20.2', '0.0.0.0'].map(
      (text) => parseAddress(text) ?? assert.fail(text),
    );
    assert.equal(formatAddress(electedQuerier(addresses) ?? 0), '192.168.20.2');
    assert.equal(electedQuerier([0]), undefined);
    assert.equal(electedQuerier([]), undefined);
  });
});
