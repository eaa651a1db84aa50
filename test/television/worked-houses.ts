/**
 * Houses of the sorts that people have, with the figures that they should come to.
 *
 * The figures were computed apart from the project, in Python, before it saw them: A·√f + B·f for coax, Friis' formula,
 * k · 290 K · B, and sums of decibels, by the values that the reference gives. In dBµV and dB, to a thousandth.
 */

export interface WorkedHouse {
  readonly is: string;
  readonly text: string;
  readonly points: readonly WorkedPoint[];
}

export type WorkedPoint = readonly [
  at: string,
  multiplex: string,
  level: number,
  noiseFigure: number,
  carrierToNoise: number,
];

export const WORKED: readonly WorkedHouse[] = [
  {
    is: 'masthead amplifier with inserter',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 22, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  b: {system: dvb-t2, channel: 46, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
devices:
  roof: {kind: aerial, receives: {a: 48 dBµV, b: 44 dBµV}}
  filter: {kind: filter, passes: 470-694 MHz, loss: 1.2 dB}
  amp: {kind: amplifier, gain: 16 dB, noise-figure: 1.8 dB, powered-by: out, supply: 12 V, current: 40 mA}
  psu: {kind: power-inserter, supply: 12 V, current: 100 mA, loss: 0.7 dB}
  split: {kind: splitter, ways: 2, loss: 4.2 dB}
  hall: {kind: outlet, loss: 0.8 dB}
  den: {kind: outlet, loss: 0.8 dB}
  tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: roof, to: filter/in, type: coax-6, length: 1 m}
  - {from: filter/out, to: amp/in, type: coax-6, length: 0.5 m}
  - {from: amp/out, to: split/in, type: coax-6, length: 18 m, through: [psu]}
  - {from: split/out-1, to: hall/in, type: coax-6, length: 6 m}
  - {from: split/out-2, to: den/in, type: coax-59, length: 15 m}
  - {from: den/tv, to: tv/rf, type: coax-59, length: 1.5 m}
`,
    points: [
      ['hall/tv', 'a', 53.307, 3.73, 40.682],
      ['hall/tv', 'b', 48.593, 3.861, 36.55],
      ['tv/rf', 'a', 51.165, 6.006, 38.406],
      ['tv/rf', 'b', 46.052, 6.597, 33.815],
    ],
  },
  {
    is: 'quattro with multiswitch',
    text: `
multiplexes:
  v: {system: dvb-s2, frequency: 12188 MHz, polarisation: horizontal, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
  w: {system: dvb-s, frequency: 10714 MHz, polarisation: vertical, symbol-rate: 22 MBd, code-rate: 5/6}
devices:
  dish: {kind: lnb, type: quattro, receives: {v: 74 dBµV, w: 72 dBµV}, current: 150 mA}
  sw: {kind: multiswitch, ways: 8, loss: {950 MHz: 2 dB, 2150 MHz: 6 dB}}
  box: {kind: tuner, inputs: {sat: {noise-figure: 11 dB, supplies: 300 mA}}, tuners: {1: {systems: [dvb-s, dvb-s2]}}}
cables:
  - {from: dish/hh, to: sw/hh, type: coax-6, length: 9 m}
  - {from: dish/vl, to: sw/vl, type: coax-6, length: 9 m}
  - {from: sw/out-3, to: box/sat, type: coax-6, length: 21 m}
`,
    points: [
      ['box/sat', 'v', 61.602, 23.398, 41.433],
      ['box/sat', 'w', 63.574, 19.426, 44.375],
    ],
  },
  {
    is: 'cable television',
    text: `
multiplexes:
  c1: {system: dvb-c, frequency: 114 MHz, modulation: 256qam, symbol-rate: 6.9 MBd}
  c2: {system: dvb-c, frequency: 746 MHz, modulation: 64qam, symbol-rate: 6.875 MBd}
devices:
  street: {kind: aerial, receives: {c1: 72 dBµV, c2: 75 dBµV}, quality: {c1: 38 dB}}
  house-amp: {kind: amplifier, gain: 15 dB, noise-figure: 6 dB, frequencies: 85-1006 MHz}
  split: {kind: splitter, ways: 3, loss: 6.3 dB}
  box: {kind: tuner, inputs: {rf: {}}, tuners: {1-4: {systems: [dvb-c]}}}
cables:
  - {from: street, to: house-amp/in, type: coax-11, length: 8 m}
  - {from: house-amp/out, to: split/in, type: coax-6, length: 2 m}
  - {from: split/out-2, to: box/rf, type: coax-6, length: 24 m}
`,
    points: [
      ['box/rf', 'c2', 77.892, 9.124, 62.727],
      ['box/rf', 'c1', 78.478, 7.571, 37.98],
    ],
  },
  {
    is: 'band III and UHF',
    text: `
multiplexes:
  v: {system: dvb-t, channel: 8, modulation: 64qam, code-rate: 3/4, guard-interval: 1/16}
  u: {system: dvb-t2, channel: 35, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
devices:
  low: {kind: aerial, receives: {v: 55 dBµV}}
  high: {kind: aerial, receives: {u: 52 dBµV}}
  join: {kind: combiner, inputs: {vhf: 174-230 MHz, uhf: 470-694 MHz}, loss: 0.6 dB}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: low, to: join/vhf, type: coax-6, length: 3 m}
  - {from: high, to: join/uhf, type: coax-6, length: 2 m}
  - {from: join/out, to: tv/rf, type: coax-6, length: 17 m}
`,
    points: [
      ['tv/rf', 'v', 52.508, 8.492, 41.5],
      ['tv/rf', 'u', 48.275, 9.725, 38.687],
    ],
  },
  {
    is: 'a line of taps',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 30, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  roof: {kind: aerial, receives: {a: 60 dBµV}}
  amp: {kind: amplifier, gain: 28 dB, noise-figure: 5 dB, max-output: 112 dBµV}
  t1: {kind: tap, tap-loss: 20 dB, loss: 0.8 dB}
  t2: {kind: tap, tap-loss: 16 dB, loss: 1 dB}
  t3: {kind: tap, tap-loss: 12 dB}
  end: {kind: outlet}
cables:
  - {from: roof, to: amp/in, type: coax-6, length: 6 m}
  - {from: amp/out, to: t1/in, type: coax-6, length: 10 m}
  - {from: t1/out, to: t2/in, type: coax-6, length: 3 m}
  - {from: t2/out, to: t3/in, type: coax-6, length: 3 m}
  - {from: t3/out, to: end/in, type: coax-6, length: 3 m}
`,
    points: [
      ['t1/tap-1', 'a', 65.463, 6.252, 50.159],
      ['t2/tap-1', 'a', 68.187, 6.114, 50.298],
      ['t3/tap-1', 'a', 70.711, 6.042, 50.37],
      ['end/tv', 'a', 79.952, 5.96, 50.451],
    ],
  },
  {
    is: 'twenty outlets, active',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 24, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  roof: {kind: aerial, receives: {a: 55 dBµV}}
  amp-1: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB}
  amp-2: {kind: amplifier, gain: 22 dB, noise-figure: 6 dB}
  main: {kind: splitter, ways: 4, loss: 8 dB}
  floor: {kind: splitter, ways: 5, loss: 9.5 dB}
  o: {kind: outlet, loss: 1 dB}
  tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: roof, to: amp-1/in, type: coax-6, length: 1 m}
  - {from: amp-1/out, to: amp-2/in, type: coax-6, length: 30 m}
  - {from: amp-2/out, to: main/in, type: coax-11, length: 5 m}
  - {from: main/out-2, to: floor/in, type: coax-11, length: 14 m}
  - {from: floor/out-5, to: o/in, type: coax-6, length: 16 m}
  - {from: o/tv, to: tv/rf, type: coax-59, length: 2 m}
`,
    points: [['tv/rf', 'a', 69.16, 2.789, 48.623]],
  },
  {
    is: 'an equaliser on a long run',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 21, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  b: {system: dvb-t, channel: 47, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  roof: {kind: aerial, receives: {a: 75 dBµV, b: 75 dBµV}}
  eq: {kind: equaliser, slope: 6 dB, frequencies: 470-694 MHz, loss: 1 dB}
  o: {kind: outlet, loss: 1 dB}
cables:
  - {from: roof, to: eq/in, type: coax-6, length: 60 m}
  - {from: eq/out, to: o/in, type: coax-6, length: 5 m}
`,
    points: [
      ['o/tv', 'a', 57.521, 17.479, 53.932],
      ['o/tv', 'b', 61.121, 13.879, 57.532],
    ],
  },
  {
    is: 'diplexers',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  s: {system: dvb-s2, frequency: 11023 MHz, polarisation: horizontal, symbol-rate: 23 MBd, modulation: 8psk, code-rate: 3/4}
devices:
  roof: {kind: aerial, receives: {a: 66 dBµV}}
  dish: {kind: lnb, receives: {s: 77 dBµV}}
  up: {kind: diplexer, loss: 1.3 dB}
  down: {kind: diplexer, loss: 1.3 dB}
  box: {kind: tuner, inputs: {rf: {noise-figure: 6 dB}, sat: {noise-figure: 10 dB, supplies: 300 mA}}, tuners: {1: {systems: [dvb-s2], input: sat}, 2: {systems: [dvb-t], input: rf}}}
cables:
  - {from: roof, to: up/in-tv, type: coax-6, length: 4 m}
  - {from: dish, to: up/in-sat, type: coax-6, length: 5 m}
  - {from: up/out, to: down/out, type: coax-6, length: 20 m}
  - {from: down/in-tv, to: box/rf, type: coax-6, length: 1 m}
  - {from: down/in-sat, to: box/sat, type: coax-6, length: 1 m}
`,
    points: [
      ['box/rf', 'a', 59.147, 12.853, 49.558],
      ['box/sat', 's', 68.013, 18.987, 49.62],
    ],
  },
  {
    is: 'from a map of field strength',
    text: `
multiplexes:
  a: {system: dvb-t2, channel: 43, modulation: 256qam, code-rate: 3/5, net-rate: 36 Mb/s, extended: true}
devices:
  roof: {kind: aerial, gain: 11 dB, field: {a: 56 dBµV}}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: roof, to: tv/rf, type: coax-11, length: 40 m}
`,
    points: [['tv/rf', 'a', 39.936, 10.491, 30.257]],
  },
  {
    is: 'coax by its data sheet',
    text: `
multiplexes:
  a: {system: dvb-t, channel: 33, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  s: {system: dvb-s, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, code-rate: 3/4}
devices:
  roof: {kind: aerial, receives: {a: 60 dBµV}}
  dish: {kind: lnb, type: twin, receives: {s: 75 dBµV}}
  box: {kind: tuner, inputs: {rf: {noise-figure: 5 dB}, sat: {noise-figure: 9 dB, supplies: 300 mA}}, tuners: {1: {systems: [dvb-s], input: sat}, 2: {systems: [dvb-t], input: rf}}}
cables:
  - {from: roof, to: box/rf, attenuation: {200 MHz: 8.6 dB, 860 MHz: 18.4 dB}, length: 35 m}
  - {from: dish/out-1, to: box/sat, attenuation: {200 MHz: 8.6 dB, 860 MHz: 18.4 dB}, length: 28 m}
`,
    points: [
      ['box/rf', 'a', 55.067, 9.933, 46.479],
      ['box/sat', 's', 68.97, 15.03, 50.801],
    ],
  },
  {
    is: 'ATSC in North America',
    text: `
site: {channel-plan: north-america}
multiplexes:
  a: {system: atsc, channel: 9}
  b: {system: atsc, channel: 33}
devices:
  roof: {kind: aerial, receives: {a: -8 dBmV, b: -14 dBmV}}
  amp: {kind: amplifier, gain: 12 dB, noise-figure: 3 dB}
  split: {kind: splitter, ways: 2}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: roof, to: amp/in, type: coax-6, length: 10 m}
  - {from: amp/out, to: split/in, type: coax-6, length: 3 m}
  - {from: split/out-1, to: tv/rf, type: coax-6, length: 20 m}
`,
    points: [
      ['tv/rf', 'a', 56.956, 6.01, 41.433],
      ['tv/rf', 'b', 48.568, 7.48, 35.963],
    ],
  },
  {
    is: 'ISDB-T in Brazil',
    text: `
site: {channel-plan: brazil}
multiplexes:
  a: {system: isdb-t, channel: 27, modulation: 64qam, code-rate: 3/4, guard-interval: 1/8}
devices:
  roof: {kind: aerial, receives: {a: 58 dBµV}}
  block: {kind: earth-block}
  gap: {kind: isolator}
  split: {kind: splitter, ways: 8}
  tv: {kind: display, inputs: {rf: {}}}
cables:
  - {from: roof, to: split/in, type: coax-6, length: 22 m, through: [block, gap]}
  - {from: split/out-8, to: tv/rf, type: coax-59, length: 9 m}
`,
    points: [['tv/rf', 'a', 39.222, 24.778, 30.984]],
  },
];
