import assert from 'node:assert/strict';
import { lastEqual, lastList, lastResult, perKey, perObject } from '../../server/src/memo.ts';

describe('what is computed once', () => {
  it('is kept for each object', () => {
    let runs = 0;
    const size = perObject((list: readonly number[]) => {
      runs++;
      return list.length;
    });
    const [a, b] = [[1, 2], [1]];
    assert.deepEqual([size(a), size(b), size(a), runs], [2, 1, 2, 2]);
  });

  it('is computed again for another object that looks the same', () => {
    const copy = perObject((list: readonly number[]) => [...list]);
    assert.notEqual(copy([1]), copy([1]));
  });

  it('is kept where it is undefined', () => {
    let runs = 0;
    const nothing = perObject((_: object) => {
      runs++;
      return undefined;
    });
    const key = {};
    nothing(key);
    nothing(key);
    assert.equal(runs, 1);
  });

  it('is kept for each key, and with its function', () => {
    let runs = 0;
    const sizeOf = perObject((_: object) =>
      perKey(
        (set: ReadonlySet<string>) => [...set].join(),
        (set) => {
          runs++;
          return set.size;
        },
      ),
    );
    const [one, two] = [{}, {}];
    const sizes = [sizeOf(one)(new Set(['a'])), sizeOf(one)(new Set(['a'])), sizeOf(one)(new Set(['a', 'b']))];
    assert.deepEqual([...sizes, sizeOf(two)(new Set(['a'])), runs], [1, 1, 2, 1, 3]);
  });

  it('is given again for the same arguments, and computed anew for others', () => {
    let runs = 0;
    const sum = lastResult((a: { n: number }, b: { n: number }) => {
      runs++;
      return a.n + b.n;
    });
    const [one, two] = [{ n: 1 }, { n: 2 }];
    assert.deepEqual([sum(one, two), sum(one, two), runs], [3, 3, 1]);
    assert.deepEqual([sum(two, two), sum(one, two), runs], [4, 3, 3]);
  });

  it('stays away where the computation throws, so that the next call tries again', () => {
    let fails = true;
    const once = lastResult((value: number) => {
      if (fails) throw new Error('not yet');
      return value;
    });
    assert.throws(() => once(1));
    fails = false;
    assert.equal(once(1), 1);
  });

  it('is the same value as long as it equals the last one', () => {
    const kept = lastEqual<{ n: number }>((a, b) => a.n === b.n);
    const first = kept({ n: 1 });
    assert.equal(kept({ n: 1 }), first);
    const second = kept({ n: 2 });
    assert.deepEqual(second, { n: 2 });
    assert.notEqual(kept({ n: 1 }), first);
  });

  it('is the same list for the same elements', () => {
    const kept = lastList<object>();
    const [a, b] = [{}, {}];
    const first = kept([a, b]);
    assert.equal(kept([a, b]), first);
    assert.notEqual(kept([b, a]), first);
  });
});
