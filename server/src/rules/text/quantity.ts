import { type QuantityFault, type QuantityKind, isQuantity, unitsOf } from '../../text/quantity.ts';
import { visible } from '../../text/visible.ts';
import { list } from '../../text/words.ts';
import { type Fix, setValue } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { Mention } from '../../site/mentions.ts';
import { schemaAt } from '../../site/shape.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { subjectAt } from '../../site/shape-words.ts';
import { beginsQuantity } from '../../site/half-typed.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const quantity: Rule = {
  id: 'quantity',
  severity: 'error',
  isSlip: true,
  summary: 'A quantity has no unit or the wrong one, or is zero where there is always some.',
  why: `A quantity is a number, a space and a unit, so that nobody mistakes 6 Mb/s for 6 MB/s, which is eight times as
much. Bit rates count bits in powers of 1000; sizes count bytes, in powers of 1000 (kB, MB, GB, TB) or 1024 (KiB, MiB,
GiB, TiB). Where bits and bytes are mixed up, the fixes offer both readings: the same number, and the same amount.`,
  source: 'Prefixes and units: IEC 80000-13, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const item of site.faulty) {
      for (const mention of item.mentions) {
        if (mention.mention !== 'quantity' || isQuantity(mention.read)) continue;
        report(findingOf(item, mention, mention.read));
      }
    }
  },
};

function findingOf(
  item: Item,
  { keyPath, text, quantity: kind }: Mention & { readonly mention: 'quantity' },
  fault: QuantityFault,
): Finding {
  const texts = suggestions(fault, kind, schemaAt(item.section, item.name, keyPath)?.examples?.[0]);
  return {
    at: placeOf(item, keyPath),
    showAfter: fault.fault === 'nothing' || beginsQuantity(text, kind) ? 'value' : 'keystroke',
    message: sentence(subjectAt(item, keyPath), visible(text, 40), kind, fault, texts),
    acceptAt: acceptAtItem(item),
    fixes: () =>
      texts.map(
        (suggestion, index) =>
          ({
            title:
              index > 0 && fault.fault !== 'no-unit' ? `Write ${suggestion}, the same amount` : `Write ${suggestion}`,
            safe: isTheOnlyReading(fault, texts),
            edits: [setValue(item, keyPath, suggestion)],
          }) satisfies Fix,
      ),
  };
}

/** Whether the fault is only a missing space, a unit spelt out, or a missing unit where the kind has only one. */
function isTheOnlyReading({ fault }: QuantityFault, texts: readonly string[]): boolean {
  return fault === 'no-space' || ((fault === 'no-unit' || fault === 'unknown-unit') && texts.length === 1);
}

/** Units to choose from where there is none, the usual one first. */
const OFFERED: Partial<Record<QuantityKind, readonly string[]>> = {
  'bit-rate': ['Mb/s', 'kb/s', 'Gb/s', 'b/s'],
  'byte-rate': ['MB/s', 'kB/s', 'GB/s'],
  'size': ['GB', 'TB', 'MB', 'B'],
  'length': ['m'],
  'mass': ['kg'],
};

/** From this number on, a bit rate without a unit is in bit/s. */
const IN_BITS = 10_000;

function suggestions(fault: QuantityFault, kind: QuantityKind, example: unknown): readonly string[] {
  if (fault.fault !== 'no-unit') return 'suggestions' in fault ? fault.suggestions : [];
  const number = Number(fault.number);
  if (kind === 'percentage' && number > 0 && number <= 1)
    return [`${Number((number * 100).toFixed(6))} %`, `${fault.number} %`];
  const usual =
    kind === 'bit-rate' && number >= IN_BITS ? 'b/s' : typeof example === 'string' ? example.split(' ')[1] : undefined;
  const offered = OFFERED[kind] ?? unitsOf(kind);
  const units = usual === undefined ? offered : [usual, ...offered.filter((unit) => unit !== usual)];
  return units.map((unit) => `${fault.number} ${unit}`);
}

const OF_KIND: Readonly<Record<QuantityKind, string>> = {
  'bit-rate': 'a bit rate',
  'byte-rate': 'a byte rate',
  'size': 'a size in bytes',
  'duration': 'time',
  'length': 'length',
  'power': 'power',
  'mass': 'mass',
  'apparent-power': 'an apparent power',
  'energy': 'an energy',
  'percentage': 'a part of the whole',
  'frequency': 'frequency',
  'ratio': 'a ratio in dB',
  'level': 'a level',
  'voltage': 'voltage',
  'current': 'current',
  'symbol-rate': 'a symbol rate',
  'area': 'a cross-section',
};

const COUNTED: Partial<Record<QuantityKind, string>> = { 'bit-rate': 'bits', 'byte-rate': 'bytes', 'size': 'bytes' };

function sentence(
  what: string,
  text: string,
  kind: QuantityKind,
  fault: QuantityFault,
  texts: readonly string[],
): string {
  const units = unitsOf(kind);
  switch (fault.fault) {
    case 'not-a-quantity':
      return (
        `${what} is ${text === '' ? 'empty' : text}, which is not a quantity: write a number, a space and ` +
        `${list(units, 'or')}.`
      );
    case 'no-unit':
      return `${what} is ${fault.number}, without a unit. Write ${list(texts, 'or')}.`;
    case 'no-space':
      return `Put one space between the number and the unit: ${fault.suggestions.join(' or ')}.`;
    case 'unknown-unit': {
      const unit = visible(fault.unit, 20);
      if (fault.suggestions.length > 0)
        return `${unit} is not a unit of ${OF_KIND[kind]}. Write ${list(fault.suggestions, 'or')}.`;
      return `${unit} is not a unit of ${OF_KIND[kind]}. Use ${list(units, 'or')}.`;
    }
    case 'wrong-kind': {
      const [number, amount] = fault.suggestions;
      const [found, wanted] = [COUNTED[fault.found], COUNTED[kind]];
      if (found === undefined || wanted === undefined || found === wanted) {
        return `${fault.unit} is a unit of ${OF_KIND[fault.found]}; ${what} is given in ${list(units, 'or')}.`;
      }
      const advice =
        number === undefined
          ? ''
          : ` Write ${number}${amount === undefined ? '' : `, or ${amount} for the same amount`}.`;
      return `${what} is ${text}, which counts ${found}; ${OF_KIND[kind]} counts ${wanted}.${advice}`;
    }
    case 'nothing':
      return `${what} is ${text}, which is none at all. Write how much it is, or leave it out.`;
    case 'not-exact':
      return `${what} is ${text}: too many decimal places. Write fewer.`;
    case 'beyond': {
      const { least, most, unit } = fault.bounds;
      return `${what} is ${text}; it is from ${String(least).replace('-', '−')} ${unit} to ${most} ${unit}. Correct it.`;
    }
    case 'too-large':
      return `${what} is ${text}: too large to be counted.`;
  }
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 MB/s}}
#                                                              ^^^^^^ bitrate is 6 MB/s, which counts bytes; a bit rate counts bits. Write 6 Mb/s, or 48 Mb/s for the same amount.
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s}}
`,
  },
  {
    bad: `
cables:
  - {from: core/1, to: paddock-cam, length: 38}
#                                           ^^ length is 38, without a unit. Write 38 m.
`,
    fixed: `
cables:
  - {from: core/1, to: paddock-cam, length: 38 m}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1Gb/s}}}
#                                           ^^^^^ Put one space between the number and the unit: 1 Gb/s.
`,
    fixed: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
`,
  },
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 2 weeks}
#                                                   ^^^^^^^ weeks is not a unit of time. Write 14 d.
  yard: {stream: yard, volume: archive, keep: 2 fortnights}
#                                             ^^^^^^^^^^^^ fortnights is not a unit of time. Use s, ms, min, h or d.
`,
    good: `
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
  },
];
