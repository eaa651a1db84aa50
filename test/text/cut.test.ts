import assert from 'node:assert/strict';
import fc from 'fast-check';
import { type Cut, cut } from '../../server/src/text/cut.ts';

const file = { uri: 'harrow-lane.site.yaml' };

function shown({ pieces, starts, headers }: Cut): unknown {
  return {
    pieces: pieces.map(({ role, section, indent, text }, at) => ({ role, section, indent, start: starts[at], text })),
    headers: headers.map(({ section, start, end }) => ({ section, start, end })),
  };
}

function pieces(text: string): string[] {
  return cut(file, text).pieces.map(({ role, section, text: own }) => `${role} ${section}: ${own.trim()}`);
}

describe('Cutting a site file', () => {
  it('makes a piece of each item, comments and blank lines included', () => {
    assert.deepEqual(
      pieces(`# Harrow Lane
vlans:
  video: {id: 20}   # cameras

  house:
    id: 10
cables:
  - {from: core/1, to: paddock-cam}
  - from: core/2
    to: recorder
`),
      [
        'item vlans: video: {id: 20}   # cameras',
        'item vlans: house:\n    id: 10',
        'item cables: - {from: core/1, to: paddock-cam}',
        'item cables: - from: core/2\n    to: recorder',
      ],
    );
  });

  it('takes a list whose hyphens stand under its key', () => {
    assert.deepEqual(pieces('cables:\n- {from: core/1}\n- {from: core/2}\n'), [
      'item cables: - {from: core/1}',
      'item cables: - {from: core/2}',
    ]);
  });

  it('takes a list whose hyphens stand under the key of the item that it belongs to', () => {
    assert.deepEqual(pieces('lint:\n  accept:\n  - {rule: loop}\n  - {rule: link-load}\n  rules: {}\n'), [
      'item lint: accept:\n  - {rule: loop}\n  - {rule: link-load}',
      'item lint: rules: {}',
    ]);
  });

  it('leaves a section whole whose value starts on the line of its key', () => {
    assert.deepEqual(pieces('vlans: {video: {id: 20},\n  house: {id: 10}\n}\nsite:\n  name: Harrow Lane\n'), [
      'section vlans: vlans: {video: {id: 20},\n  house: {id: 10}\n}',
      'item site: name: Harrow Lane',
    ]);
  });

  it('takes a file in braces whole, as JSON is YAML', () => {
    assert.deepEqual(pieces('// \n').length, 1);
    assert.deepEqual(pieces('{\n  "vlans": {"video": {"id": 20}}\n}\n'), [
      'section : {\n  "vlans": {"video": {"id": 20}}\n}',
    ]);
  });

  it('keeps an item together whose brackets close under its key', () => {
    assert.deepEqual(pieces('devices:\n  core: {\n    kind: switch\n  }\n  barn: {kind: switch}\n'), [
      'item devices: core: {\n    kind: switch\n  }',
      'item devices: barn: {kind: switch}',
    ]);
  });

  it('does not let a broken item take its neighbours along', () => {
    assert.deepEqual(pieces('devices:\n  core: {kind: switch\n  barn: {kind: switch}\nstreams:\n  paddock: [\n'), [
      'item devices: core: {kind: switch',
      'item devices: barn: {kind: switch}',
      'item streams: paddock: [',
    ]);
  });

  it('sets lines apart that belong to no section, and a second document', () => {
    assert.deepEqual(pieces('hello\nvlans:\n  video: {}\noops\n---\nvlans:\n  house: {}\n'), [
      'stray : hello',
      'item vlans: video: {}',
      'stray vlans: oops',
      'document vlans: ---\nvlans:\n  house: {}',
    ]);
  });

  it('gives nothing twice: pieces follow each other, and what is between them is empty, a comment, a marker or a key', () => {
    fc.assert(
      fc.property(texts(), (text) => {
        let end = 0;
        const made = cut(file, text);
        for (const [at, { text: own }] of made.pieces.entries()) {
          const start = made.starts[at] ?? -1;
          assert.ok(start >= end);
          assert.match(
            text.slice(end, start),
            /^(?:\ufeff?(?:[ \t\r]*|\s*#.*|%.*|---.*|\.\.\..*|["']?[a-z]+["']?[ \t]*:[ \t]*(?:#.*)?)\r?(?:\n|$))*$/,
          );
          assert.equal(text.slice(start, start + own.length), own);
          end = start + own.length;
        }
      }),
    );
  });

  it('after an edit is as it would be from scratch, however many edits came before', () => {
    fc.assert(
      fc.property(texts(), fc.array(edits(), { minLength: 1, maxLength: 6 }), (first, changes) => {
        let text = first;
        let kept = cut(file, text);
        for (const { at, length, by } of changes) {
          const start = Math.floor(at * text.length);
          text = text.slice(0, start) + by + text.slice(start + length);
          kept = cut(file, text, kept);
          assert.deepEqual(shown(kept), shown(cut(file, text)));
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('ends at a number of pieces, of which the last holds the rest, before an edit as after it', () => {
    const list = (elements: number): string => `cables:\n${' -\n'.repeat(elements)}`;
    let kept = cut(file, list(100_000));
    assert.equal(kept.pieces.length, 30_000);
    assert.equal(kept.pieces.at(-1)?.text.length, 3 * 70_001);
    for (const text of [
      list(100_001),
      `${list(99_000)}vlans:\n  video: {id: 20}\n`,
      list(29_999),
      list(30_000),
      list(30_002),
      '',
    ]) {
      kept = cut(file, text, kept);
      assert.deepEqual(shown(kept), shown(cut(file, text)));
    }
  });

  it('keeps the pieces that an edit does not touch', () => {
    const before = cut(file, 'vlans:\n  video: {id: 20}\n  house: {id: 10}\n  guest: {id: 30}\n');
    const [video, house, guest] = before.pieces;
    const after = cut(file, 'vlans:\n  video: {id: 20}\n  house: {id: 11, querier: core}\n  guest: {id: 30}\n', before);
    assert.equal(after.pieces[0], video);
    assert.notEqual(after.pieces[1], house);
    assert.equal(after.pieces[2], guest);
  });
});

/** Lines as they come in site files, whole and broken, in any order. */
function lines(): fc.Arbitrary<string> {
  return fc.constantFrom(
    'site:',
    'vlans:',
    'devices: # all',
    'cables:',
    '"streams":',
    'lint: {rules: {}}',
    'vlans: {video: {id: 20},',
    'oops',
    '  core:',
    '    kind: switch',
    '  paddock-cam: {kind: camera}',
    '  - {from: core/1}',
    '- {from: core/2}',
    '  - from: core/3',
    '    to: barn',
    '}',
    '  }',
    '], ',
    '',
    '   ',
    '# why',
    '  # why',
    '\ttab: 1',
    '---',
    '...',
    '%YAML 1.2',
    '  core: {kind: switch',
    '{"vlans": {}}',
    '{',
    '  "x": [',
  );
}

function texts(): fc.Arbitrary<string> {
  return fc
    .tuple(
      fc.constantFrom('', '\ufeff'),
      fc.array(lines(), { maxLength: 14 }),
      fc.constantFrom('\n', '\n', '\r\n'),
      fc.constantFrom('', '\n'),
    )
    .map(([mark, all, lineBreak, end]) => mark + all.join(lineBreak) + end);
}

function edits(): fc.Arbitrary<{ at: number; length: number; by: string }> {
  const by = fc.oneof(
    fc.constantFrom('', ' ', '  ', '\n', ':', '-', '{', '}', '#', 'x', '\t'),
    fc.tuple(lines(), lines()).map(([a, b]) => `${a}\n${b}\n`),
  );
  return fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), length: fc.oneof(fc.nat(3), fc.nat(60)), by });
}
