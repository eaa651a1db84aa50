/** Where the querier stands best. */

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { networkOf } from '../../server/src/network/network.ts';
import { bestQuerier } from '../../server/src/network/querier.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

/** The best querier of three switches in a line, for servers at the first and last that send so much. */
function best(
  first: string,
  last: string,
  snooping: readonly [boolean, boolean, boolean] = [true, true, true],
): string | undefined {
  const folder = new SiteFolder();
  const ports = 'ports: {a: {vlan: video}, left: {trunk: [video]}, right: {trunk: [video]}}';
  folder.set(
    'file:///harrow-lane/all.site.yaml',
    `
vlans: {video: {id: 20}}
devices:
${['house', 'stable', 'barn'].map((name, i) => `  ${name}: {kind: switch, igmp-snooping: ${snooping[i]}, ${ports}}`).join('\n')}
  house-server: {kind: server}
  barn-server: {kind: server}
cables:
  - {from: house/a, to: house-server}
  - {from: house/right, to: stable/left}
  - {from: stable/right, to: barn/left}
  - {from: barn/a, to: barn-server}
streams:
  tv: {source: house-server, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: ${first}}
  paddock: {source: barn-server, transport: ts-rtp, group: 239.192.30.2, port: 5004, mux-rate: ${last}}
`,
  );
  const site = folder.site();
  const network = networkOf(site);
  const [domain] = network.topology.domains;
  return domain === undefined ? undefined : bestQuerier(site, network, domain)?.name;
}

// Measured on Open vSwitch: with the querier at the far end of three switches each trunk carries every group; at the
// sender's switch, only what somebody behind has joined. What loads the trunks least follows from that.
describe('the best querier', () => {
  it('is the switch at which most is sent', () => {
    assert.equal(best('20 Mb/s', '4 Mb/s'), 'house');
    assert.equal(best('4 Mb/s', '20 Mb/s'), 'barn');
  });

  it('is the nearest to it that snoops', () => {
    assert.equal(best('20 Mb/s', '4 Mb/s', [false, true, true]), 'stable');
    assert.equal(best('20 Mb/s', '4 Mb/s', [false, false, false]), undefined);
  });
});
