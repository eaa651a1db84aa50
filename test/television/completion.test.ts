import assert from 'node:assert/strict';
import { check } from '../../server/src/check.ts';
import { complete } from '../../server/src/features/completion/completion.ts';
import { folderOf } from '../site.ts';

/** What is offered at the bar. */
function offered(text: string): string[] {
  const offset = text.indexOf('|');
  const folder = folderOf({ 'h.site.yaml': text.replace('|', '') });
  const [file] = folder.files;
  assert.ok(file);
  const found = complete(check(folder), file, offset, { schemaFeatures: true });
  return (found?.offers ?? []).map(({ label, detail }) => (detail === undefined ? label : `${label} ${detail}`));
}

// Source: EN 300 744 and EN 302 307-1 for what a system has, EN 300 744's channels of 8 MHz at 306 + 8 · N MHz.
describe('Completion of television', () => {
  it('offers the modulations, code rates and guard intervals of the system', () => {
    const of = (rest: string): string[] => offered(`multiplexes:\n  a: {${rest}}\n`);
    assert.deepEqual(of('system: dvb-t, modulation: |'), ['qpsk', '16qam', '64qam']);
    assert.deepEqual(of('system: dvb-t, code-rate: |'), ['1/2', '2/3', '3/4', '5/6', '7/8']);
    assert.deepEqual(of('system: dvb-t, guard-interval: |'), ['1/4', '1/8', '1/16', '1/32']);
    assert.deepEqual(of('system: dvb-s2, modulation: 16apsk, code-rate: |'), [
      '2/3',
      '3/4',
      '4/5',
      '5/6',
      '8/9',
      '9/10',
    ]);
  });

  it('offers the channels of the plan that are not taken, with their frequencies', () => {
    const found = offered('multiplexes:\n  a: {system: dvb-t, channel: 46}\n  b: {system: dvb-t, channel: |}\n');
    assert.ok(found.includes('21 474 MHz') && found.includes('48 690 MHz'));
    assert.ok(!found.some((one) => one.startsWith('46 ')));
  });

  it('offers the bands that a filter may pass', () =>
    assert.match(offered('devices:\n  f: {kind: filter, passes: |}\n').join(), /470-694 MHz UHF/));
});
