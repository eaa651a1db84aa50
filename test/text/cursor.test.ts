// What a cursor stands in, in text that is being typed.
import assert from 'node:assert/strict';
import { cursorIn } from '../../server/src/text/cursor.ts';

interface Expected {
  readonly at: string;
  readonly path: string;
  readonly keys?: string;
  readonly typed?: string;
}

function at(text: string, expected: Expected | undefined, root: readonly string[] = ['devices']): void {
  it(JSON.stringify(text), () => {
    const offset = text.indexOf('$0');
    const plain = text.replace('$0', '');
    const found = cursorIn(plain, offset, root);
    if (expected === undefined || found === undefined) {
      assert.equal(found, expected);
      return;
    }
    const { keys = '', typed = '', ...rest } = expected;
    assert.deepEqual(
      {
        at: found.at,
        path: found.path.join('.'),
        keys: found.keys.join(' '),
        typed: plain.slice(found.start, found.end),
      },
      { ...rest, keys, typed },
    );
  });
}

describe('A cursor stands', () => {
  describe('where a key of the file goes', () => {
    at('$0', { at: 'key', path: '' }, []);
    at('dev$0', { at: 'key', path: '', typed: 'dev' }, []);
    at('site:\n  name: x\n$0', { at: 'key', path: '', keys: 'site' }, []);
    at('  core: {kind: switch}\n\n$0', { at: 'key', path: '' }, []);
  });

  describe('in an item in block style', () => {
    at('  core:\n    $0', { at: 'start', path: 'devices.core' });
    at('  core:\n    $0\n    kind: switch\n    ports: {}\n', { at: 'key', path: 'devices.core', keys: 'kind ports' });
    at('  core:\n    kind: switch\n    sp$0\n    speed: 1 Gb/s', {
      at: 'key',
      path: 'devices.core',
      keys: 'kind speed',
      typed: 'sp',
    });
    at('  core:\n    ki$0nd: switch\n    speed: 1 Gb/s', {
      at: 'key',
      path: 'devices.core',
      keys: 'speed',
      typed: 'kind',
    });
    at('  core:\n    kind: $0', { at: 'value', path: 'devices.core.kind' });
    at('  core:\n    kind: sw$0 # the old one', { at: 'value', path: 'devices.core.kind', typed: 'sw' });
    at('  core:\n    speed: 1 $0\n    kind: switch', { at: 'value', path: 'devices.core.speed', typed: '1 ' });
    at('  core:\n    ports:\n      1-8: {vlan: video}\n      $0', {
      at: 'key',
      path: 'devices.core.ports',
      keys: '1-8',
    });
    at('  core:\n    ports:\n      1-8: {vlan: video}\n    $0', { at: 'key', path: 'devices.core', keys: 'ports' });
    at('  core:\n    ports:\n      1-8: {vlan: video}\n  $0', { at: 'key', path: 'devices', keys: 'core' });
    at('  core:\r\n    kind: switch\r\n    $0\r\n', { at: 'key', path: 'devices.core', keys: 'kind' });
  });

  describe('in brackets, closed or not', () => {
    at('  cam: {$0', { at: 'key', path: 'devices.cam' });
    at('  cam: {kind: cam$0', { at: 'value', path: 'devices.cam.kind', typed: 'cam' });
    at('  cam: {kind: camera, $0', { at: 'key', path: 'devices.cam', keys: 'kind' });
    at('  cam: {kind: camera, ad$0, speed: 1 Gb/s}', {
      at: 'key',
      path: 'devices.cam',
      keys: 'kind speed',
      typed: 'ad',
    });
    at('  cam: {kind: $0 speed: 1 Gb/s}', { at: 'value', path: 'devices.cam.kind' });
    at('  cam: {kind: cam$0 speed: 1 Gb/s}', { at: 'value', path: 'devices.cam.kind', typed: 'cam' });
    at('  cam: {speed: 1$0 Gb/s, poe: {class: 3}}', { at: 'value', path: 'devices.cam.speed', typed: '1 Gb/s' });
    at('  cam: {kind: camera, poe: {$0}, mac: x}', { at: 'key', path: 'devices.cam.poe' });
    at('  core: {ports: {\n    $0\n  }}', { at: 'key', path: 'devices.core.ports' });
    at('  core:\n    ports:\n      1: {speed: 1 Gb/s\n      2: {vlan: $0}', {
      at: 'value',
      path: 'devices.core.ports.2.vlan',
    });
    at('devices: {cam: {ki$0}}', { at: 'key', path: 'devices.cam', typed: 'ki' }, []);
  });

  describe('in lists', () => {
    at('  - {from: core/$0', { at: 'value', path: 'cables.0.from', typed: 'core/' }, ['cables']);
    at('  - $0', { at: 'start', path: 'cables.0' }, ['cables']);
    at('  - {from: a, to: b}\n  $0', { at: 'element', path: 'cables.1' }, ['cables']);
    at('  - from: core/1\n    $0\n    type: cat6', { at: 'key', path: 'cables.0', keys: 'from type' }, ['cables']);
    at('  p:\n    receivers: [recorder, $0]', { at: 'value', path: 'streams.p.receivers.1' }, ['streams']);
    at(
      '  p:\n    receivers:\n    - recorder\n    - ki$0',
      { at: 'start', path: 'streams.p.receivers.1', typed: 'ki' },
      ['streams'],
    );
    at('  p:\n    receivers:\n      - recorder\n      $0', { at: 'element', path: 'streams.p.receivers.1' }, [
      'streams',
    ]);
  });

  describe('nowhere', () => {
    at('  core:\n    kind: switch # $0', undefined);
    at('  core:\n    # $0', undefined);
    at('  core:\n    description: |\n      what $0 is\n    kind: switch', undefined);
    at('  core:\n    kind: switch\n      $0', undefined);
  });

  it('after a colon or a dash the space is missing', () => {
    assert.equal(cursorIn('  core:\n    kind:', 17, ['devices'])?.needsSpace, true);
    assert.equal(cursorIn('  -', 3, ['cables'])?.needsSpace, true);
    assert.equal(cursorIn('  core:\n    kind: ', 18, ['devices'])?.needsSpace, false);
  });
});
