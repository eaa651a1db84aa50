// Names in sentences: a device may be called whatever it likes, and is still told from the words around it.
import assert from 'node:assert/strict';
import { asName, few } from '../../server/src/text/words.ts';
import { diagnosticsOf } from '../site.ts';

describe('Names in sentences', () => {
  it('stand in quotes where they read as words', () => {
    assert.deepEqual(['one', 'The', 'switch', 'hall-screen', 'core'].map(asName), [
      '‘one’',
      '‘The’',
      '‘switch’',
      'hall-screen',
      'core',
    ]);
    assert.equal(few(['a', 'b', 'one', 'two']), '‘a’, b and 2 others');
  });

  it('do so in what is found, and not in paths', () => {
    const text = `
devices:
  switch: {kind: switch, igmp-snooping: true, ports: {1-4: {speed: 100 Mb/s}}}
  one: {kind: camera, speed: 10 Mb/s, poe: {class: 3}}
  a: {kind: server, speed: 1 Gb/s}
cables:
  - {from: switch/1, to: one, type: cat6, length: 3 m}
  - {from: switch/2, to: a, type: cat6, length: 3 m}
streams:
  the: {source: one, transport: rtsp, port: 554, video: {codec: h264, bitrate: 12 Mb/s}, receivers: [a]}
  all: {source: a, carries: nothing, receivers: []}
`;
    const messages = diagnosticsOf({ 'home.site.yaml': text }).map(({ rule, message }) => `${rule.id}: ${message}`);
    const of = (id: string): string => messages.find((message) => message.startsWith(`${id}: `)) ?? messages.join('\n');
    assert.match(of('poe-missing'), /: ‘one’ stays dark: switch\/1 feeds no power\./);
    assert.match(of('no-receivers'), /Nobody receives ‘all’/);
    assert.match(of('rate-too-high'), /: ‘the’ is 12 Mb\/s, and one\/eth, which sends it, does 10 Mb\/s\./);
  });
});
