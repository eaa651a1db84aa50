/** One output of FFmpeg: its streams and its target, written directly or from a queue of its own. */

export interface MediaDestination {
  /** Which streams of the input it takes, and their codecs: `-map`, `-c:v` and the like. */
  readonly mapping: readonly string[];
  readonly format: string;
  /** Options of the format and of the protocol, by name. */
  readonly options: readonly (readonly [name: string, value: string])[];
  readonly to: string;
}

/** The arguments for the only output of a command. */
export function directOutput({ mapping, format, options, to }: MediaDestination): readonly string[] {
  return [...mapping, ...options.flatMap(([name, value]) => [`-${name}`, value]), '-f', format, to];
}

/** Seconds until FFmpeg tries a failed destination again. */
const RETRY_AFTER = 5;

/**
 * The arguments for one of several outputs, none of which disturbs the others: not by a full or slow disk, not by a
 * network card without a cable. FFmpeg's fifo muxer writes in a thread of its own, starts again after any error, and
 * drops packets that do not fit into its queue.
 *
 * @param packets that the queue holds
 */
export function queuedOutput({ mapping, format, options, to }: MediaDestination, packets: number): readonly string[] {
  const formatOptions = options.map(([name, value]) => `${name}=${value.replace(/[\\':]/g, '\\$&')}`).join(':');
  return [
    ...mapping,
    '-f',
    'fifo',
    '-fifo_format',
    format,
    '-format_opts',
    formatOptions,
    '-queue_size',
    String(packets),
    '-drop_pkts_on_overflow',
    '1',
    '-attempt_recovery',
    '1',
    '-recover_any_error',
    '1',
    '-recovery_wait_time',
    String(RETRY_AFTER),
    '-restart_with_keyframe',
    '1',
    to,
  ];
}
