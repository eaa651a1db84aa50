/**
 * The level that a picture size and frame rate need, and the bitrate that such a level allows at most.
 *
 * Sources: Rec. ITU-T H.264 Table A-1 and H.265 Tables A.8 and A.9, as transcribed in FFmpeg, which cites them
 * (secondary); H.265 levels 6.1 and 6.2 and the rules about sides from memory. The Recommendations were not read.
 */

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export interface Level {
  readonly name: string;
  /** In bit/s: of the Main profile (H.264) or Main tier (H.265). */
  readonly maxBitsPerSecond: number;
  /** In bit/s: of the High profile (H.264), or the High tier (H.265), which levels below 4 do not have. */
  readonly highMaxBitsPerSecond: number;
}

type Row = readonly [name: string, maxRate: number, maxSize: number, maxKilobits: number, highMaxKilobits: number];

/** Macroblocks per second, macroblocks, kbit/s. Level 1b is left out: level 1 with twice the bitrate. */
const h264: readonly Row[] = (
  [
    ['1', 1485, 99, 64],
    ['1.1', 3000, 396, 192],
    ['1.2', 6000, 396, 384],
    ['1.3', 11_880, 396, 768],
    ['2', 11_880, 396, 2000],
    ['2.1', 19_800, 792, 4000],
    ['2.2', 20_250, 1620, 4000],
    ['3', 40_500, 1620, 10_000],
    ['3.1', 108_000, 3600, 14_000],
    ['3.2', 216_000, 5120, 20_000],
    ['4', 245_760, 8192, 20_000],
    ['4.1', 245_760, 8192, 50_000],
    ['4.2', 522_240, 8704, 50_000],
    ['5', 589_824, 22_080, 135_000],
    ['5.1', 983_040, 36_864, 240_000],
    ['5.2', 2_073_600, 36_864, 240_000],
    ['6', 4_177_920, 139_264, 240_000],
    ['6.1', 8_355_840, 139_264, 480_000],
    ['6.2', 16_711_680, 139_264, 800_000],
  ] as const
).map(([name, rate, size, kilobits]) => [name, rate, size, kilobits, 1.25 * kilobits]);

/** Luma samples per second, luma samples, kbit/s. */
const h265: readonly Row[] = [
  ['1', 552_960, 36_864, 128, 128],
  ['2', 3_686_400, 122_880, 1500, 1500],
  ['2.1', 7_372_800, 245_760, 3000, 3000],
  ['3', 16_588_800, 552_960, 6000, 6000],
  ['3.1', 33_177_600, 983_040, 10_000, 10_000],
  ['4', 66_846_720, 2_228_224, 12_000, 30_000],
  ['4.1', 133_693_440, 2_228_224, 20_000, 50_000],
  ['5', 267_386_880, 8_912_896, 25_000, 100_000],
  ['5.1', 534_773_760, 8_912_896, 40_000, 160_000],
  ['5.2', 1_069_547_520, 8_912_896, 60_000, 240_000],
  ['6', 1_069_547_520, 35_651_584, 60_000, 240_000],
  ['6.1', 2_139_095_040, 35_651_584, 120_000, 480_000],
  ['6.2', 4_278_190_080, 35_651_584, 240_000, 800_000],
];

/** What each codec counts: macroblocks of 16 × 16, or samples in coding units of at least 8 × 8. */
const codecs = {
  h264: { rows: h264, block: 16, perBlock: 1 },
  h265: { rows: h265, block: 8, perBlock: 64 },
} as const;

/**
 * The lowest level that holds pictures of the size at the frame rate, or undefined if none does. A stream may claim a
 * higher one, for its bitrate or its reference pictures.
 */
export function levelFor(codec: keyof typeof codecs, size: PictureSize, frameRate: number): Level | undefined {
  const { rows, block, perBlock } = codecs[codec];
  const columns = Math.ceil(size.width / block);
  const lines = Math.ceil(size.height / block);
  const units = columns * lines * perBlock;
  const longest = Math.max(columns, lines) ** 2 * perBlock;
  const row = rows.find(
    ([, maxRate, maxSize]) => units <= maxSize && units * frameRate <= maxRate && longest <= 8 * maxSize,
  );
  if (row === undefined) {
    return undefined;
  }
  const [name, , , kilobits, highKilobits] = row;
  return { name, maxBitsPerSecond: kilobits * 1000, highMaxBitsPerSecond: highKilobits * 1000 };
}
