// The outline, the names somebody looks for, folding, growing selections, links and coloured names of a file.
import assert from 'node:assert/strict';
import { spanAt } from '../site.ts';
import { folds } from '../../server/src/features/folding.ts';
import { ruleLinks } from '../../server/src/features/links.ts';
import { selections } from '../../server/src/features/selection.ts';
import { type SymbolNode, documentSymbols, siteSymbols } from '../../server/src/features/symbols.ts';
import { nameTokens } from '../../server/src/features/tokens.ts';
import { atCursor, shown } from '../cursor.ts';

const SITE = `$0# The house
# and its stable.
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, querier: core}   # cameras

devices:
  # the big one
  # under the stairs
  core:
    kind: switch
    ports:
      1-8: {speed: 1 Gb/s, vlan: video}
      uplink:
        speed: 1 Gb/s
        trunk: [video]

  paddock-cam: {kind: camera}

cables:
  - {from: core/1, to: paddock-cam, type: cat6}
  - from: core/uplink
    to: nowhere
streams: {paddock: {source: paddock-cam, group: 239.192.20.31}}
lint:
  rules: {cable-length: off, no-such-rule: off}
  accept:
    - {rule: port-speed-mismatch, at: paddock-cam, because: it is old}
`;

const { checked, file } = atCursor(SITE);

describe('The outline of a file', () => {
  const outline = (nodes: readonly SymbolNode[], depth = 0): string[] =>
    nodes.flatMap(({ name, detail, children }) => [
      `${'  '.repeat(depth)}${name}${detail === '' ? '' : ` (${detail})`}`,
      ...outline(children, depth + 1),
    ]);

  it('has the sections, their items, and the ports of devices', () => {
    assert.deepEqual(outline(documentSymbols(file)), [
      'vlans',
      '  video (192.168.20.0/24)',
      'devices',
      '  core (switch)',
      '    1-8 (video)',
      '    uplink',
      '  paddock-cam (camera)',
      'cables',
      '  core/1 – paddock-cam (cat6)',
      '  core/uplink – nowhere',
      'streams',
      '  paddock (239.192.20.31)',
      'lint',
      '  rules',
      '  accept',
    ]);
  });

  it('keeps each name inside of what it names, and each child inside of its parent', () => {
    const inside = (nodes: readonly SymbolNode[], from: number, to: number): void => {
      for (const { name, at, whole, children } of nodes) {
        const { start, end } = spanAt(whole);
        const head = spanAt(at);
        assert.ok(from <= start && end <= to, `${name} in its parent`);
        assert.ok(start <= head.start && head.end <= end, `the name of ${name}`);
        inside(children, start, end);
      }
    };
    inside(documentSymbols(file), 0, file.text.length);
  });

  for (const text of [
    'devices:\n  core: {kind: sw$0',
    'devices:\n  $0',
    '$0',
    'cables:\n  - {from: $0\n  - {',
    'streams: {paddock: $0',
  ]) {
    it(`of ${JSON.stringify(text)} does not fail`, () =>
      assert.ok(Array.isArray(documentSymbols(atCursor(text).file))));
  }
});

describe('Names of a site that somebody looks for', () => {
  const named = (query: string): string[] =>
    siteSymbols(checked.plan.site, query).map(({ name, kind, at }) => `${kind} ${name} at ${shown(at, file)}`);

  it('have the letters in their order', () => {
    assert.deepEqual(named('pad'), ['devices paddock-cam at 17: paddock-cam', 'streams paddock at 23: paddock']);
    assert.deepEqual(named('PDC'), named('pad'));
    assert.deepEqual(named('pcam'), ['devices paddock-cam at 17: paddock-cam']);
  });

  it('are ports too once there is a slash', () =>
    assert.deepEqual(named('core/u'), ['ports core/uplink at 13: uplink']));
});

describe('Folding', () => {
  it('folds sections, items, collections and comments, each to its last line', () => {
    const lines = folds(file).map(
      ({ first, last, isComment }) => `${first + 1}-${last + 1}${isComment ? ' comment' : ''}`,
    );
    assert.deepEqual(lines, [
      '1-2 comment',
      '3-4',
      '6-17',
      '7-8 comment',
      '9-15',
      '11-15',
      '13-15',
      '19-22',
      '21-22',
      '24-27',
      '26-27',
    ]);
  });
});

describe('A selection', () => {
  it('grows from the word to its entry, the brackets, the item, the section and the file', () => {
    const at = atCursor('vlans:\n  video: {id: 20, querier: co$0re}\n  house: {id: 10}\n');
    const grown = selections(at.file, at.offset).map(({ start, end }) => at.file.text.slice(start, end));
    assert.deepEqual(grown, [
      'core',
      'querier: core',
      'id: 20, querier: core',
      '{id: 20, querier: core}',
      'video: {id: 20, querier: core}',
      'vlans:\n  video: {id: 20, querier: core}\n  house: {id: 10}',
      at.file.text,
    ]);
  });

  it('grows at every place, each step around the one before', () => {
    for (let offset = 0; offset <= file.text.length; offset++) {
      const steps = selections(file, offset);
      steps.forEach(({ start, end }, index) => {
        const next = steps[index + 1];
        assert.ok(
          next === undefined || (next.start <= start && end <= next.end && next.end - next.start > end - start),
          `at ${offset}`,
        );
      });
    }
  });
});

describe('Links and colours', () => {
  it('lead from a rule to its page', () => {
    assert.deepEqual(
      ruleLinks(file).map(({ at, rule }) => `${shown(at, file)} ${rule}`),
      ['25: cable-length cable-length', '27: port-speed-mismatch port-speed-mismatch'],
    );
  });

  it('are given to names that lead somewhere, in order', () => {
    assert.deepEqual(
      nameTokens(checked, file).map(({ kind, at }) => `${shown(at, file)} ${kind}`),
      [
        '4: core devices',
        '12: video vlans',
        '15: video vlans',
        '20: core devices',
        '20: 1 ports',
        '20: paddock-cam devices',
        '21: core devices',
        '21: uplink ports',
        '23: paddock-cam devices',
        '25: cable-length rules',
        '25: no-such-rule rules',
        '27: port-speed-mismatch rules',
        '27: paddock-cam devices',
      ],
    );
  });
});
