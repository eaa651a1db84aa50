/**
 * Runs the made network scripts on hosts that have only their cards: each made check passes, each receiver joins, and
 * the switches count the predicted load.
 */

import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { iproute2 } from '../../server/src/make/network/iproute2.ts';
import { networkd } from '../../server/src/make/network/networkd.ts';
import type { Output } from '../../server/src/make/output.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import type { Device } from '../../server/src/site/model.ts';
import { NEW_SITES, NEW_SITE_FILE } from '../../server/src/site/new-site/new-site.ts';
import { unavailable } from '../availability.ts';
import { START, whyNoNetworkd } from '../make/network/real-networkd.ts';
import { Ahead } from './ahead.ts';
import { folderOf, planFrom } from './family.ts';
import type { Lab } from './lab.ts';
import { type Outcome, measure } from './measure.ts';
import { whyNoLab } from './probe.ts';
import { tableOf } from './table.ts';
import { until } from './until.ts';

const SECONDS = 2;
const VIDEO = 'video: {codec: h264, bitrate: 2 Mb/s}';

function sample(name: string): Plan {
  const folder = new URL(`../../samples/${name}/`, import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith('.site.yaml'));
  // Including values that do not fit the schema, as one site has mistakes.
  const texts = Object.fromEntries(files.map((file) => [file, readFileSync(new URL(file, folder), 'utf8')]));
  // The router and the Internet are not made, so that what goes there beside the streams would be lost.
  return planOf({ ...folderOf(texts).site(), traffic: [] });
}

/** Two cards in one network, each asked for at its own address. */
const ONE_NETWORK = `
vlans: {video: {id: 20, subnet: 192.168.20.0/24, querier: core}}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, address: 192.168.20.2, ports: {1-5: {vlan: video}}}
  nas: {kind: server, ports: {a: {address: 192.168.20.5}, b: {address: 192.168.20.6}}, routes: [{to: 224.0.0.0/4, port: b}]}
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: nas/a}
  - {from: core/2, to: nas/b}
  - {from: core/3, to: cam}
  - {from: core/4, to: screen}
streams:
  paddock: {source: cam, transport: rtsp, port: 554, ${VIDEO}, receivers: [nas]}
  live: {source: nas, transport: rtp, group: 239.255.1.1, port: 5004, ${VIDEO}, receivers: [screen]}
  taken: {source: cam, transport: rtp, group: 239.255.1.2, port: 5004, ${VIDEO}, receivers: [nas]}
`;

/** A server that is the gateway between two networks, and another that has a spare card and a host route. */
const GATEWAY = `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: hub}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: hub}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2-4: {vlan: video}, 5: {vlan: house}}}
  hub: {kind: server, ports: {lan: {address: 192.168.10.1}, cams: {address: 192.168.20.1}}, routes: [{to: 224.0.0.0/4, port: cams}]}
  nas: {kind: server, ports: {eth: {address: 192.168.10.5}, spare: {}}, routes: [{to: 192.168.20.31/32, port: eth, via: 192.168.10.1}]}
  cam: {kind: camera, address: 192.168.20.31}
  screen: {kind: display, address: 192.168.20.41}
cables:
  - {from: core/1, to: hub/lan}
  - {from: core/2, to: hub/cams}
  - {from: core/3, to: cam}
  - {from: core/4, to: screen}
  - {from: core/5, to: nas/eth}
streams:
  paddock: {source: cam, transport: rtsp, port: 554, ${VIDEO}, receivers: [nas]}
  shown: {source: nas, transport: ts-udp, port: 5006, mux-rate: 1 Mb/s, receivers: [screen]}
`;

const SITES: Readonly<Record<string, () => Plan>> = {
  ...Object.fromEntries(
    Object.entries(NEW_SITES).map(([word, { text }]) => [
      `the site of \`plumbline new --like ${word}\``,
      () => planFrom({ [NEW_SITE_FILE]: text('Europe/London') }),
    ]),
  ),
  'the sample harrow-lane': () => sample('harrow-lane'),
  'the sample first-draft, with its mistakes': () => sample('first-draft'),
  'two cards in one network': () => planFrom({ 'house.site.yaml': ONE_NETWORK }),
  'a server that is a gateway, and a host route': () => planFrom({ 'house.site.yaml': GATEWAY }),
};

/** Sites that run at the same time. */
const AT_ONCE = 3;

describe('the network of a server as it is made', function () {
  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  describe('by iproute2', () =>
    runSites(iproute2, (lab, host, folder) => {
      const { status, err } = lab.answer(host, ['sh', join(folder, 'set-network.sh')]);
      assert.equal(status, 0, err);
      return Promise.resolve();
    }));

  describe('by networkd', () => {
    before(function () {
      const reason = whyNoNetworkd();
      if (reason !== undefined) unavailable(this, reason);
    });

    runSites(networkd, async (lab, host, folder) => {
      for (const file of readdirSync(folder).filter((name) => name.endsWith('.conf'))) {
        const { status, err } = lab.answer(host, ['sysctl', '-q', '-p', join(folder, file)]);
        assert.equal(status, 0, err);
      }
      const program = lab.start(host, 'unshare', ['--mount', 'sh', '-ec', START, 'sh', folder]);
      await program.says('Enumeration completed');
    });
  });
});

type SetUp = (lab: Lab, host: Device, folder: string) => Promise<void>;

function runSites(output: Output, setUp: SetUp): void {
  const sites = Object.entries(SITES).map(([title, plan]) => ({ title, plan: plan() }));
  const outcomes = new Ahead(
    sites.map(
      ({ plan }) =>
        () =>
          run(plan, output, setUp),
    ),
    AT_ONCE,
  );
  after(() => outcomes.ended());

  sites.forEach(({ title, plan }, index) => {
    it(title, async () => {
      const { rows, wrong, refusedJoins } = await outcomes.get(index);
      const hosts = hostsOf(plan, output);
      console.log(tableOf(rows.filter(({ port, to }) => [port, to].some(({ device }) => hosts.includes(device.name)))));
      // Where two devices have one address, either may answer.
      if (isClean(plan)) assert.deepEqual(wrong, []);
      assert.deepEqual(
        refusedJoins.filter((refused) => refused !== null),
        [],
      );
    });
  });
}

/** Whether no address is there twice or where it does not belong: the sample with mistakes has such. */
function isClean({ network: { addressUses } }: Plan): boolean {
  const isHome = addressUses.every(({ home, port }) => port === undefined || home !== undefined);
  return isHome && new Set(addressUses.map(({ address }) => address)).size === addressUses.length;
}

/** The hosts that scripts are made for. */
function hostsOf(plan: Plan, output: Output): string[] {
  return output.subjects(plan).filter((name) => {
    const device = plan.site.deviceByName.get(name);
    return device !== undefined && plan.network.interfaces.of(device).length > 0;
  });
}

/** Sets up each of these hosts, runs its made check, and measures. */
async function run(plan: Plan, output: Output, setUp: SetUp): Promise<Outcome> {
  const hosts = hostsOf(plan, output);
  assert.ok(hosts.length > 0, 'there is a host to set up');
  const write = (lab: Lab, name: string): string => {
    const folder = join(lab.folder, name);
    for (const made of [output.make(plan, name), iproute2.make(plan, name)]) {
      assert.deepEqual(made.refused, []);
      for (const { path, text } of made.files) {
        const file = join(lab.folder, path);
        mkdirSync(dirname(file), { recursive: true });
        writeFileSync(file, text);
      }
    }
    return folder;
  };
  const check = (lab: Lab, host: Device): string => {
    const { status, out, err } = lab.answer(host, ['sh', join(lab.folder, host.name, 'check-network.sh')]);
    return status === 0 ? '' : `${out}${err}`;
  };
  return measure(plan, SECONDS, {
    ...(!isClean(plan) && { mostTries: 1 }),
    bare: {
      hosts,
      setUp: async (lab, host) => {
        await setUp(lab, host, write(lab, host.name));
        await until(
          () => check(lab, host) === '',
          () => check(lab, host),
        );
      },
    },
  });
}
