import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { namePattern } from '../../make/media/name-pattern.ts';
import { hostedRecordings } from '../../make/media/recording-consumer.ts';

export const filePattern: Rule = {
  id: 'file-pattern',
  severity: 'error',
  due: 'value',
  summary: "The pattern of a recording's file names does not work.",
  why: `Three programs must read a pattern alike: the recorder, which writes by strftime, the script that makes
tomorrow's folders, and the one that deletes old files by name. A pattern that leaves the volume writes where nobody looks and no space is
planned; one with a lone percent sign, a line end, or names that are longer than a file system takes is read differently
or not at all.`,
  source: 'strftime(3); NAME_MAX of Linux, 255 bytes (limits.h)',
  check({ plan }: RuleContext, report: Report): void {
    for (const { recording, volume } of hostedRecordings(plan)) {
      if (recording.file === undefined) continue;
      const names = namePattern(recording, volume);
      if ('message' in names && names.rule === 'file-pattern')
        report({ at: names.at, message: names.message, about: [recording.name] });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "../paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
# want 68-104 it leads out of the volume by \`..\`
  gate: {stream: gate, volume: archive, segment: 60 s, file: "gate/%Y/%m/%d/%H/%M/%S%z.mp4"}
# want 62-92 a folder for each minute cannot be made ahead
`,
    good: `
devices:
  recorder: {kind: server}
volumes:
  archive: {host: recorder, capacity: 8 TB}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
  gate: {stream: gate, volume: archive, segment: 60 s, file: "gate/%Y-%m-%d/%H-%M-%S%z.mp4"}
`,
  },
];
