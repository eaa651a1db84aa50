/**
 * Compares a recorder's files with the computed figures: FFmpeg sends films of known rate as multicast over the lab's
 * switch, and FFmpeg's segment muxer records them.
 */

import assert from 'node:assert/strict';
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import { check } from '../../server/src/check.ts';
import type { Device } from '../../server/src/site/model.ts';
import { unavailable } from '../availability.ts';
import { makeClip } from './clip.ts';
import { folderOf, planFrom } from './family.ts';
import { Lab } from './lab.ts';
import { Place } from './place.ts';
import { whyNoLab } from './probe.ts';
import { run, sleep } from './run.ts';

const PORT = 5004;
const FRAME_RATE = 20;
const SECONDS = 18;
/** The settings of each recording. */
const SEGMENT = 4;
/** Seconds between keyframes, by stream. */
const KEYFRAMES = { paddock: 2, stable: 3, glasshouse: 6 };

interface File {
  readonly bytes: number;
  readonly seconds: number;
}

describe('a real recording', function () {
  const place = new Place();
  const rates: Record<string, number> = {};
  const recorded = new Map<string, File[]>();
  let plan: Plan;

  before(async function () {
    const reason = (await whyNoLab()) ?? (await whyNoFfmpeg());
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
    await Promise.all(
      Object.entries(KEYFRAMES).map(async ([name, keyframeEvery]) => {
        rates[name] = await makeClip(filmOf(name), {
          seconds: SECONDS,
          frameRate: FRAME_RATE,
          keyframeEvery,
          videoRate: 1_500_000,
          sound: false,
        });
      }),
    );
    plan = planFrom({ 'recording.site.yaml': siteText(rates) });
    await record();
  });

  after(() => place.clear());

  function filmOf(name: string): string {
    return join(place.folder, `${name}.mkv`);
  }

  async function record(): Promise<void> {
    const lab = new Lab(plan);
    try {
      await lab.build();
      const host = (name: string): Device => plan.site.deviceByName.get(name) ?? assert.fail(`no ${name}`);
      const names = Object.keys(KEYFRAMES);
      const recorders = names.map((name, i) => {
        mkdirSync(join(place.folder, name));
        // Probing for long would write the first files in a burst.
        return lab.start(host('recorder'), 'ffmpeg', [
          '-loglevel',
          'error',
          '-analyzeduration',
          '1000000',
          '-probesize',
          '300000',
          '-timeout',
          '5000000',
          '-i',
          `udp://239.192.20.${31 + i}:${PORT}?localaddr=192.168.20.5&timeout=3000000`,
          '-c',
          'copy',
          '-f',
          'segment',
          '-segment_time',
          String(SEGMENT),
          '-segment_format',
          'mp4',
          '-reset_timestamps',
          '1',
          join(place.folder, name, '%03d.mp4'),
        ]);
      });
      await listening(lab, host('recorder'), names.length);
      const senders = names.map((name, i) =>
        lab.start(host(`${name}-cam`), 'ffmpeg', [
          '-loglevel',
          'error',
          '-re',
          '-i',
          filmOf(name),
          '-c',
          'copy',
          '-f',
          'mpegts',
          `udp://239.192.20.${31 + i}:${PORT}?localaddr=192.168.20.${31 + i}&pkt_size=1316`,
        ]),
      );
      for (const sender of senders) assert.equal(await sender.ended, 0, sender.output);
      // They end as nothing arrives any more.
      await Promise.all(recorders.map(({ ended }) => ended));
      for (const name of names) recorded.set(name, await filesIn(join(place.folder, name)));
    } finally {
      lab.end();
    }
  }

  for (const [name, keyframeEvery] of Object.entries(KEYFRAMES)) {
    // Containers are left out of the computation: an .mp4 file adds a few bytes to each picture and a header.
    it(`of ${name} takes the bytes that are computed, within 1.5 %`, () => {
      const files = recorded.get(name) ?? [];
      const bytes = files.reduce((total, file) => total + file.bytes, 0);
      const seconds = files.reduce((total, file) => total + file.seconds, 0);
      const perDay = (bytes / seconds) * 86_400;
      const computed = plan.storage.recordings.find(({ recording }) => recording.name === name)?.bytesPerDay ?? 0;
      const off = (perDay - computed) / computed;
      console.log(
        `      ${name}: ${(perDay / 1e9).toFixed(3)} GB a day by its files, computed ${(computed / 1e9).toFixed(3)}: ${(off * 100).toFixed(2)} %`,
      );
      assert.ok(seconds >= SECONDS - keyframeEvery - 1, `${seconds} s recorded`);
      assert.ok(Math.abs(off) <= 0.015, `${off}`);
    });

    it(`of ${name} with a keyframe every ${keyframeEvery} s is cut as the rule segment-keyframe says`, () => {
      const files = recorded.get(name) ?? [];
      // The first may have started between two keyframes, the last ended with the film.
      const lengths = files.slice(1, -1).map(({ seconds }) => seconds);
      console.log(`      ${name}: files of ${files.map(({ seconds }) => seconds.toFixed(1)).join(', ')} s`);
      const below = Math.floor(SEGMENT / keyframeEvery) * keyframeEvery;
      const allowed = SEGMENT % keyframeEvery === 0 ? [SEGMENT] : [below, below + keyframeEvery];
      assert.ok(lengths.length > 0, 'there are files between the first and the last');
      for (const seconds of lengths) {
        assert.ok(
          allowed.some((length) => length > 0 && Math.abs(seconds - length) < 1 / FRAME_RATE + 0.001),
          `${seconds} s is none of ${allowed.join(', ')} s`,
        );
      }
      const { diagnostics } = check(folderOf({ 'recording.site.yaml': siteText(rates) }));
      const told = diagnostics.filter(
        ({ rule, message }) => rule.id === 'segment-keyframe' && message.includes(`files of ${name} `),
      );
      assert.equal(told.length, SEGMENT % keyframeEvery === 0 ? 0 : 1);
    });
  }
});

/** Waits until so many programs have opened the port: a recorder that comes late misses the first keyframe. */
async function listening(lab: Lab, recorder: Device, programs: number): Promise<void> {
  const port = `:${PORT.toString(16).toUpperCase()} `;
  for (let tries = 0; tries < 900; tries++) {
    const sockets = lab.start(recorder, 'cat', ['/proc/net/udp']);
    await sockets.ended;
    if (sockets.output.split(port).length > programs) return sleep(300);
    await sleep(100);
  }
  assert.fail('the recorders do not listen');
}

async function whyNoFfmpeg(): Promise<string | undefined> {
  try {
    await run('which', ['ffmpeg', 'ffprobe']);
    return undefined;
  } catch {
    return 'FFmpeg is not installed';
  }
}

async function filesIn(folder: string): Promise<File[]> {
  return Promise.all(
    readdirSync(folder)
      .sort()
      .map(async (name) => {
        const path = join(folder, name);
        const pictures = await run('ffprobe', [
          '-loglevel',
          'error',
          '-select_streams',
          'v',
          '-count_packets',
          '-show_entries',
          'stream=nb_read_packets',
          '-of',
          'csv=p=0',
          path,
        ]);
        return { bytes: statSync(path).size, seconds: Number(pictures.trim()) / FRAME_RATE };
      }),
  );
}

function siteText(rates: Readonly<Record<string, number>>): string {
  const names = Object.entries(KEYFRAMES);
  const each = (line: (name: string, n: number, keyframeEvery: number) => string): string =>
    names.map(([name, every], i) => `  ${line(name, i, every)}`).join('\n');
  return `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, unregistered-multicast: drop, ports: {1-4: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
${each((name, n) => `${name}-cam: {kind: camera, address: 192.168.20.${31 + n}}`)}
cables:
  - {from: core/4, to: recorder}
${each((name, n) => `- {from: core/${n + 1}, to: ${name}-cam}`)}
streams:
${each(
  (name, n, every) =>
    `${name}: {source: ${name}-cam, transport: ts-udp, group: 239.192.20.${31 + n}, port: ${PORT}, ` +
    `video: {codec: h264, frame-rate: ${FRAME_RATE}, bitrate: ${((rates[name] ?? 0) / 1000).toFixed(3)} kb/s, keyframe-interval: ${every} s}, receivers: [recorder]}`,
)}
volumes:
  archive: {host: recorder, capacity: 1 TB}
recordings:
${each((name) => `${name}: {stream: ${name}, volume: archive, segment: ${SEGMENT} s, keep: 7 d, file: "${name}/%Y-%m-%d_%H-%M-%S%z.mp4"}`)}
`;
}
