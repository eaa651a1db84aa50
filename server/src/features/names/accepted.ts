/** What an acceptance means by a name that several things may have: what its rule's findings stand at. */

import type { Checked } from '../../lint/check.ts';
import type { Named } from './named.ts';

const KINDS = ['devices', 'streams', 'recordings', 'volumes', 'vlans'] as const;

export function acceptedNames(checked: Checked, rule: string, text: string): Named[] {
  const { site } = checked.plan;
  const declared = {
    devices: site.deviceByName,
    streams: site.streamByName,
    recordings: site.recordingByName,
    volumes: site.volumeByName,
    vlans: site.vlanByName,
  };
  const kinds = KINDS.filter((kind) => declared[kind].has(text));
  const [first, second] = kinds;
  if (first === undefined) return [];
  if (second === undefined) return [{ kind: first, name: text }];
  const sections = new Set<string>();
  for (const [{ id }, { findings }] of checked.runs) {
    if (id === rule) for (const { about, at } of findings) if (about.includes(text)) sections.add(at.piece.section);
  }
  return [{ kind: kinds.find((kind) => sections.has(kind)) ?? first, name: text }];
}
