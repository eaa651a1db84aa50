/** FFmpeg's arguments to send a small picture and a tone in the format that a stream of a site declares. */

import type { Plan } from '../../server/src/plan.ts';
import type { Stream } from '../../server/src/site/model.ts';
import { formatAddress } from '../../server/src/standards/ipv4.ts';

/**
 * Encoders of FFmpeg by the site's names of codecs, with a keyframe every half second and all that decoding takes in
 * it.
 */
const VIDEO: Readonly<Record<string, readonly string[]>> = {
  h264: ['libx264', '-preset', 'ultrafast', '-bsf:v', 'dump_extra=freq=keyframe'],
  h265: ['libx265', '-preset', 'ultrafast', '-x265-params', 'log-level=none:repeat-headers=1'],
  mpeg2: ['mpeg2video', '-bf', '0'],
  mjpeg: ['mjpeg', '-huffman', 'default', '-force_duplicated_matrix', '1', '-q:v', '5'],
  vp9: ['libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8'],
};

const AUDIO: Readonly<Record<string, readonly string[]>> = {
  aac: ['aac'],
  opus: ['libopus'],
  pcma: ['pcm_alaw'],
  pcmu: ['pcm_mulaw'],
  mp2: ['mp2'],
  l16: ['pcm_s16be'],
  g722: ['g722'],
};

export const PICTURE = '160x128';

/** Arguments of FFmpeg that sends so for `seconds`, from the address that it leaves by in the plan. */
export function senderArguments(plan: Plan, stream: Stream, seconds: number): string[] {
  const { video, audio } = plan.site.media(stream) ?? {};
  const rate = video?.frameRate ?? 25;
  const from = plan.network.delivery(stream)?.leaves?.address;
  const receiver = plan.site.deviceByName.get(stream.receivers[0] ?? '');
  const address =
    stream.group ?? (receiver === undefined ? undefined : plan.network.interfaces.of(receiver)[0]?.address);
  const to = (port: number, size: string): string =>
    `//${formatAddress(address ?? 0)}:${port}?ttl=${stream.ttl}&pkt_size=${size}${from === undefined ? '' : `&localaddr=${formatAddress(from)}`}`;
  const picture = ['-f', 'lavfi', '-i', `testsrc=size=${PICTURE}:rate=${rate}`];
  const tone = [
    '-f',
    'lavfi',
    '-i',
    `sine=sample_rate=${audio?.sampleRate ?? (audio?.codec?.startsWith('pcm') === true ? 8000 : 48_000)}`,
  ];
  const coded =
    video === undefined
      ? []
      : [
          '-map',
          '0:v',
          '-pix_fmt',
          video.codec === 'mjpeg' ? 'yuvj420p' : 'yuv420p',
          '-g',
          String(Math.ceil(rate / 2)),
          '-c:v',
          ...(VIDEO[video.codec ?? ''] ?? []),
        ];
  const index = video === undefined ? 0 : 1;
  const sound =
    audio === undefined
      ? []
      : ['-map', `${index}:a`, '-ac', String(audio.channels ?? 1), '-c:a', ...(AUDIO[audio.codec ?? ''] ?? [])];
  const { port = 0 } = stream;
  const inputs = [
    '-nostdin',
    '-loglevel',
    'error',
    '-re',
    ...(video === undefined ? [] : picture),
    ...(audio === undefined ? [] : ['-re', ...tone]),
  ];
  const time = ['-t', String(seconds)];
  switch (stream.transport) {
    case 'ts-udp':
      return [...inputs, ...coded, ...sound, ...time, '-f', 'mpegts', `udp:${to(port, '1316')}`];
    case 'ts-rtp':
      return [...inputs, ...coded, ...sound, ...time, '-f', 'rtp_mpegts', `rtp:${to(port, '1328')}`];
    default:
      return [
        ...inputs,
        ...(video === undefined
          ? []
          : [...coded, ...time, '-strict', 'experimental', '-f', 'rtp', `rtp:${to(port, '1400')}`]),
        ...(audio === undefined
          ? []
          : [...sound, ...time, '-f', 'rtp', `rtp:${to(video === undefined ? port : port + 2, '1400')}`]),
      ];
  }
}
