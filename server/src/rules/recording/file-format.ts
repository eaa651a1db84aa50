import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { unfitFormat } from '../../make/media/recording-consumer.ts';

export const fileFormat: Rule = {
  id: 'file-format',
  severity: 'error',
  showAfter: 'value',
  summary: 'The files of a recording have a format that cannot hold the stream.',
  why: `The suffix of \`file\` sets the format. MP4 cannot hold G.711 or G.722, and a transport stream has no type for MJPEG
or VP9: the recorder leaves the sound out, or writes nothing at all. AVI and most others have their index at the end, so that a power cut costs the
whole file. Matroska (.mkv) takes every codec and stays readable up to the cut.`,
  source:
    'ISO/IEC 14496-12 and its registered codes, ISO/IEC 13818-1 table 2-34, from memory; FFmpeg 5.1.9, each codec in ' +
    'each format tried',
  check({ plan }: RuleContext, report: Report): void {
    for (const recording of plan.site.recordings) {
      const stream = plan.site.streamByName.get(recording.stream ?? '');
      const unfit = stream === undefined ? undefined : unfitFormat(plan, recording, stream);
      if (unfit !== undefined) report({ at: unfit.at, message: unfit.message, acceptAt: [recording.name] });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, video: {codec: h264}, audio: {codec: pcma}}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
# want 68-101 paddock has pcma, which an .mp4 file does not take
  again: {stream: paddock, volume: archive, segment: 60 s, file: "again/%Y-%m-%d_%H-%M-%S%z.avi"}
# want 66-97 The files of ‘again’ end in .avi
`,
    good: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, video: {codec: h264}, audio: {codec: pcma}}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mkv"}
`,
  },
];
