/** A multicast group: its MAC address, its block, and its streams. */

import type { Plan } from '../../plan.ts';
import type { Stream } from '../../site/model.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { blockOf, groupMac, isLinkLocalGroup, macKey, onAlwaysFloodedMac } from '../../standards/multicast.ts';
import { list } from '../../text/words.ts';
import { reachWords } from '../answer/stream.ts';
import { answer } from '../answer/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { GROUP_MAC } from './sources.ts';

/** `group` is a multicast address. */
export function groupExplained(plan: Plan, group: number): Explanation {
  const block = blockOf(group);
  const streams = plan.site.streams.filter((stream) => stream.group === group);
  return {
    answer: answer(
      ...(streams.length === 0
        ? ['no stream is sent to it']
        : streams.slice(0, 3).map((stream) => `${stream.name} ${reachWords(plan, stream)}`)),
      groupMac(group),
    ),
    title: `${formatAddress(group)}: multicast group`,
    sentences: [block.advice],
    columns: [],
    lines: [
      macLine(group),
      {
        label: 'block',
        cells: [block.name],
        formula: `${formatAddress(block.first)} to ${formatAddress(block.last)}`,
        source: block.source,
      },
      ...sharingLines(plan, group),
      ...streams.map((stream) => streamLine(plan, stream)),
    ],
  };
}

export function macExplained(stream: Stream, group: number): Explanation {
  return {
    title: `${stream.name}: MAC address of ${formatAddress(group)}`,
    columns: [],
    lines: isMulticast(group)
      ? [{ label: 'low 23 bits of the group', cells: [`0x${macKey(group).toString(16).padStart(6, '0')}`] }]
      : [],
    total: isMulticast(group)
      ? macLine(group)
      : { label: 'MAC', cells: ['none'], formula: `${formatAddress(group)} is not a multicast address` },
  };
}

function macLine(group: number): ExplanationLine {
  return {
    label: 'MAC',
    cells: [groupMac(group)],
    formula: '01:00:5e:00:00:00 and the low 23 bits of the group',
    source: GROUP_MAC,
  };
}

function sharingLines({ site }: Plan, group: number): ExplanationLine[] {
  const others = new Map<number, string[]>();
  for (const { group: other, name } of site.streams) {
    if (other === undefined || other === group || !isMulticast(other) || macKey(other) !== macKey(group)) continue;
    others.set(other, [...(others.get(other) ?? []), name]);
  }
  const lines: ExplanationLine[] = [...others].map(([other, names]) => ({
    label: 'shares its MAC with',
    cells: [formatAddress(other)],
    formula: `${list(names)}; a switch that forwards by MAC sends both to the receivers of either`,
    source: GROUP_MAC,
  }));
  if (isLinkLocalGroup(group))
    lines.push({
      label: 'flooded',
      cells: ['always'],
      formula: 'every switch sends 224.0.0.0/24 out of every port',
      source: 'RFC 4541 §2.1.2',
    });
  else if (onAlwaysFloodedMac(group)) {
    lines.push({
      label: 'flooded',
      cells: ['by many switches'],
      formula: 'its MAC is that of a group in 224.0.0.0/24',
      source: 'RFC 4541 §2.1.2, RFC 4607 §9',
    });
  }
  return lines;
}

function streamLine({ network }: Plan, stream: Stream): ExplanationLine {
  const { reaches: reached, unreached } = network.delivery(stream);
  const missed = unreached.map(({ receiver }) => receiver);
  return {
    label: stream.name,
    cells: [stream.port === undefined ? 'no port' : `port ${stream.port}`],
    formula: [
      reached.length === 0 ? 'reaches nobody' : `reaches ${list(reached)}`,
      ...(missed.length === 0 ? [] : [`not ${list(missed, 'nor')}`]),
    ].join('; '),
  };
}
