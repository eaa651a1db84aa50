/** A unit that sends a copy to each receiver, run on a real network where one of the receivers is off. */

import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { relays } from '../../server/src/make/media/relays.ts';
import { unavailable } from '../availability.ts';
import { fileOf } from '../make/made.ts';
import { whyNoNamespace } from '../make/namespace.ts';
import { Unit } from '../rehearsal/unit.ts';
import { makeClip } from './clip.ts';
import { planFrom } from './family.ts';
import { run } from './run.ts';
import { TwoHosts } from './two-hosts.ts';

const FRAME_RATE = 20;
const SECONDS = 12;

/** No host has the address of the hall screen, as when it is off: ARP requests for it get no answer. */
const SITE = `
devices:
  core: {kind: switch, ports: {1-4: {}}}
  recorder: {kind: server, address: 192.168.20.5}
  yard-cam: {kind: camera, address: 192.168.20.31}
  kitchen-screen: {kind: display, address: 192.168.20.61}
  hall-screen: {kind: display, address: 192.168.20.62}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: yard-cam}
  - {from: core/3, to: kitchen-screen}
  - {from: core/4, to: hall-screen}
streams:
  yard: {source: yard-cam, transport: rtsp, video: {codec: h264}, receivers: [recorder]}
`;

/**
 * Linux gives up a neighbour after three requests, a second apart (arp(7)): a sender that waits for it is blocked that
 * long, repeatedly.
 */
const PATIENCE = 3;

describe('a receiver that is off', function () {
  const hosts = new TwoHosts();
  // As cameras send it, with start codes (ISO/IEC 14496-10, Annex B).
  const film = join(hosts.place.folder, 'film.ts');

  before(async function () {
    const reason = whyNoNamespace('ffmpeg', 'ethtool', 'tcpdump');
    if (reason !== undefined) unavailable(this, reason);
    await hosts.build(['192.168.20.5']);
    await makeClip(film, {
      seconds: SECONDS,
      frameRate: FRAME_RATE,
      keyframeEvery: 1,
      videoRate: 1_000_000,
      sound: false,
    });
  });

  after(() => hosts.end());

  /**
   * Datagrams that the other receiver has had when the film, at its own pace, is over: when, in seconds, and of how
   * many bytes.
   */
  async function received(
    args: readonly string[],
  ): Promise<readonly { readonly at: number; readonly bytes: number }[]> {
    const ear = hosts.receive(
      'tcpdump',
      '-i',
      'eth',
      '-l',
      '-n',
      '-q',
      '-tt',
      '--immediate-mode',
      'udp',
      'port',
      '5004',
    );
    await ear.says('listening on');
    const sender = hosts.send('ffmpeg', '-nostdin', '-loglevel', 'error', '-re', '-i', film, ...args);
    const over = new Promise<void>((resolve) => setTimeout(resolve, (SECONDS + PATIENCE) * 1000));
    await Promise.race([sender.ended, over]);
    ear.stop();
    await ear.ended;
    sender.kill();
    await sender.ended;
    return [...ear.output.matchAll(/^([\d.]+) .*UDP, length (\d+)/gm)].map(([, at, bytes]) => ({
      at: Number(at),
      bytes: Number(bytes),
    }));
  }

  /** The output arguments that the unit gives FFmpeg. */
  function sending(transport: string): string[] {
    const copies = `  copies: {source: recorder, carries: yard, transport: ${transport}, port: 5004, receivers: [hall-screen, kitchen-screen]}\n`;
    const unit = new Unit(
      'relay',
      fileOf(relays.make(planFrom({ 'off.site.yaml': SITE + copies })), 'recorder/plumbline-relay-copies.service'),
    );
    const words = unit.commands('ExecStart')[0] ?? [];
    return words.slice(words.indexOf('-i') + 2);
  }

  for (const transport of ['ts-udp', 'rtp']) {
    it(`takes nothing from the others, and lets none of them wait: ${transport}`, async () => {
      const packets = await run('ffprobe', [
        '-loglevel',
        'error',
        '-show_entries',
        'packet=size',
        '-of',
        'csv=p=0',
        film,
      ]);
      const whole = packets.split('\n').reduce((sum, size) => sum + Number(size.replace(',', '')), 0);
      const datagrams = await received(sending(transport));
      const all = datagrams.reduce((sum, { bytes }) => sum + bytes, 0);
      const longest = Math.max(...datagrams.slice(1).map(({ at }, index) => at - (datagrams[index]?.at ?? 0)));
      assert.ok(all > 0.9 * whole, `${all} of ${whole} bytes`);
      assert.ok(longest < PATIENCE / 2, `nothing for ${longest.toFixed(1)} s`);
      console.log(
        `      ${Math.round((100 * all) / whole)} % of the film, and never nothing for more than ${longest.toFixed(2)} s`,
      );
    });
  }
});
