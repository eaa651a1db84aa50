import { fixOf } from '../../site/edit.ts';
import { isTimeZone, repeatedHours } from '../../standards/time-zone.ts';
import { placeOf } from '../../site/item.ts';
import { filePatternOf } from '../../recordings/file-pattern.ts';
import { setFile, withOffset } from '../../recordings/complete-pattern.ts';
import type { Example, Report, Rule, Subject } from '../../lint/rule.ts';
import { DAY, MINUTE } from '../../standards/time-units.ts';

export const repeatedHour: Rule = {
  id: 'repeated-hour',
  severity: 'warning',
  summary: 'File names come twice when the clocks go back.',
  why: `When summer time ends, an hour of local time passes twice. Names that are the same in both come twice, and the
second file overwrites the first. Put the offset from UTC, \`%z\`, or the seconds since 1970, \`%s\`, into
the name.`,
  source: 'IANA time-zone database; strftime(3)',
  check({ site }: Subject, report: Report): void {
    const hour = site.timezone === undefined ? undefined : exampleOf(site.timezone);
    if (hour === undefined) return;
    for (const recording of site.recordings) {
      const { item, name } = recording;
      const names = filePatternOf(recording);
      if (names === undefined || names.tellsRepeatedHour || !['second', 'minute', 'hour'].includes(names.finest))
        continue;
      report({
        at: placeOf(item, ['file']),
        message:
          `Where the clocks of ${site.timezone ?? ''} go back, the hour is there twice, ${hour}, and so are the file ` +
          `names of ${name}: the second file overwrites the first. Add %z to the name.`,
        about: [name],
        fixes: () => {
          const pattern = withOffset(names.pattern);
          if (pattern === undefined) return [];
          return fixOf('Add the offset from UTC, %z, to the name', setFile(recording, pattern));
        },
      });
    }
  },
};

/** One year stands for all, so that the result is the same every day: 400 days from here. */
const FROM = Date.UTC(2026, 0, 1);
const SPAN = 400 * DAY;

const known = new Map<string, string | undefined>();

/** Whether the clocks of the zone go back some day. */
export function hasRepeatedHour(zone: string | undefined): boolean {
  return zone !== undefined && exampleOf(zone) !== undefined;
}

/** `from 01:00 to 02:00, as on 25 October 2026`; `undefined` where the clocks never go back. */
function exampleOf(zone: string): string | undefined {
  // What is no zone is without end, and not kept.
  if (!isTimeZone(zone)) return undefined;
  if (known.has(zone)) return known.get(zone);
  const [change] = repeatedHours(zone, FROM, FROM + SPAN);
  let example: string | undefined;
  if (change !== undefined) {
    const local = (offset: number): string => new Date(change.instant + offset * MINUTE).toISOString();
    const [from, to] = [local(change.after), local(change.before)];
    const date = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(Date.parse(from));
    example = `from ${from.slice(11, 16)} to ${to.slice(11, 16)}, as on ${date}`;
  }
  known.set(zone, example);
  return example;
}

export const examples: readonly Example[] = [
  {
    bad: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S.mp4"}
#                                                                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ from 01:00 to 02:00, as on 25 October 2026
`,
    fixed: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
`,
  },
];
