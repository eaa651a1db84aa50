/** Which sample rates a codec of audio can have, Hz. */

export interface SampleRates {
  readonly rates: readonly number[];
  /** Where they are from. */
  readonly source: string;
}

const MPEG_4 = [7350, 8000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 64_000, 88_200, 96_000];

const OF: ReadonlyMap<string, SampleRates> = new Map([
  // It samples at 16 kHz with an RTP clock of 8 kHz: people write either.
  ['g722', { rates: [8000, 16_000], source: 'RFC 3551 §4.5.2' }],
  ['opus', { rates: [8000, 12_000, 16_000, 24_000, 48_000], source: 'RFC 6716 §2, Table 1' }],
  ['aac', { rates: MPEG_4, source: 'ISO/IEC 14496-3, Table 1.18' }],
  ['mp2', { rates: [16_000, 22_050, 24_000, 32_000, 44_100, 48_000], source: 'ISO/IEC 11172-3 and 13818-3' }],
  ['ac3', { rates: [32_000, 44_100, 48_000], source: 'ATSC A/52 §5.3.2' }],
]);

/** `undefined` for a codec that allows any rate. */
export function sampleRates(codec: string | undefined): SampleRates | undefined {
  return codec === undefined ? undefined : OF.get(codec);
}

/** Below the telephone's 8 kHz no codec of sampled speech or sound is used; common practice. */
export const LOWEST_SAMPLE_RATE = 7350;
