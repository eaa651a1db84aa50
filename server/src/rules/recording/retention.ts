import { type Fix, addEntry, fixOf, nodeAt, setValue } from '../../site/edit.ts';
import { type Place, namePlace, placeOf } from '../../site/item.ts';
import type { Recording } from '../../site/model.ts';
import { type Bound, type RetentionBounds, retentionBounds } from '../../site/retention.ts';
import type { VolumeFigures } from '../../storage/storage.ts';
import { durationLike } from '../../text/quantity.ts';
import { days, duration, asName } from '../../text/words.ts';
import type { Example, Finding, Related, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { DAY } from '../../standards/time-units.ts';

export const retention: Rule = {
  id: 'retention',
  severity: 'error',
  summary: 'A recording is kept for less or more time than policy requires.',
  why: `Recordings that are deleted too soon are missing when they are needed; recordings that are kept too long may break
privacy law where people are in the picture. Set \`keep\` to what policy asks. Where the volume is full before that, it
is a warning: lower bit rates, take a larger volume, or agree on less. What may be recorded, and for how long it may be
kept, is for local law to say.`,
  source: 'The policy of the site.',
  check({ site, plan }: RuleContext, report: Report): void {
    const reported = new Set<string>();
    for (const [name, { least, most }] of retentionBounds(site.policies.retention)) {
      if (least !== undefined && most !== undefined && least.time > most.time) {
        // Reported once for the two policies, not for each recording.
        const both = `${least.policy.keyPath.join()} ${most.policy.keyPath.join()}`;
        if (!reported.has(both)) report(contradiction(name, least, most));
        reported.add(both);
        continue;
      }
      const recording = site.recordingByName.get(name);
      if (recording === undefined) continue;
      const volume = plan.storage.of(recording).volume;
      const figures = volume === undefined ? undefined : plan.storage.on(volume);
      const finding = findingOf({ least, most }, recording, figures);
      if (finding !== undefined) report(finding);
    }
  },
};

function placeOfBound({ policy }: Bound, key: string): Place {
  return placeOf(policy.item, [...policy.keyPath, key]);
}

function contradiction(name: string, least: Bound, most: Bound): Finding {
  return {
    at: placeOfBound(most, 'at-most'),
    message:
      `${asName(name)} may be kept for ${duration(most.time)} at most and must be for ${duration(least.time)} at least, so ` +
      'no `keep` meets both. Correct one of them.',
    acceptAt: [name],
    related: [{ at: placeOfBound(least, 'at-least'), message: `at least ${duration(least.time)}` }],
  };
}

function findingOf(
  { least, most }: RetentionBounds,
  recording: Recording,
  volume: VolumeFigures | undefined,
): Finding | undefined {
  const { item, name, keep } = recording;
  const [atLeast, atMost] = [least?.time, most?.time];
  const asks = (key: 'at-least' | 'at-most'): Related[] => {
    const bound = key === 'at-least' ? least : most;
    return bound === undefined ? [] : [{ at: placeOfBound(bound, key), message: 'what policy asks' }];
  };
  const set = (milliseconds: number): Fix[] => {
    const written = nodeAt(item, ['keep']);
    const text = durationLike(milliseconds, written?.kind === 'scalar' ? written.value : undefined);
    const edit = keep === undefined ? addEntry(item, [], 'keep', text) : setValue(item, ['keep'], text);
    return fixOf(`Keep ${asName(name)} for ${text}`, edit);
  };
  if (keep === undefined) {
    if (nodeAt(item, ['keep']) !== undefined || (atLeast === undefined && atMost === undefined)) return undefined;
    const asked =
      atLeast === undefined ? `allows ${duration(atMost ?? 0)} at most` : `asks for ${duration(atLeast)} at least`;
    return {
      at: namePlace(item),
      message: `${asName(name)} has no \`keep\`, and policy ${asked}. Say how long it is kept.`,
      acceptAt: [name],
      related: asks(atLeast === undefined ? 'at-most' : 'at-least'),
      fixes: () => set(atLeast ?? atMost ?? 0),
    };
  }
  const at = placeOf(item, ['keep']);
  const kept = duration(keep);
  if (atLeast !== undefined && keep < atLeast) {
    return {
      at,
      message: `${asName(name)} is kept for ${kept}, and policy asks for ${duration(atLeast)} at least. Keep it longer.`,
      acceptAt: [name],
      related: asks('at-least'),
      fixes: () => set(atLeast),
    };
  }
  if (atMost !== undefined && keep > atMost) {
    return {
      at,
      message: `${asName(name)} is kept for ${kept}, and policy allows ${duration(atMost)} at most. Delete it sooner.`,
      acceptAt: [name],
      related: asks('at-most'),
      fixes: () => set(atMost),
    };
  }
  const full = volume?.daysUntilFullKept;
  if (volume === undefined || full === undefined || atLeast === undefined || full * DAY >= atLeast) return undefined;
  return {
    at,
    severity: 'warning',
    message:
      `${asName(name)} is to be kept for ${kept}, and ${asName(volume.volume.name)} is full after ${days(full)}, before ` +
      `the ${duration(atLeast)} that policy asks for. Lower bit rates, or take a larger volume.`,
    acceptAt: [name, volume.volume.name],
    // A consequence of a volume that is too small, which is reported.
    effects: [volume],
    related: [
      { at: placeOf(volume.volume.item, ['capacity']), message: `the capacity of ${asName(volume.volume.name)}` },
      ...asks('at-least'),
    ],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 7 d}
#                                                   ^^^ paddock is kept for 7 d, and policy asks for 14 d at least
policies:
  retention:
    - {recordings: [paddock], at-least: 14 d, at-most: 30 d}
`,
    fixed: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
policies:
  retention:
    - {recordings: [paddock], at-least: 14 d, at-most: 30 d}
`,
  },
  {
    bad: `
recordings:
  yard: {stream: yard, volume: archive}
# want 3-7 yard has no \`keep\`, and policy allows 30 d at most
policies:
  retention:
    - {recordings: [yard], at-most: 30 d}
`,
    fixed: `
recordings:
  yard: {stream: yard, volume: archive, keep: 30 d}
policies:
  retention:
    - {recordings: [yard], at-most: 30 d}
`,
  },
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
policies:
  retention:
    - {recordings: [paddock], at-least: 30 d}
    - {recordings: [paddock], at-most: 14 d}
#                                      ^^^^ paddock may be kept for 14 d at most and must be for 30 d at least, so no
`,
    good: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
policies:
  retention:
    - {recordings: [paddock], at-least: 14 d}
    - {recordings: [paddock], at-most: 14 d}
`,
  },
];
