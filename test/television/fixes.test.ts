/** Fixes that open a coax for a part, or join two: in whatever style the site is written, less is wrong afterwards. */

import assert from 'node:assert/strict';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { type Texts, diagnosticsOf, edited } from '../site.ts';

type Part = readonly [name: string, keys: Readonly<Record<string, string>>];

interface House {
  readonly multiplexes: readonly Part[];
  readonly devices: readonly Part[];
  readonly cables: readonly Readonly<Record<string, string>>[];
}

const MUX = { 'system': 'dvb-t', 'modulation': '64qam', 'code-rate': '2/3', 'guard-interval': '1/32' };
const WEAK: House = {
  multiplexes: [['mux-a', { ...MUX, channel: '46' }]],
  devices: [
    ['aerial', { kind: 'aerial', receives: '{mux-a: 43 dBµV}' }],
    ['splitter', { kind: 'splitter', ways: '4', loss: '7.5 dB', terminated: '[out-2, out-3, out-4]' }],
    [
      'amp',
      {
        'kind': 'amplifier',
        'gain': '20 dB',
        'noise-figure': '4 dB',
        'max-output': '100 dBµV',
        'frequencies': '470-694 MHz',
      },
    ],
    ['outlet', { kind: 'outlet', loss: '1 dB' }],
    ['tuner', { kind: 'display', inputs: '{rf: {noise-figure: 6 dB}}' }],
  ],
  cables: [
    { from: 'aerial', to: 'splitter/in', type: 'coax-6', length: '28 m' },
    { from: 'splitter/out-1', to: 'amp/in', type: 'coax-6', length: '14 m' },
    { from: 'amp/out', to: 'outlet/in', type: 'coax-6', length: '1 m' },
    { from: 'outlet/tv', to: 'tuner/rf', type: 'coax-59', length: '2 m' },
  ],
};
const STRONG: House = {
  multiplexes: [
    ['mux-a', { ...MUX, channel: '46' }],
    ['mux-b', { ...MUX, channel: '40' }],
  ],
  devices: [
    ['aerial', { kind: 'aerial', receives: '{mux-a: 80 dBµV, mux-b: 79 dBµV}' }],
    [
      'amp',
      {
        'kind': 'amplifier',
        'gain': '20 dB',
        'noise-figure': '4 dB',
        'max-output': '98 dBµV',
        'frequencies': '470-694 MHz',
      },
    ],
    ['splitter', { kind: 'splitter', ways: '4', loss: '7.5 dB', terminated: '[out-2, out-3, out-4]' }],
    ['outlet', { kind: 'outlet', loss: '1 dB' }],
    ['tuner', { kind: 'display', inputs: '{rf: {max-input: 80 dBµV}}' }],
  ],
  cables: [
    { from: 'aerial', to: 'amp/in', type: 'coax-6', length: '3 m' },
    { from: 'amp/out', to: 'splitter/in', type: 'coax-6', length: '25 m' },
    { from: 'splitter/out-1', to: 'outlet/in', type: 'coax-6', length: '1 m' },
    { from: 'outlet/tv', to: 'tuner/rf', type: 'coax-59', length: '2 m' },
  ],
};

const braced = (keys: Readonly<Record<string, string>>): string =>
  `{${Object.entries(keys)
    .map(([key, value]) => `${key}: ${value}`)
    .join(', ')}}`;
const lines = (keys: Readonly<Record<string, string>>, indent: string): string =>
  Object.entries(keys)
    .map(([key, value]) => `${indent}${key}: ${value}\n`)
    .join('');

type Style = (house: House) => Texts;
const FILE = 'h.site.yaml';
const STYLES: Readonly<Record<string, Style>> = {
  'items in braces': ({ multiplexes, devices, cables }) => ({
    [FILE]:
      `multiplexes:\n${multiplexes.map(([name, keys]) => `  ${name}: ${braced(keys)}\n`).join('')}` +
      `devices:\n${devices.map(([name, keys]) => `  ${name}: ${braced(keys)}   # as it is\n`).join('')}` +
      `cables:\n${cables.map((keys) => `  - ${braced(keys)}   # ${keys.from ?? ''}\n`).join('')}`,
  }),
  'a line for each key': ({ multiplexes, devices, cables }) => ({
    [FILE]:
      `multiplexes:\n${multiplexes.map(([name, keys]) => `    ${name}:\n${lines(keys, '        ')}`).join('')}` +
      `devices:\n${devices.map(([name, keys]) => `    ${name}:\n${lines(keys, '        ')}`).join('')}` +
      `cables:\n${cables.map((keys) => `-   ${lines(keys, '    ').trimStart()}`).join('')}`,
  }),
  'sections in braces and brackets': ({ multiplexes, devices, cables }) => ({
    [FILE]:
      `multiplexes: {${multiplexes.map(([name, keys]) => `${name}: ${braced(keys)}`).join(', ')}}\n` +
      `devices: {\n  ${devices.map(([name, keys]) => `${name}: ${braced(keys)}`).join(',\n  ')}\n}\n` +
      `cables: [\n  ${cables.map(braced).join(',\n  ')}\n]\n`,
  }),
};
const split: Style = (house) => {
  const [text = ''] = Object.values(STYLES['items in braces']?.(house) ?? {});
  const at = text.indexOf('cables:');
  return { [FILE]: text.slice(0, at), 'cables.site.yaml': text.slice(at).trimEnd() };
};
const all: readonly (readonly [string, Style])[] = [
  ...Object.entries(STYLES),
  ['two files, without a line break at the end', split],
  [
    'line breaks of Windows',
    (house) => ({ [FILE]: (STYLES['a line for each key']?.(house)[FILE] ?? '').replaceAll('\n', '\r\n') }),
  ],
  [
    'cables the other way round',
    ({ cables, ...house }) =>
      STYLES['items in braces']?.({
        ...house,
        cables: cables.map(({ from = '', to = '', ...keys }) => ({ from: to, to: from, ...keys })),
      }) ?? {},
  ],
];

const told = (texts: Texts): string[] => diagnosticsOf(texts).map(({ rule, severity }) => `${severity} ${rule.id}`);
const fixesOf = (found: readonly Diagnostic[]): { title: string; texts: (before: Texts) => Texts }[] =>
  found.flatMap(({ fixes }) =>
    (fixes?.() ?? []).map(({ title, edits }) => ({ title, texts: (before: Texts) => edited(before, edits) })),
  );

describe('Fixes of an aerial system', () => {
  for (const [name, style] of all) {
    describe(name, () => {
      it('move an amplifier that comes after the loss, to the aerial or in front of the splitter', () => {
        const texts = style(WEAK);
        assert.deepEqual(told(texts), ['warning amplifier-after-loss', 'warning carrier-to-noise']);
        const fixes = fixesOf(diagnosticsOf(texts).filter(({ rule }) => rule.id === 'amplifier-after-loss'));
        assert.deepEqual(
          fixes.map(({ title }) => title),
          ['Move amp to ‘aerial’', 'Move amp in front of splitter/in'],
        );
        for (const fix of fixes) assert.deepEqual(told(fix.texts(texts)), [], fix.title);
      });

      it('take out an amplifier, or put an attenuator in front of it', () => {
        const texts = style(STRONG);
        assert.deepEqual(told(texts), ['information amplifier-not-needed', 'error amplifier-overdriven']);
        const fixes = fixesOf(diagnosticsOf(texts).filter(({ rule }) => rule.id.startsWith('amplifier-')));
        assert.deepEqual(
          fixes.map(({ title }) => title),
          ['Take amp out', 'Take amp out', 'Put an attenuator of 15 dB in front of amp/in'],
        );
        const [out, , pad] = fixes.map((fix) => fix.texts(texts));
        assert.deepEqual(told(out ?? {}), []);
        assert.deepEqual(told(pad ?? {}), ['information amplifier-not-needed']);
      });
    });
  }

  it('let current pass an attenuator that stands in its way', () => {
    const text = (loss: string): string => `
multiplexes:
  sat: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
devices:
  dish: {kind: lnb, receives: {sat: ${loss}}, current: 150 mA}
  box: {kind: tuner, address: 10.0.0.9, inputs: {sat: {supplies: 400 mA, max-input: 80 dBµV}}, tuners: {1: {systems: [dvb-s2]}}}
cables:
  - {from: dish, to: box/sat, type: coax-6, length: 5 m, core: copper}
`;
    const texts = { [FILE]: text('86 dBµV') };
    const [pad] = fixesOf(diagnosticsOf(texts));
    const after = pad?.texts(texts) ?? {};
    assert.match(after[FILE] ?? '', /box-pad: \{kind: attenuator, loss: 6 dB, power-pass: true\}/);
    assert.deepEqual(told(after), []);
  });
});
