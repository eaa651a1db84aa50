/** A session description for each stream that is sent in datagrams: a player or a recorder opens it to join. */

import type { Plan } from '../../plan.ts';
import type { Stream } from '../../site/model.ts';
import { writeDescription } from '../../standards/sdp.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type Output, together } from '../output.ts';
import { audiences, describable, describe } from './describe.ts';

export const sdp: Output = {
  kind: 'sdp',
  title: 'Session description of a stream (SDP)',
  summary: 'a file for each multicast or RTP stream that tells a player or a recorder how to take it',
  subjects: (plan) => plan.site.streams.filter(describable).map(({ name }) => name),
  make(plan, subject) {
    const streams = plan.site.streams.filter(
      (stream) => describable(stream) && (subject === undefined || stream.name === subject),
    );
    const made = together(
      streams.flatMap((stream) =>
        audiences(stream).map((receiver) => descriptionFile(plan, stream, folderOf(receiver), receiver)),
      ),
    );
    return { ...made, notes: made.files.length === 0 ? [] : NOTES };
  },
};

const NOTES = [
  'sdp: open a file with a player on a machine that may join the group; recorders and relays look for it in ' +
    '/etc/plumbline/sdp/.',
];

/** Empty, or a receiver's own folder. */
function folderOf(receiver: string | undefined): string {
  return receiver === undefined ? '' : `${receiver}/`;
}

/** `NAME.sdp` in a folder, which is empty or ends in a slash. */
export function descriptionFile(plan: Plan, stream: Stream, folder: string, receiver?: string): Made {
  const refusedBy = refusedName(stream.item);
  if (refusedBy !== undefined) return { files: [], refused: [refusedBy], notes: [] };
  const made = describe(plan, stream, receiver);
  if ('refused' in made) return { files: [], refused: [made.refused], notes: [] };
  return {
    files: [{ path: `${folder}${stream.name}.sdp`, text: writeDescription(made.description) }],
    refused: [],
    notes: [],
  };
}
