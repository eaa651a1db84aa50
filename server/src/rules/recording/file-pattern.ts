import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type NamePattern, namePattern } from '../../make/media/name-pattern.ts';
import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Recording, Volume } from '../../site/model.ts';
import { asName } from '../../text/words.ts';
import { hostedRecordings } from '../../make/media/recording-consumer.ts';

export const filePattern: Rule = {
  id: 'file-pattern',
  severity: 'error',
  showAfter: 'value',
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
        report({ at: names.at, message: names.message, acceptAt: [recording.name], entails: [recording.item] });
      else if (!('message' in names)) absolute(recording, volume, names, report);
    }
  },
};

/** Reports an absolute path where one below the volume is meant: FFmpeg would still write it below the volume. */
function absolute(
  { item, name, file = '' }: Recording,
  { name: volume }: Volume,
  names: NamePattern,
  report: Report,
): void {
  if (!file.startsWith('/')) return;
  const [first] = names.volume.split('/').filter((part) => part !== '');
  const [own] = names.pattern.split('/');
  if (first === undefined || own !== first) return;
  const below = `${names.volume}/`;
  report({
    at: placeOf(item, ['file']),
    severity: 'warning',
    message:
      `Names of files are below the volume, so those of ${asName(name)} would be in ${names.volume}/${names.fixed}, where ` +
      `nobody looks. Leave the path of ${asName(volume)} out.`,
    acceptAt: [name, volume],
    fixes: () =>
      file.startsWith(below)
        ? fixOf(
            `Name files ${file.slice(below.length)}`,
            setValue(item, ['file'], scalarText(file.slice(below.length), true)),
          )
        : [],
  });
}

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
  {
    bad: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: recorder}
volumes:
  archive: {host: recorder, capacity: 8 TB, path: /srv/archive}
recordings:
  paddock: {stream: paddock, volume: archive, file: "/srv/archive/paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
#                                                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ would be in /srv/archive/srv/archive/paddock
`,
    fixed: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: recorder}
volumes:
  archive: {host: recorder, capacity: 8 TB, path: /srv/archive}
recordings:
  paddock: {stream: paddock, volume: archive, file: paddock/%Y-%m-%d_%H-%M-%S%z.mp4}
`,
  },
];
