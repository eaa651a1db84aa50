import assert from 'node:assert/strict';
import { deepFreeze } from './freeze.ts';

describe('a value that is frozen', () => {
  it('throws at any change of an object, list, map or set in it', () => {
    const value = { list: [{ speed: 1 }], byName: new Map([['core', new Set([1])]]) };
    deepFreeze(value);
    const [first] = value.list;
    assert.throws(() => (value.list = []), TypeError);
    assert.throws(() => value.list.push({ speed: 2 }), TypeError);
    assert.throws(() => first !== undefined && (first.speed = 2), TypeError);
    assert.throws(() => value.byName.set('barn', new Set()), TypeError);
    assert.throws(() => value.byName.get('core')?.add(2), TypeError);
    assert.deepEqual(value, { list: [{ speed: 1 }], byName: new Map([['core', new Set([1])]]) });
  });
});
