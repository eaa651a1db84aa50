import { fixOf } from '../../site/edit.ts';
import { type Cycle, type TimeUnit, distinguishesRepeatedHour } from '../../standards/strftime.ts';
import { placeOf } from '../../site/item.ts';
import type { Recording, Site } from '../../site/model.ts';
import { duration, asName } from '../../text/words.ts';
import { completed, setFile, withOffset } from '../../recordings/complete-pattern.ts';
import { type FilePattern, filePatternOf, pathBy } from '../../recordings/file-pattern.ts';
import { repeatedHourOf } from '../../recordings/repeated-hour.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { DAY, HOUR, MINUTE } from '../../standards/time-units.ts';

/** Milliseconds; the shortest months and years, after which names repeat first. */
const LENGTH: Readonly<Record<TimeUnit | Cycle, number>> = {
  'second': 1000,
  'minute': MINUTE,
  'hour': HOUR,
  'half day': 12 * HOUR,
  'day': DAY,
  'week': 7 * DAY,
  'month': 28 * DAY,
  'year': 365 * DAY,
};

export const fileNameCollision: Rule = {
  id: 'file-name-collision',
  severity: 'error',
  showAfter: 'item',
  summary: 'Two recorded files get one name, and the second overwrites the first.',
  why: `A file is named after the time it starts. Names must differ from one file to the next, so they hold the second; from
day to day, for as long as files are kept; and from those of other recordings on the volume. That also counts after an
interruption: a file that is begun again within the same minute overwrites the first.`,
  source: "strftime(3); FFmpeg's segment muxer, with which two files of one second were seen to get one name",
  check({ site }: RuleContext, report: Report): void {
    const first = new Map<string, Recording>();
    for (const recording of site.recordings) {
      const { item, name, volume } = recording;
      const names = filePatternOf(recording);
      if (names === undefined) continue;
      const problem = withItself(recording, names, lengthOf(site, recording));
      if (problem !== undefined) {
        report({
          at: placeOf(item, ['file']),
          ...problem,
          acceptAt: [name],
          // A consequence of a pattern that does not work at all, which is reported.
          effects: [item],
          fixes: () => {
            const whole = completed(names.pattern);
            // In the repeated hour a name to the second occurs twice.
            const isUnique =
              distinguishesRepeatedHour(whole) ||
              site.timezone === undefined ||
              repeatedHourOf(site.timezone) === undefined;
            const pattern = isUnique ? whole : (withOffset(whole) ?? whole);
            return fixOf(`Name files ${pattern}`, setFile(recording, pattern));
          },
        });
      }
      if (volume === undefined) continue;
      const path = `${volume}:${names.path}`;
      const other = first.get(path);
      if (other === undefined) {
        first.set(path, recording);
        continue;
      }
      const pattern = `${name}/${names.pattern.replace(/^(\.?\/)+/, '')}`;
      report({
        at: placeOf(item, ['file']),
        message: `${asName(name)} and ${asName(other.name)} write files of the same name to ${asName(volume)}. Give each its own folder.`,
        acceptAt: [name, other.name],
        // A consequence of two recordings of the same stream, which are reported.
        effects: [recording],
        related: [{ at: placeOf(other.item, ['file']), message: `the files of ${asName(other.name)}` }],
        fixes: () => {
          const wanted = pathBy(pattern);
          const taken = site.recordings.some(
            (another) => another.volume === volume && filePatternOf(another)?.path === wanted,
          );
          return taken ? [] : fixOf(`Name files ${pattern}`, setFile(recording, pattern));
        },
      });
    }
  },
};

/** The length of its files: to the first keyframe at or after the segment time. */
function lengthOf(site: Site, { stream: name, segment }: Recording): number | undefined {
  const stream = name === undefined ? undefined : site.streamByName.get(name);
  const interval = stream === undefined ? undefined : site.media(stream)?.video?.keyframeInterval;
  if (segment === undefined || interval === undefined || interval === 0) return segment;
  return Math.ceil(segment / interval) * interval;
}

/** Whether a later file of a recording gets the name of an earlier one. */
function withItself(
  { name, keep }: Recording,
  { finest, cycle }: FilePattern,
  segment: number | undefined,
): Pick<Finding, 'message' | 'severity'> | undefined {
  if (segment === undefined || segment === 0) return undefined;
  if (finest === 'none') {
    return {
      message: `All files of ${asName(name)} get the same name, and each overwrites the one before. Put the time into it.`,
    };
  }
  const unit = LENGTH[finest];
  if (segment < unit) {
    return {
      message:
        `Files of ${asName(name)} last ${duration(segment)}, and their names hold the ${finest} at best: each overwrites the ` +
        'one before. Add %S.',
    };
  }
  if (segment === unit && finest !== 'second') {
    return {
      severity: 'warning',
      message:
        `Files of ${asName(name)} last ${duration(segment)}, and their names hold the ${finest} at best: one that is begun a ` +
        'little early, or again after an interruption, overwrites the one before. Add %S.',
    };
  }
  if (cycle === undefined || (keep !== undefined && keep <= LENGTH[cycle])) return undefined;
  const kept = keep === undefined ? 'it has no `keep`, so it may still be there' : `it is kept for ${duration(keep)}`;
  return {
    severity: keep === undefined ? 'warning' : 'error',
    message:
      `The names of ${asName(name)} repeat every ${cycle}, and ${kept}: new files overwrite old ones. ` +
      (LACKS[cycle] ?? 'Put the whole date into them.'),
  };
}

const LACKS: Readonly<Partial<Record<Cycle, string>>> = {
  'minute': 'Add %M.',
  'hour': 'Add %H.',
  'half day': 'Use %H, which counts to 24.',
};

export const examples: readonly Example[] = [
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 30 s, file: "paddock/%Y-%m-%d_%H-%M%z.mp4"}
# want 68-98 Files of paddock last 30 s, and their names hold the minute at best
`,
    fixed: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 30 s, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
`,
  },
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%H-%M-%S%z.mp4"}
# want 80-104 The names of paddock repeat every day, and it is kept for 14 d
`,
    fixed: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
`,
  },
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%F_%I-%M-%S%z.mp4"}
# want 80-107 The names of paddock repeat every half day, and it is kept for 14 d: new files overwrite old ones. Use %H, which
`,
    fixed: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 14 d, file: "paddock/%F_%H-%M-%S%z.mp4"}
`,
  },
  {
    bad: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 30 s, file: paddock/%Y-%m-%d_%H-%M.mp4}
# want 68-94 and their names hold the minute at best
`,
    fixed: `
site: {timezone: Europe/London}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 30 s, file: paddock/%Y-%m-%d_%H-%M-%S%z.mp4}
`,
  },
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: yard, volume: archive, segment: 60 s, file: "%F_%H-%M-%S%z.mp4"}
# want 62-81 yard and paddock write files of the same name to
`,
    fixed: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "%Y-%m-%d_%H-%M-%S%z.mp4"}
  yard: {stream: yard, volume: archive, segment: 60 s, file: "yard/%F_%H-%M-%S%z.mp4"}
`,
  },
];
