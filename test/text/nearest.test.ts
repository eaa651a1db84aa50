import assert from 'node:assert/strict';
import { nearest, onlyNear } from '../../server/src/text/nearest.ts';

describe('the only name that a text may mean', () => {
  const only = (text: string, names: readonly string[]): string | undefined => onlyNear(text, nearest(text, names));

  it('is one that is a slip of letters away', () => {
    assert.equal(only('camra', ['camera', 'server']), 'camera');
    assert.equal(only('Switch', ['switch', 'server']), 'switch');
    assert.equal(only('h-264', ['h264']), 'h264');
  });

  it('is none with another digit: that is another thing', () => {
    assert.equal(only('vp8', ['vp9', 'h264']), undefined);
    assert.equal(only('bt-type-3', ['af', 'at', 'bt', 'bt-type-4']), undefined);
    assert.equal(only('h246', ['h264']), undefined);
  });

  it('is none where there are two', () => assert.equal(only('ca', ['cam', 'car']), undefined));
});
