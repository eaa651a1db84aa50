/** Compares the same predictions with switches of another kind: bridges of the kernel. */

import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import { unavailable } from '../availability.ts';
import { Ahead } from './ahead.ts';
import { planFrom } from './family.ts';
import { measure } from './measure.ts';
import { whyNoLab } from './probe.ts';
import { tableOf } from './table.ts';

const SECONDS = 2;
const VIDEO = 'video: {codec: h264, bitrate: 2 Mb/s}';

/** Three switches in a line, each with a screen, and a VLAN of the house without tags beside. */
function line(says: string, querier: string, port = ''): string {
  return `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24${querier}}
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  s1: {kind: switch, address: 192.168.20.11, ${says}, ports: {1-3: {vlan: video}, 4-5: {vlan: house}}}
  s2: {kind: switch, address: 192.168.20.12, ${says}, ports: {1-2: {vlan: video}, 3: {vlan: video${port}}, 4: {vlan: video}}}
  s3: {kind: switch, address: 192.168.20.13, ${says}, ports: {1-3: {vlan: video}}}
  nas: {kind: server, ports: {cams: {address: 192.168.20.5}, lan: {address: 192.168.10.5}}, routes: [{to: 224.0.0.0/4, port: cams}]}
  near: {kind: display, address: 192.168.20.41}
  middle: {kind: display, address: 192.168.20.42}
  silent: {kind: computer, address: 192.168.20.43}
  far: {kind: display, address: 192.168.20.44}
  pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: s1/1, to: nas/cams}
  - {from: s1/2, to: near}
  - {from: s1/3, to: s2/1}
  - {from: s1/4, to: nas/lan}
  - {from: s1/5, to: pc}
  - {from: s2/2, to: middle}
  - {from: s2/3, to: silent}
  - {from: s2/4, to: s3/1}
  - {from: s3/2, to: far}
streams:
  g1: {source: nas, transport: rtp, group: 239.255.1.1, port: 5004, ${VIDEO}, receivers: [near, middle]}
  g2: {source: nas, transport: rtp, group: 239.255.1.2, port: 5004, ${VIDEO}, receivers: [middle, far]}
  g3: {source: nas, transport: rtp, group: 239.255.1.3, port: 5004, ${VIDEO}}
  lan: {source: nas, transport: ts-udp, port: 5006, mux-rate: 1 Mb/s, receivers: [pc]}
`;
}

const SNOOPING = 'igmp-snooping: true, unregistered-multicast: drop, without-querier: flood';

const CASES: Readonly<Record<string, string>> = {
  'a querier at the first switch': line(SNOOPING, ', querier: s1'),
  'a querier at the last switch': line(SNOOPING, ', querier: s3'),
  'no querier: it floods until somebody asks': line(SNOOPING, ''),
  'no snooping': line('igmp-snooping: false', ''),
  'a server that asks and receives': line(SNOOPING, ', querier: nas').replace('[near, middle]', '[near, nas]'),
  'a static router port': line(SNOOPING, ', querier: s1', ', router-port: true'),
};

/** Sites that run at the same time. */
const AT_ONCE = 3;

describe('switches that are bridges of the kernel', function () {
  const outcomes = new Ahead(
    Object.values(CASES).map(
      (site) => () => measure(planFrom({ 'line.site.yaml': site }), SECONDS, { switches: 'linux' }),
    ),
    AT_ONCE,
  );

  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  after(() => outcomes.ended());

  Object.keys(CASES).forEach((title, index) => {
    it(title, async () => {
      const { rows, wrong } = await outcomes.get(index);
      console.log(tableOf(rows));
      assert.deepEqual(wrong, []);
    });
  });
});
