/** One output of FFmpeg: what goes into it and where it is put; by itself, or behind a queue of its own. */

export interface Destination {
  /** What it consists of: `-map`, codecs and what they are told. */
  readonly media: readonly string[];
  readonly format: string;
  /** What the format and the writing are told, by name. */
  readonly options: readonly (readonly [name: string, value: string])[];
  readonly to: string;
}

/** For a command that has no other. */
export function alone({ media, format, options, to }: Destination): readonly string[] {
  return [...media, ...options.flatMap(([name, value]) => [`-${name}`, value]), '-f', format, to];
}

/** Seconds until a destination that failed is tried again. */
const TRIED_AGAIN = 5;

/**
 * Among others: what one of them suffers, a full or slow disk, a card without a cable, the others do not notice. FFmpeg's
 * fifo muxer writes in a thread of its own, begins again after any error, and leaves out what does not fit into its queue.
 *
 * @param packets that the queue holds
 */
export function amongOthers({ media, format, options, to }: Destination, packets: number): readonly string[] {
  const told = options.map(([name, value]) => `${name}=${value.replace(/[\\':]/g, '\\$&')}`).join(':');
  return [
    ...media,
    '-f',
    'fifo',
    '-fifo_format',
    format,
    '-format_opts',
    told,
    '-queue_size',
    String(packets),
    '-drop_pkts_on_overflow',
    '1',
    '-attempt_recovery',
    '1',
    '-recover_any_error',
    '1',
    '-recovery_wait_time',
    String(TRIED_AGAIN),
    '-restart_with_keyframe',
    '1',
    to,
  ];
}
