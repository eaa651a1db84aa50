/**
 * What a receiver of AAC must know before the first frame.
 *
 * Sources: ISO/IEC 14496-3 §1.6.2.1 (AudioSpecificConfig), Tables 1.14 (levels), 1.18 (sampling frequencies) and 1.19
 * (channels), from memory; RFC 3640 §4.1 (`config`, `profile-level-id`), read. FFmpeg writes the same, checked.
 */

const LOW_COMPLEXITY = 2;

const SAMPLING_FREQUENCIES: readonly number[] = [
  96_000, 88_200, 64_000, 48_000, 44_100, 32_000, 24_000, 22_050, 16_000, 12_000, 11_025, 8000, 7350,
];

/** By the number of channels: 8 are 7.1; 7, and more than 8, have no number and need a description of each channel. */
const CHANNEL_CONFIGURATIONS: Readonly<Record<number, number>> = { 1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 6, 8: 7 };

/**
 * The configuration of AAC-LC in hexadecimal: 5 bits of object type, 4 of frequency, 4 of channels, 3 zero. Undefined
 * for a sampling frequency or number of channels without a number in the tables.
 */
export function audioSpecificConfig(sampleRate: number, channels: number): string | undefined {
  const frequency = SAMPLING_FREQUENCIES.indexOf(sampleRate);
  const configuration = CHANNEL_CONFIGURATIONS[channels];
  if (frequency < 0 || configuration === undefined) return undefined;
  return ((LOW_COMPLEXITY << 11) | (frequency << 7) | (configuration << 3)).toString(16).padStart(4, '0');
}

/** The audioProfileLevelIndication of the lowest level of the AAC profile that is enough; 254 where none is. */
export function aacLevel(sampleRate: number, channels: number): number {
  if (channels <= 2 && sampleRate <= 24_000) return 40;
  if (channels <= 2 && sampleRate <= 48_000) return 41;
  if (channels <= 6 && sampleRate <= 48_000) return 42;
  return channels <= 6 && sampleRate <= 96_000 ? 43 : 254;
}
