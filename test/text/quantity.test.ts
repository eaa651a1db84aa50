import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  type QuantityKind,
  isQuantity,
  quantity,
  readQuantity,
  unitsOf,
  formatQuantity,
} from '../../server/src/text/quantity.ts';

const KINDS: readonly QuantityKind[] = [
  'bit-rate',
  'byte-rate',
  'size',
  'duration',
  'length',
  'power',
  'percentage',
  'frequency',
  'level',
];

describe('Quantities', () => {
  // Source: IEC 80000-13, prefixes in powers of 1000 and 1024, from memory; the SI's time units, from memory.
  for (const [text, kind, value] of [
    ['6 Mb/s', 'bit-rate', 6_000_000],
    ['64 kb/s', 'bit-rate', 64_000],
    ['2.5 Gb/s', 'bit-rate', 2_500_000_000],
    ['120 MB/s', 'byte-rate', 120_000_000],
    ['8 TB', 'size', 8_000_000_000_000],
    ['8 TiB', 'size', 8_796_093_022_208],
    ['1316 B', 'size', 1316],
    ['1.5 KiB', 'size', 1536],
    ['2 s', 'duration', 2000],
    ['90 min', 'duration', 5_400_000],
    ['14 d', 'duration', 1_209_600_000],
    ['38 m', 'length', 38_000],
    ['9.5 W', 'power', 9500],
    ['70 %', 'percentage', 7000],
    ['-12.5 dBm', 'level', -12_500],
    ['48 kHz', 'frequency', 48_000],
  ] as const) {
    it(`${text} is ${value}`, () => assert.equal(quantity(text, kind), value));
  }

  it('are exact where floating point is not', () => {
    assert.equal(quantity('0.1 Mb/s', 'bit-rate'), 100_000);
    assert.equal(quantity('1.001 s', 'duration'), 1001);
    assert.equal(quantity('4.35 GB', 'size'), 4_350_000_000); // 4.35 * 1e9 is 4349999999.9999995
  });

  it('have a fault where they cannot be read', () => {
    for (const [text, kind, fault] of [
      ['fast', 'bit-rate', { fault: 'not-a-quantity' }],
      ['-5 m', 'length', { fault: 'not-a-quantity' }],
      ['1e3 m', 'length', { fault: 'unknown-unit', unit: 'e3', suggestions: [] }],
      ['38', 'length', { fault: 'no-unit', number: '38' }],
      ['6Mb/s', 'bit-rate', { fault: 'no-space', suggestions: ['6 Mb/s'] }],
      ['6  Mb/s', 'bit-rate', { fault: 'no-space', suggestions: ['6 Mb/s'] }],
      ['0.0001 m', 'length', { fault: 'not-exact' }],
      ['9007199254740993 B', 'size', { fault: 'too-large' }],
      ['460 dBµV', 'level', { fault: 'beyond', bounds: { least: -20, most: 150, unit: 'dBµV' } }],
      ['-131 dBm', 'level', { fault: 'beyond', bounds: { least: -20, most: 150, unit: 'dBµV' } }],
      ['27.5 kBd', 'symbol-rate', { fault: 'beyond', bounds: { least: 0.1, most: 100, unit: 'MBd' } }],
    ] as const) {
      const read = readQuantity(text, kind);
      if (fault.fault === 'unknown-unit') assert.equal(isQuantity(read), false, text);
      else assert.deepEqual(read, fault, text);
    }
  });

  it('in bytes where bits belong are offered in both readings', () => {
    assert.deepEqual(readQuantity('6 MB/s', 'bit-rate'), {
      fault: 'wrong-kind',
      unit: 'MB/s',
      found: 'byte-rate',
      suggestions: ['6 Mb/s', '48 Mb/s'],
    });
    assert.deepEqual(readQuantity('6 MBps', 'bit-rate'), {
      fault: 'unknown-unit',
      unit: 'MBps',
      suggestions: ['6 Mb/s', '48 Mb/s'],
    });
    assert.deepEqual(readQuantity('960 Mb/s', 'byte-rate'), {
      fault: 'wrong-kind',
      unit: 'Mb/s',
      found: 'bit-rate',
      suggestions: ['960 MB/s', '120 MB/s'],
    });
  });

  it('with a unit spelt out are offered with its symbol', () => {
    for (const [text, kind, meant] of [
      ['6 Mbps', 'bit-rate', '6 Mb/s'],
      ['6 mbit/s', 'bit-rate', '6 Mb/s'],
      ['2 seconds', 'duration', '2 s'],
      ['14 days', 'duration', '14 d'],
      ['38 metres', 'length', '38 m'],
      ['8 tb', 'size', '8 TB'],
      ['5 percent', 'percentage', '5 %'],
      ['2 weeks', 'duration', '14 d'],
      ['1.5 km', 'length', '1500 m'],
      ['3800 cm', 'length', '38 m'],
      ['2 PB', 'size', '2000 TB'],
    ] as const) {
      const read = readQuantity(text, kind);
      assert.ok('suggestions' in read, text);
      assert.deepEqual(read.suggestions, [meant]);
    }
  });

  it('are read in every unit of their kind, and in no other', () => {
    for (const kind of KINDS) {
      for (const unit of unitsOf(kind)) {
        for (const other of KINDS)
          assert.equal(isQuantity(readQuantity(`3 ${unit}`, other)), other === kind, `3 ${unit} as ${other}`);
      }
    }
  });

  it('suggest only what can be read', () => {
    const unit = fc.constantFrom(
      ...KINDS.flatMap(unitsOf),
      'Mbps',
      'MBps',
      'Kbit/s',
      'hours',
      'gb',
      'Mo/s',
      'kilobytes',
      '°C',
      'x',
    );
    const number = fc.oneof(
      fc.nat(100_000).map(String),
      fc.tuple(fc.nat(999), fc.nat(999)).map(([a, b]) => `${a}.${b}`),
    );
    fc.assert(
      fc.property(
        number,
        fc.constantFrom('', ' ', '  '),
        unit,
        fc.constantFrom(...KINDS),
        (amount, space, name, kind) => {
          const read = readQuantity(`${amount}${space}${name}`, kind);
          if (!('suggestions' in read)) return;
          for (const suggestion of read.suggestions) {
            const again = readQuantity(suggestion, kind);
            assert.ok(
              isQuantity(again) ||
                again.fault === 'not-exact' ||
                again.fault === 'too-large' ||
                again.fault === 'beyond',
              `${amount}${space}${name} suggests ${suggestion}`,
            );
          }
        },
      ),
    );
  });

  it('are written so that they are read back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000_000 }),
        fc.constantFrom('bit-rate' as const, 'byte-rate' as const),
        (value, kind) => {
          assert.equal(quantity(formatQuantity(value, kind), kind), value);
        },
      ),
    );
  });
});
