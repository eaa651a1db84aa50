import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { mountPoint } from '../../make/media/name-pattern.ts';

export const volumePath: Rule = {
  id: 'volume-path',
  severity: 'error',
  showAfter: 'value',
  summary: 'The path of a volume is not where a recorder may write.',
  why: `Files are written and deleted below the path of their volume. That is the folder that the disk is mounted at, not
the whole file system, and systemd takes it only as it is: without \`.\` and \`..\`, control characters, a backslash,
or both kinds of quotes. With any other path it does not notice that the disk is missing, and recordings fill the
system disk.`,
  source: 'systemd.unit(5), RequiresMountsFor=; NAME_MAX of Linux (limits.h)',
  check({ site }: RuleContext, report: Report): void {
    for (const volume of site.volumes) {
      const path = mountPoint(volume);
      if (typeof path !== 'string') report({ at: path.at, message: path.message, acceptAt: [volume.name] });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
volumes:
  archive: {host: recorder, capacity: 8 TB, path: /}
#                                                 ^ archive is the whole file system
  spare: {host: recorder, capacity: 8 TB, path: /srv/../archive}
#                                               ^^^^^^^^^^^^^^^ The path of spare has . or .. in it
  old: {host: recorder, capacity: 8 TB, path: '/srv/old\\'}
#                                             ^^^^^^^^^^^ it has a control character, a backslash
`,
    good: `
volumes:
  archive: {host: recorder, capacity: 8 TB, path: /srv/archive}
`,
  },
];
