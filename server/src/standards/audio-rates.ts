/** Which bit rates a codec of audio can have, bit/s. */

export interface RateRange {
  readonly least: number;
  readonly most: number;
  /** Where the bounds are from. */
  readonly source: string;
}

/** Undeclared sample rates and channels count as those that allow the widest range. */
export function audioRates(
  codec: string | undefined,
  sampleRate: number | undefined,
  channels: number | undefined,
): RateRange | undefined {
  const each = channels ?? 2;
  switch (codec) {
    case 'pcma':
    case 'pcmu':
      return only(8 * (sampleRate ?? 8000) * (channels ?? 1), 'RFC 3551 §4.5.14');
    case 'g722':
      return only(64_000 * (channels ?? 1), 'RFC 3551 §4.5.2');
    case 'l16':
      return sampleRate === undefined || channels === undefined
        ? undefined
        : only(16 * sampleRate * channels, 'RFC 3551 §4.5.11');
    case 'aac':
      // 6144 bits at most for 1024 samples of a channel; the least is common practice.
      return { least: 4000, most: 6 * (sampleRate ?? 96_000) * each, source: 'ISO/IEC 14496-3 §4.5.3' };
    case 'mp2':
      return (sampleRate ?? 48_000) < 32_000
        ? { least: 8000, most: 160_000, source: 'ISO/IEC 13818-3 §2.4.2.3' }
        : { least: 32_000, most: 384_000, source: 'ISO/IEC 11172-3 §2.4.2.3' };
    case 'ac3':
      return { least: 32_000, most: 640_000, source: 'ATSC A/52 Table 5.18' };
    case 'opus':
      return { least: 6000, most: 256_000 * each, source: 'RFC 6716 §2.1.1' };
    default:
      return undefined;
  }
}

function only(rate: number, source: string): RateRange {
  return { least: rate, most: rate, source };
}
