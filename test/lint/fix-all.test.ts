import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { checkBy } from '../../server/src/lint/check.ts';
import { type ChooseFix, fixAllBy } from '../../server/src/lint/fix-all.ts';
import { unknownKey } from '../../server/src/rules/text/unknown-key.ts';
import { folderOf } from '../site.ts';

const RULES = { rules: [unknownKey], acceptanceRules: [], ids: new Set([unknownKey.id]) };
const FEW = { ...RULES, bounds: { most: 3, named: 3 } };

const toAddress: ChooseFix = ({ at, rule }) =>
  rule === unknownKey ? { title: 'Change to address', safe: true, edits: [{ at, text: 'address' }] } : undefined;

describe('fixing all', () => {
  it('checks a large site once, applies a part of its fixes, and says that it goes on', () => {
    const size = 10_001;
    const cameras = Array.from({ length: size }, (_, i) => `  c${i}: {kind: camera, adress: 10.0.0.1}\n`);
    let checks = 0;
    const { fixes, goesOn, texts } = fixAllBy(
      (folder, _, previous) => {
        checks++;
        return checkBy(RULES, folder, previous);
      },
      folderOf({ a: `devices:\n${cameras.join('')}` }),
      toAddress,
    );
    assert.equal(checks, 1);
    assert.ok(fixes > 1000 && fixes < size);
    assert.equal(texts.get('a')?.match(/ address/g)?.length, fixes);
    assert.ok(goesOn);
  });

  it('looks at all findings where the first of them cannot be fixed', () => {
    const text = `devices:\n${['a', 'b', 'c', 'd', 'e'].map((name) => `  ${name}: {kind: camera, mmm: 1}\n`).join('')}  cam: {kind: camera, adress: 10.0.0.1}\n`;
    const { fixes, goesOn, texts } = fixAllBy(
      (folder, found, previous) => checkBy(found === 'all' ? RULES : FEW, folder, previous),
      folderOf({ a: text }),
      (diagnostic) => (diagnostic.message.includes('adress') ? toAddress(diagnostic) : undefined),
    );
    assert.equal(fixes, 1);
    assert.equal(texts.get('a'), text.replace('adress', 'address'));
    assert.ok(!goesOn);
  });
});
