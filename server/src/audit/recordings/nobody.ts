/** Reports files on a volume that no recording plans, and parts of it that could not be read. */

import { namePlace } from '../../site/item.ts';
import type { Volume } from '../../site/model.ts';
import { visible } from '../../text/visible.ts';
import { bytes, count, list, asName } from '../../text/words.ts';
import type { Found } from '../../lint/rule.ts';
import { recordingRules as rules } from './rules.ts';
import type { Holding } from './survey.ts';

/** The most folders that a message names. */
const SHOWN = 5;

export function ofNobody(volume: Volume, { unplanned, notRead, notReadCount }: Holding): Found[] {
  const at = namePlace(volume.item);
  const acceptAt = [volume.name];
  const found: Found[] = [];
  const folders = [...unplanned].sort(([, a], [, b]) => b.count - a.count || b.bytes - a.bytes);
  if (folders.length > 0) {
    const files = folders.reduce((sum, [, { count: own }]) => sum + own, 0);
    const size = folders.reduce((sum, [, { bytes: own }]) => sum + own, 0);
    const named = folders
      .slice(0, SHOWN)
      .map(([folder, own]) => `${folderText(folder)} (${own.count}, such as ${visible(nameOf(own.first ?? ''), 60)})`);
    const others = folders.length > SHOWN ? [`${folders.length - SHOWN} others`] : [];
    found.push({
      rule: rules.unplanned,
      at,
      message:
        `${asName(volume.name)} has ${count(files, 'file')} of ${bytes(size)} that no recording plans, ` +
        `in ${list([...named, ...others])}.`,
      acceptAt,
    });
  }
  if (notReadCount > 0) {
    const named = notRead.slice(0, SHOWN).map(({ path, why }) => `${visible(path, 80)} (${visible(why, 80)})`);
    const others = notReadCount > named.length ? [`${notReadCount - named.length} others`] : [];
    found.push({
      rule: rules.unreadable,
      at,
      message:
        `Of ${asName(volume.name)} ${count(notReadCount, 'folder')} could not be looked into: ` +
        `${list([...named, ...others])}.`,
      acceptAt,
    });
  }
  return found;
}

function folderText(folder: string | undefined): string {
  return folder === undefined ? 'further folders' : folder === '' ? 'the volume itself' : visible(folder, 80);
}

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
