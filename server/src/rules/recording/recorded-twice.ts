import { namePlace, placeOf } from '../../site/item.ts';
import type { Recording, Site } from '../../site/model.ts';
import type { Storage } from '../../storage/storage.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const recordedTwice: Rule = {
  id: 'recorded-twice',
  severity: 'warning',
  showAfter: 'item',
  summary: 'Two recordings write the same stream to the same volume.',
  why: `The volume holds every picture twice and is full in half the time, and often the stream that was meant is not
recorded at all, as happens to an entry that is copied. Name the other stream, or take one recording out.`,
  source: 'Common practice, no source',
  check({ site, plan }: RuleContext, report: Report): void {
    const first = new Map<string, Recording>();
    for (const recording of site.recordings) {
      const { name, item, stream, volume } = recording;
      if (stream === undefined || volume === undefined) continue;
      const key = `${stream} ${volume}`;
      const other = first.get(key);
      if (other === undefined) first.set(key, recording);
      else
        report({
          at: placeOf(item, ['stream']),
          message:
            `${asName(other.name)} records ${stream} to ${asName(volume)} already, so ${asName(volume)} would hold it twice. Name the stream ` +
            `that ${asName(name)} is to record, or take ${asName(name)} out.`,
          acceptAt: [name, other.name],
          related: [{ at: namePlace(other.item), message: `${asName(other.name)} records it too` }],
          entails: [recording, ...filledBy(site.policies.volumeFill, plan.storage, recording)],
        });
    }
  },
};

/** The volume, where only this recording makes it too full. */
function filledBy({ warn, limit }: Site['policies']['volumeFill'], storage: Storage, recording: Recording): object[] {
  const { volume, bytesKept = 0 } = storage.of(recording);
  const figures = volume === undefined ? undefined : storage.on(volume);
  if (figures?.usableBytes === undefined) return [];
  const allowed = (figures.usableBytes / 10_000) * Math.min(warn ?? limit, limit);
  return figures.bytesKept - bytesKept <= allowed ? [figures] : [];
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam}
  yard: {source: yard-cam}
volumes:
  archive: {host: recorder, capacity: 4 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
  yard: {stream: paddock, volume: archive, keep: 14 d}
#                ^^^^^^^ paddock records paddock to archive already, so archive would hold it twice. Name the stream that yard is to record
`,
    good: `
streams:
  paddock: {source: paddock-cam}
  yard: {source: yard-cam}
volumes:
  archive: {host: recorder, capacity: 4 TB}
  spare: {host: recorder, capacity: 1 TB}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
  yard: {stream: yard, volume: archive, keep: 14 d}
  yard-again: {stream: yard, volume: spare, keep: 2 d}
`,
  },
];
