/** A lab that is taken down, or that fails half-way, leaves no namespace, process or file. */

import assert from 'node:assert/strict';
import { chmodSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { before, describe, it } from 'mocha';
import { unavailable } from '../availability.ts';
import { planFrom } from './family.ts';
import { Lab } from './lab.ts';
import { Place } from './place.ts';
import { whyNoLab } from './probe.ts';
import { run } from './run.ts';

const SITE = `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1-2: {vlan: video}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 1 Mb/s}, receivers: [kitchen-screen]}
`;

describe('the lab leaves nothing behind', function () {
  before(async function () {
    const reason = await whyNoLab();
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
  });

  it('when it is taken down', async () => {
    const lab = new Lab(planFrom({ 'small.site.yaml': SITE }));
    const { folder } = lab;
    try {
      await lab.build();
      assert.ok(
        processesOf(folder).length >= 3,
        'there are two processes of the switch, and the senders and receivers',
      );
      assert.ok((await namespaces()).length >= 4);
    } finally {
      lab.end();
    }
    await assertNothingOf(folder);
  });

  it('when a tool fails half-way', async () => {
    const place = new Place();
    const path = process.env['PATH'];
    const lab = new Lab(planFrom({ 'small.site.yaml': SITE }));
    const { folder } = lab;
    try {
      const tools = join(place.folder, 'tools');
      mkdirSync(tools);
      writeFileSync(join(tools, 'ethtool'), '#!/bin/sh\necho refused >&2\nexit 1\n');
      chmodSync(join(tools, 'ethtool'), 0o755);
      process.env['PATH'] = `${tools}:${path}`;
      await assert.rejects(lab.build(), /refused/);
    } finally {
      process.env['PATH'] = path;
      lab.end();
      place.clear();
    }
    await assertNothingOf(folder);
  });
});

async function assertNothingOf(folder: string): Promise<void> {
  assert.equal(existsSync(folder), false);
  assert.deepEqual(await namespaces(), []);
  assert.deepEqual(processesOf(folder), []);
}

/** The namespaces of this run. */
async function namespaces(): Promise<string[]> {
  const listed = JSON.parse((await run('ip', ['-j', 'netns', 'list'])) || '[]') as { name: string }[];
  return listed.map(({ name }) => name).filter((name) => name.includes(`-${process.pid}-`));
}

/** The command lines of processes that were started with something in a folder. */
function processesOf(folder: string): string[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      try {
        const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
        return command.includes(folder) ? [command] : [];
      } catch {
        return []; // The process has ended.
      }
    });
}
