import { leastDisks, usableDisks } from '../../standards/raid.ts';
import { type Fix, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { count, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** From the most disks lost without loss of data to the fewest. */
const LESS = ['raid6', 'raid10', 'raid5', 'mirror', 'none'] as const;

export const volumeDisks: Rule = {
  id: 'volume-disks',
  severity: 'error',
  showAfter: 'item',
  summary: 'A volume has too few disks for its redundancy.',
  why: `Parity and mirrors need a number of disks: a mirror two, raid5 three, raid6 four, raid10 an even number from four
up. Redundancy keeps a recording through the failure of a disk; it is no backup.`,
  source: 'md(4) for the levels; the least numbers of disks from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const volume of site.volumes) {
      const { item, name, disks, redundancy } = volume;
      if (disks === undefined || usableDisks(redundancy, disks) !== undefined) continue;
      const takes = `${redundancy === 'raid10' ? 'an even number, ' : ''}${leastDisks[redundancy]} or more`;
      report({
        at: placeOf(item, ['disks']),
        message:
          `${asName(name)} has ${count(disks, 'disk')}, and ${redundancy} takes ${takes}. Take more disks, or another ` +
          'redundancy.',
        acceptAt: [name],
        // The volume's capacity is then unknown.
        entails: [volume],
        related: [{ at: placeOf(item, ['redundancy']), message: `${redundancy} takes ${takes}` }],
        fixes: () => {
          const fixes: Fix[] = [];
          const enough = [disks + 1, leastDisks[redundancy]].find(
            (number) => usableDisks(redundancy, number) !== undefined,
          );
          if (enough !== undefined)
            fixes.push({
              title: `Take ${enough} disks`,
              safe: false,
              edits: [setValue(item, ['disks'], String(enough))],
            });
          const possible = LESS.find((kind) => usableDisks(kind, disks) !== undefined);
          if (possible !== undefined)
            fixes.push({
              title: `Make it ${possible}`,
              safe: false,
              edits: [setValue(item, ['redundancy'], possible)],
            });
          return fixes;
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
volumes:
  archive: {host: recorder, capacity: 8 TB, disks: 2, redundancy: raid5}
#                                                  ^ archive has 2 disks, and raid5 takes 3 or more
`,
    fixed: `
volumes:
  archive: {host: recorder, capacity: 8 TB, disks: 3, redundancy: raid5}
`,
  },
  {
    bad: `
volumes:
  archive: {host: recorder, capacity: 8 TB, disks: 5, redundancy: raid10}
#                                                  ^ archive has 5 disks, and raid10 takes an even number, 4 or more
`,
    fixed: `
volumes:
  archive: {host: recorder, capacity: 8 TB, disks: 6, redundancy: raid10}
`,
  },
];
