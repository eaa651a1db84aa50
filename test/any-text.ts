// Text of any characters. fast-check has `unit: 'binary'` for it, which takes a second to set up in each process.
import fc from 'fast-check';

/** The first surrogate and their number; surrogates are no characters (Unicode 15 §3.8). */
const [FIRST, SURROGATES] = [0xd800, 0x800];

const ascii = fc.nat(0x7f).map((code) => String.fromCodePoint(code));
const character = fc
  .nat(0x10ffff - SURROGATES)
  .map((code) => String.fromCodePoint(code < FIRST ? code : code + SURROGATES));
const unit = fc.oneof(ascii, character);

export const anyText = (constraints: { readonly maxLength?: number } = {}): fc.Arbitrary<string> =>
  fc.string({ ...constraints, unit });
