import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import type { Volume } from '../../site/model.ts';

export const volumePathShared: Rule = {
  id: 'volume-path-shared',
  severity: 'error',
  summary: 'Two volumes of a host are at one path, or one is inside the other.',
  why: `A path leads to one file system. Two volumes at one path are one disk that is counted twice: it is full in half
the time. A volume inside another is a folder of it, unless a disk of its own is mounted there. Give each volume the
path where its own disk is mounted.`,
  source: 'Common practice',
  check({ site }: RuleContext, report: Report): void {
    const byHost = new Map<string, Volume[]>();
    for (const volume of site.volumes) {
      const { host, name, path, item } = volume;
      if (host === undefined) continue;
      const others = byHost.get(host) ?? [];
      byHost.set(host, [...others, volume]);
      const other = others.find((one) => isWithin(one.path, path) || isWithin(path, one.path));
      if (other === undefined) continue;
      const isSame = plain(other.path) === plain(path);
      const [inner, outer] = isWithin(path, other.path) ? [volume, other] : [other, volume];
      report({
        at: placeOf(item, ['path']),
        severity: isSame ? 'error' : 'warning',
        message: isSame
          ? `${name} and ${other.name} are both at ${path} of ${host}: one disk counted twice. Give each its own path.`
          : `${inner.name} at ${inner.path} is inside ${outer.name} at ${outer.path} of ${host}: what is written ` +
            'there fills both, unless a disk of its own is mounted there. Give each its own path.',
        about: [name, other.name],
        related: [{ at: placeOf(other.item, ['path']), message: `the path of ${other.name}` }],
      });
    }
  },
};

function plain(path: string): string {
  return path.replace(/\/{2,}/g, '/').replace(/(.)\/$/, '$1');
}

function isWithin(inner: string, outer: string): boolean {
  const [a, b] = [plain(inner), plain(outer)];
  return a === b || a.startsWith(b === '/' ? b : `${b}/`);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices: {recorder: {kind: server}}
volumes:
  archive: {host: recorder, path: /srv/archive, capacity: 8 TB}
  second: {host: recorder, path: /srv/archive/, capacity: 8 TB}
#                                ^^^^^^^^^^^^^ second and archive are both at /srv/archive/ of recorder
  third: {host: recorder, path: /srv/archive/third, capacity: 8 TB}
#                               ^^^^^^^^^^^^^^^^^^ third at /srv/archive/third is inside archive at /srv/archive
`,
    good: `
devices: {recorder: {kind: server}, spare: {kind: server}}
volumes:
  archive: {host: recorder, path: /srv/archive, capacity: 8 TB}
  archive-2: {host: recorder, path: /srv/archive-2, capacity: 8 TB}
  copy: {host: spare, path: /srv/archive, capacity: 8 TB}
`,
  },
];
