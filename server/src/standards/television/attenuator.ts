/** Attenuators that the trade sells, dB. Common practice, no source. */
const STANDARD = [3, 6, 10, 12, 15, 20];

/** The smallest attenuator that takes off so many dB; several in a row where none is large enough. */
export function attenuatorFor(excess: number): number {
  return STANDARD.find((loss) => loss >= excess) ?? Math.ceil(excess / 10) * 10;
}
