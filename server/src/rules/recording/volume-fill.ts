import { type Edit, type Fix, fixOf, nodeAt, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { retentionBoundsOf } from '../../site/retention.ts';
import type { RecordingFigures, VolumeFigures } from '../../storage/storage.ts';
import { durationLike } from '../../text/quantity.ts';
import { bytes, duration, few, list, percentOver, threshold, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { DAY, HOUR } from '../../standards/time-units.ts';

/** All of a volume, in ten-thousandths. */
const WHOLE = 10_000;
/** The most recordings, the largest first, that are named. */
const SHOWN = 3;

export const volumeFill: Rule = {
  id: 'volume-fill',
  severity: 'error',
  summary: 'Recordings take more of a volume than policy allows.',
  why: `What is kept is bit rate times time, and a full volume loses whatever would be written next. The sum is what all
recordings take once each is as old as its \`keep\`, against the capacity less
redundancy and reserve. Keep them for less time, lower bit rates, or take a larger volume.`,
  source: 'Bit rate × time / 8. The limit of 90 % is common practice, no source.',
  check({ site, plan }: RuleContext, report: Report): void {
    const { warn, limit } = site.policies.volumeFill;
    for (const figures of plan.storage.volumes) {
      const { volume, usableBytes, bytesKept, recordings } = figures;
      if (volume.reserve >= WHOLE) {
        report({
          at: placeOf(volume.item, ['reserve']),
          message: `A reserve of ${threshold(volume.reserve)} leaves nothing of ${asName(volume.name)} for footage. Lower it.`,
          acceptAt: [volume.name],
        });
      }
      if (usableBytes === undefined || usableBytes === 0) continue;
      const over = (bound: number): boolean => bytesKept > (usableBytes / 10_000) * bound;
      if (!over(Math.min(warn ?? limit, limit))) continue;
      const greatest = recordings
        .filter(({ bytesKept: own }) => own !== undefined)
        .sort((a, b) => (b.bytesKept ?? 0) - (a.bytesKept ?? 0));
      const named = greatest.map(({ recording, bytesKept: own }) => `${recording.name} ${bytes(own ?? 0)}`);
      const isOver = over(limit);
      const bound = isOver
        ? `more than the limit of ${threshold(limit)}`
        : `more than the ${threshold(warn ?? limit)} that policy warns at`;
      report({
        at: placeOf(volume.item, ['capacity']),
        severity: isOver ? 'error' : 'warning',
        message:
          `${asName(volume.name)} must hold ${bytes(bytesKept)}, ` +
          `${percentOver(bytesKept, usableBytes, isOver ? limit : (warn ?? limit))} of its usable ` +
          `${bytes(usableBytes)} and ${bound}: ${few(named, SHOWN)}. ` +
          (isSlip(figures)
            ? 'Keep them for less time, or take a larger volume; are both units right?'
            : 'Keep them for less time, or take a larger volume.'),
        acceptAt: [volume.name],
        effects: [figures],
        entails: [figures],
        related: greatest.slice(0, SHOWN).map(({ recording, bytesKept: own }) => ({
          at: placeOf(recording.item, ['keep']),
          message: `${asName(recording.name)} takes ${bytes(own ?? 0)} in ${duration(recording.keep ?? 0)}`,
        })),
        fixes: () =>
          isSlip(figures) ? [] : shortened(site, figures, (usableBytes / 10_000) * Math.min(warn ?? limit, limit)),
      });
    }
  },
};

/** A volume so many times too small looks like a mistyped unit or digits. Common practice, no source. */
const SLIP = 20;

function isSlip({ usableBytes = 0, bytesKept }: VolumeFigures): boolean {
  return bytesKept > SLIP * usableBytes;
}

/** Shortens the `keep` of all recordings by the same factor, but none below what policy asks for. */
function shortened(site: Site, { recordings, volume }: VolumeFigures, allowed: number): Fix[] {
  const counted = recordings.filter(({ bytesKept }) => bytesKept !== undefined && bytesKept > 0);
  const keepOf = ({ recording }: RecordingFigures): number => recording.keep ?? 0;
  const leastOf = (figures: RecordingFigures): number => {
    const { least } = retentionBoundsOf(site.policies.retention, figures.recording.name);
    return Math.min(keepOf(figures), least?.time ?? 0);
  };
  const taken = (figures: RecordingFigures, milliseconds: number): number => (figures.bytesPerDay * milliseconds) / DAY;
  const sum = (of: (figures: RecordingFigures) => number): number =>
    counted.reduce((total, figures) => total + of(figures), 0);

  // Recordings at the policy's minimum stay there, and the others make room for them.
  const held = new Set<RecordingFigures>();
  let part = 0;
  for (let found = true; found;) {
    const room = allowed - sum((figures) => (held.has(figures) ? taken(figures, leastOf(figures)) : 0));
    const rest = sum((figures) => (held.has(figures) ? 0 : taken(figures, keepOf(figures))));
    part = rest === 0 ? 0 : room / rest;
    found = false;
    for (const figures of counted) {
      if (held.has(figures) || keepOf(figures) * part >= leastOf(figures)) continue;
      held.add(figures);
      found = true;
    }
  }
  if (sum((figures) => (held.has(figures) ? taken(figures, leastOf(figures)) : 0)) > allowed) return [];
  const edits: Edit[] = [];
  const kept: string[] = [];
  for (const figures of counted) {
    const { item, name } = figures.recording;
    const milliseconds = held.has(figures)
      ? leastOf(figures)
      : Math.max(leastOf(figures), wholeBelow(keepOf(figures) * part));
    if (milliseconds <= 0) return [];
    if (milliseconds === keepOf(figures)) continue;
    const written = nodeAt(item, ['keep']);
    const text = durationLike(milliseconds, written?.kind === 'scalar' ? written.value : undefined);
    edits.push(setValue(item, ['keep'], text));
    kept.push(`${asName(name)} for ${text}`);
  }
  return fixOf(`Keep ${list(kept)}, which fits on ${asName(volume.name)}`, ...edits);
}

/** Whole days, or whole hours of less than two days. */
function wholeBelow(milliseconds: number): number {
  const unit = milliseconds >= 2 * DAY ? DAY : HOUR;
  return Math.floor(milliseconds / unit) * unit;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 2 TB, reserve: 5 %}
#                                     ^^^^ archive must hold 2.59 TB, 136 % of its usable 1.9 TB and more than the limit of 90 %: paddock 2.59 TB
recordings:
  paddock: {stream: paddock, volume: archive, keep: 30 d}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 2 TB, reserve: 5 %}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 19 d}
`,
  },
  {
    bad: `
volumes:
  archive: {host: recorder, capacity: 2 TB, reserve: 100 %}
#                                                    ^^^^^ A reserve of 100 % leaves nothing of archive for footage
`,
    good: `
volumes:
  archive: {host: recorder, capacity: 2 TB, reserve: 99 %}
`,
  },
];
