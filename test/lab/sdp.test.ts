/**
 * Real players on the session descriptions that are made: one FFmpeg sends the stream, another plays the description.
 */

import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, it } from 'mocha';
import { sdp } from '../../server/src/make/announcements/sdp.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Media } from '../../server/src/site/model.ts';
import { unavailable } from '../availability.ts';
import { CODECS } from '../make/announcements/every-codec.ts';
import { planOfTexts, sampleTexts } from '../make/made.ts';
import { whyNoNamespace } from '../make/namespace.ts';
import { planFrom } from './family.ts';
import { PICTURE, senderArguments } from './media-sender.ts';
import { TwoHosts } from './two-hosts.ts';

/** FFmpeg's names of the codecs of a site. */
const NAMES: Readonly<Record<string, string>> = {
  h264: 'h264',
  h265: 'hevc',
  mpeg2: 'mpeg2video',
  mjpeg: 'mjpeg',
  vp9: 'vp9',
  aac: 'aac',
  opus: 'opus',
  pcma: 'pcm_alaw',
  pcmu: 'pcm_mulaw',
  mp2: 'mp2',
  l16: 'pcm_s16be',
  g722: 'adpcm_g722',
};

/** Encoders take time to start, and a player up to five seconds to probe its input, longer on a busy machine. */
const SECONDS = 30;

/** A player that starts with its sender may not recognize the first packets; the next one does. */
const TRIES = 4;

describe('FFmpeg plays what is described', function () {
  const hosts = new TwoHosts();

  before(async function () {
    const reason = whyNoNamespace('ffmpeg', 'ethtool');
    if (reason !== undefined) unavailable(this, reason);
    // The office of Harrow Lane has an address in another network.
    await hosts.build(['192.168.20.5', '192.168.20.9', '192.168.10.5'], ['192.168.10.120']);
  });

  after(() => hosts.end());

  const plans: Readonly<Record<string, Plan>> = {
    'Harrow Lane': planOfTexts(sampleTexts('harrow-lane')),
    'every codec': planFrom({ 'codecs.site.yaml': CODECS }),
  };
  for (const [title, plan] of Object.entries(plans)) {
    const made = sdp.make(plan);

    it(`${title}: every stream in datagrams has a description`, () => {
      assert.deepEqual(made.refused, []);
      assert.ok(made.files.length >= 10);
    });

    for (const { path, text } of made.files) {
      it(`${title}: ${path}`, async () => {
        const stream = plan.site.streamByName.get(path.replace('.sdp', '')) ?? assert.fail();
        const file = join(hosts.place.folder, path);
        writeFileSync(file, text);
        const media = plan.site.media(stream) ?? assert.fail();
        for (let tries = 1; ; tries++) {
          const sender = hosts.send('ffmpeg', ...senderArguments(plan, stream, SECONDS));
          const player = hosts.receive(
            'ffmpeg',
            ...`-nostdin -hide_banner -protocol_whitelist file,udp,rtp -i ${file}`.split(' '),
            ...'-flush_packets 1 -f framecrc -'.split(' '),
          );
          const played = await Promise.race([
            player.comesTo((output) => isPlayed(output, media)),
            sender.ended.then(() => false),
          ]);
          sender.kill();
          player.kill();
          await Promise.all([sender.ended, player.ended]);
          if (played) return assertDescribed(player.output, media);
          if (tries === TRIES) assert.fail(`${player.output}\nsender: ${sender.output}`);
        }
      });
    }
  }
});

/** Three pictures and three pieces of sound, of the media that the stream has. */
function isPlayed(output: string, { video, audio }: Media): boolean {
  const tracks = [video, audio].filter((each) => each !== undefined);
  return tracks.every((_, track) => output.split('\n').filter((line) => line.startsWith(`${track}, `)).length > 3);
}

/** Whether the player has found the described media. */
function assertDescribed(output: string, { video, audio }: Media): void {
  if (video !== undefined) assert.match(output, new RegExp(`Video: ${NAMES[video.codec ?? '']}\\b.*\\b${PICTURE}\\b`));
  if (audio === undefined) return;
  const rate = audio.codec === 'opus' ? 48_000 : (audio.sampleRate ?? 8000);
  const channels = audio.channels === 2 ? 'stereo' : '(?:mono|1 channels)';
  assert.match(output, new RegExp(`Audio: ${NAMES[audio.codec ?? '']}\\b.*, ${rate} Hz, ${channels}`));
}
