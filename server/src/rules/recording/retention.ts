import { addEntry, nodeAt, setValue } from '../../site/edit.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Recording, Retention } from '../../site/model.ts';
import type { VolumeFigures } from '../../storage/storage.ts';
import { durationLike } from '../../text/quantity.ts';
import { days, duration } from '../../text/words.ts';
import type { Finding, Fix, Rule, Subject } from '../rule.ts';

const MS_A_DAY = 86_400_000;

export const retention: Rule = {
  id: 'retention',
  severity: 'error',
  summary: 'A recording is kept for less or more time than policy asks.',
  why: `Recordings that are gone too soon are missing when they are needed; recordings that are kept too long may break
privacy law where people are in the picture. Set \`keep\` to what policy asks. Where the volume is full before that, it
is a warning: lower bit rates, take a larger volume, or agree on less. What may be recorded, and for how long it may be
kept, is for local law to say.`,
  source: 'The policy of the site.',
  examples: [
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
  ],
  *check({ site, plan }: Subject): Iterable<Finding> {
    for (const policy of site.policies.retention) {
      for (const name of policy.recordings) {
        const recording = site.recordingByName.get(name);
        if (recording === undefined) continue;
        const volume = plan.storage.recordings[recording.index]?.volume;
        const finding = findingOf(
          policy,
          recording,
          volume === undefined ? undefined : plan.storage.volumes[volume.index],
        );
        if (finding !== undefined) yield finding;
      }
    }
  },
};

function findingOf(policy: Retention, recording: Recording, volume: VolumeFigures | undefined): Finding | undefined {
  const { item, name, keep } = recording;
  const { atLeast, atMost } = policy;
  const asks = (key: string): { at: ReturnType<typeof placeOf>; message: string } => ({
    at: placeOf(policy.item, [...policy.route, key]),
    message: 'what policy asks',
  });
  const set = (milliseconds: number): Fix[] => {
    const written = nodeAt(item, ['keep']);
    const text = durationLike(milliseconds, written?.kind === 'scalar' ? written.value : undefined);
    const edit = keep === undefined ? addEntry(item, [], 'keep', text) : setValue(item, ['keep'], text);
    return edit === undefined ? [] : [{ title: `Keep ${name} for ${text}`, safe: false, edits: [edit] }];
  };
  if (keep === undefined) {
    if (nodeAt(item, ['keep']) !== undefined || (atLeast === undefined && atMost === undefined)) return undefined;
    const asked =
      atLeast === undefined ? `allows ${duration(atMost ?? 0)} at most` : `asks for ${duration(atLeast)} at least`;
    return {
      at: headOf(item),
      message: `${name} has no \`keep\`, and policy ${asked}. Say how long it is kept.`,
      about: [name],
      related: [asks(atLeast === undefined ? 'at-most' : 'at-least')],
      fixes: () => set(atLeast ?? atMost ?? 0),
    };
  }
  const at = placeOf(item, ['keep']);
  if (atLeast !== undefined && keep < atLeast) {
    return {
      at,
      message:
        `${name} is kept for ${duration(keep)}, and policy asks for ${duration(atLeast)} at least. Keep it ` +
        `longer.`,
      about: [name],
      related: [asks('at-least')],
      fixes: () => set(atLeast),
    };
  }
  if (atMost !== undefined && keep > atMost) {
    return {
      at,
      message:
        `${name} is kept for ${duration(keep)}, and policy allows ${duration(atMost)} at most. Delete it ` + `sooner.`,
      about: [name],
      related: [asks('at-most')],
      fixes: () => set(atMost),
    };
  }
  const full = volume?.daysUntilFullKept;
  if (volume === undefined || full === undefined || atLeast === undefined || full * MS_A_DAY >= atLeast)
    return undefined;
  return {
    at,
    severity: 'warning',
    message:
      `${name} is to be kept for ${duration(keep)}, and ${volume.volume.name} is full after ${days(full)}, before ` +
      `the ${duration(atLeast)} that ` +
      'policy asks for. Lower bit rates, or take a larger volume.',
    about: [name, volume.volume.name],
    related: [
      { at: placeOf(volume.volume.item, ['capacity']), message: `the capacity of ${volume.volume.name}` },
      asks('at-least'),
    ],
  };
}
