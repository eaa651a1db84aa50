/** Streams that a server asks its cameras for twice, to record them and to send them on, where the plan has them once. */

import type { Plan } from '../../plan.ts';
import type { Stream } from '../../site/model.ts';
import { bitRate, list } from '../../text/words.ts';
import type { Recorded } from './recorders.ts';

/** A note for each, with what comes on top of the loads of the plan. */
export function askedTwice({ site, network }: Plan, recordings: readonly Recorded[]): string[] {
  const sent = (stream: Stream, host: string): string[] =>
    site.streams.filter(({ carries, source }) => carries === stream.name && source === host).map(({ name }) => name);
  return recordings.flatMap(({ recording, host }) => {
    const stream = site.streamByName.get(recording.stream ?? '');
    if (stream === undefined || stream.group !== undefined || stream.source === host.name) return [];
    const live = sent(stream, host.name);
    const { peak } = network.rates[stream.index]?.untagged.line ?? { peak: 0 };
    if (live.length === 0) return [];
    return [
      `recorders: ${host.name} asks ${stream.source ?? 'its source'} for ${stream.name} by a connection of its own to record it, beside the one ` +
        `by which it sends ${list(live)}, and the loads of the plan have only one. Record ${live[0] ?? ''}, or keep ${bitRate(peak)} more free.`,
    ];
  });
}
