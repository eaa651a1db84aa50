import { fixOf } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { filePatternOf } from '../../recordings/file-pattern.ts';
import { setFile, withOffset } from '../../recordings/complete-pattern.ts';
import { repeatedHourOf } from '../../recordings/repeated-hour.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const repeatedHour: Rule = {
  id: 'repeated-hour',
  severity: 'warning',
  summary: 'File names repeat when the clocks go back.',
  why: `When summer time ends, an hour of local time comes twice, and so do file names that are the same in both: the
second file overwrites the first. Put the offset from UTC, \`%z\`, or the seconds since 1970, \`%s\`, into
the name.`,
  source: 'IANA time-zone database; strftime(3)',
  check({ site }: RuleContext, report: Report): void {
    const hour = site.timezone === undefined ? undefined : repeatedHourOf(site.timezone);
    if (hour === undefined) return;
    for (const recording of site.recordings) {
      const { item, name } = recording;
      const names = filePatternOf(recording);
      if (names === undefined || names.tellsRepeatedHour || !['second', 'minute', 'hour'].includes(names.finest))
        continue;
      report({
        at: placeOf(item, ['file']),
        message:
          `When the clocks of ${site.timezone ?? ''} go back, the hour ${hour} comes twice, and so do the file ` +
          `names of ${asName(name)}: the second file overwrites the first. Add %z to the name.`,
        acceptAt: [name],
        fixes: () => {
          const pattern = withOffset(names.pattern);
          if (pattern === undefined) return [];
          return fixOf('Add the offset from UTC, %z, to the name', setFile(recording, pattern));
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S.mp4"}
#                                                                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ from 01:00 to 02:00, as on 2026-10-25, comes twice
`,
    fixed: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
`,
  },
];
