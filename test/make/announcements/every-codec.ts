// A stream of every codec.

/** Each codec that FFmpeg plays out of RTP once, with its clock, number of channels and transport. */
export const CODECS = `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1-2: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
  kitchen-screen: {kind: display, address: 192.168.20.61}
cables:
  - {from: core/1, to: recorder}
  - {from: core/2, to: kitchen-screen}
streams:
${[
  'h264: {transport: rtp, port: 5004, video: {codec: h264, frame-rate: 20, bitrate: 2 Mb/s}, audio: {codec: pcma, bitrate: 64 kb/s}}',
  'h265: {transport: rtp, port: 5004, video: {codec: h265, frame-rate: 10, bitrate: 2 Mb/s}, audio: {codec: pcmu, bitrate: 64 kb/s, sample-rate: 8 kHz, channels: 1}}',
  'mpeg2: {transport: rtp, port: 5004, video: {codec: mpeg2, frame-rate: 25, bitrate: 2 Mb/s}, audio: {codec: mp2, bitrate: 192 kb/s, sample-rate: 48 kHz, channels: 2}}',
  'mjpeg: {transport: rtp, port: 5004, video: {codec: mjpeg, frame-rate: 10, bitrate: 2 Mb/s}, audio: {codec: opus, bitrate: 64 kb/s, channels: 2}}',
  'vp9: {transport: rtp, port: 5004, video: {codec: vp9, frame-rate: 10, bitrate: 1 Mb/s}, audio: {codec: g722, bitrate: 64 kb/s, sample-rate: 16 kHz}}',
  'aac-mono: {transport: rtp, port: 5004, audio: {codec: aac, bitrate: 64 kb/s, sample-rate: 16 kHz, channels: 1}}',
  'aac-stereo: {transport: rtp, port: 5004, audio: {codec: aac, bitrate: 128 kb/s, sample-rate: 44.1 kHz, channels: 2}}',
  'l16: {transport: rtp, port: 5004, audio: {codec: l16, bitrate: 1536 kb/s, sample-rate: 48 kHz, channels: 2}}',
  'l16-static: {transport: rtp, port: 5004, audio: {codec: l16, bitrate: 705.6 kb/s, sample-rate: 44.1 kHz, channels: 1}}',
  'wide-pcma: {transport: rtp, port: 5004, audio: {codec: pcma, bitrate: 128 kb/s, sample-rate: 16 kHz, channels: 1}}',
  'odd: {transport: rtp, port: 5005, video: {codec: h264, frame-rate: 20, bitrate: 2 Mb/s}}',
  'plain: {transport: ts-udp, port: 5004, video: {codec: h264, frame-rate: 25, bitrate: 2 Mb/s}, audio: {codec: mp2, bitrate: 192 kb/s, sample-rate: 48 kHz, channels: 2}}',
]
  .map(
    (line, index) =>
      `  ${line.replace('{', `{source: recorder, receivers: [kitchen-screen], group: 239.192.1.${index + 1}, `)}\n`,
  )
  .join('')}`;

/** Those that it does not, version 5.1 at least. */
export const MORE_CODECS = CODECS.replace(
  /streams:[^]*/,
  `streams:
  av1: {source: recorder, transport: rtp, group: 239.192.2.1, port: 5004, video: {codec: av1}, audio: {codec: ac3, sample-rate: 48 kHz, channels: 6}}
`,
);
