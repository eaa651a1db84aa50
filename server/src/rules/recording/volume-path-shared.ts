import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { grouped } from '../../grouped.ts';
import { placeOf } from '../../site/item.ts';
import type { Volume } from '../../site/model.ts';
import { asName } from '../../text/words.ts';

export const volumePathShared: Rule = {
  id: 'volume-path-shared',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two volumes of a host share a path, or one is inside the other.',
  why: `A path leads to one file system. Two volumes at one path are one disk counted twice: it fills in half
the time. A volume inside another is a folder of it, unless a disk of its own is mounted there. Give each volume the
path where its own disk is mounted.`,
  source: 'Common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const [host, volumes] of grouped(site.volumes, (volume) => volume.host)) {
      for (const [volume, other] of clashesOf(volumes)) {
        const { name, path, item } = volume;
        const isSame = plain(other.path) === plain(path);
        const [inner, outer] = isWithin(path, other.path) ? [volume, other] : [other, volume];
        report({
          at: placeOf(item, ['path']),
          severity: isSame ? 'error' : 'warning',
          message: isSame
            ? `${asName(name)} and ${asName(other.name)} are both at ${path} of ${asName(host)}: one disk counted twice. Give each its own path.`
            : `${asName(inner.name)} at ${inner.path} is inside ${asName(outer.name)} at ${outer.path} of ${asName(host)}: what is written ` +
              'there fills both, unless a disk of its own is mounted there. Give each its own path.',
          acceptAt: [name, other.name],
          related: [{ at: placeOf(other.item, ['path']), message: `the path of ${asName(other.name)}` }],
        });
      }
    }
  },
};

/** The volumes of one host that clash with an earlier one, and that one. */
function clashesOf(volumes: readonly Volume[]): Map<Volume, Volume> {
  const order = new Map(volumes.map((volume, index) => [volume, index]));
  const placed = volumes.map((volume) => ({ volume, folder: folderOf(volume.path) }));
  // Sorted so that paths inside a path come right behind it.
  placed.sort((a, b) => (a.folder < b.folder ? -1 : a.folder > b.folder ? 1 : 0));
  const clashes = new Map<Volume, Volume>();
  const around: typeof placed = [];
  for (const one of placed) {
    while (around.length > 0 && !one.folder.startsWith(around.at(-1)?.folder ?? '')) around.pop();
    const outer = around.at(-1);
    if (outer?.folder !== one.folder) around.push(one);
    if (outer === undefined) continue;
    const [earlier = one.volume, later = one.volume] = [outer.volume, one.volume].sort(
      (a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0),
    );
    const before = clashes.get(later);
    if (before === undefined || (order.get(earlier) ?? 0) < (order.get(before) ?? 0)) clashes.set(later, earlier);
  }
  return new Map([...clashes].sort(([a], [b]) => (order.get(a) ?? 0) - (order.get(b) ?? 0)));
}

function plain(path: string): string {
  return path.replace(/\/{2,}/g, '/').replace(/(.)\/$/, '$1');
}

/** A path with a slash at its end. */
function folderOf(path: string): string {
  return `${plain(path)}/`.replace(/^\/\/$/, '/');
}

function isWithin(inner: string, outer: string): boolean {
  return folderOf(inner).startsWith(folderOf(outer));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices: {recorder: {kind: server}}
volumes:
  archive: {host: recorder, path: /srv/archive, capacity: 8 TB}
  second: {host: recorder, path: /srv/archive/, capacity: 8 TB}
#                                ^^^^^^^^^^^^^ ‘second’ and archive are both at /srv/archive/ of recorder
  third: {host: recorder, path: /srv/archive/third, capacity: 8 TB}
#                               ^^^^^^^^^^^^^^^^^^ ‘third’ at /srv/archive/third is inside archive at /srv/archive
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
