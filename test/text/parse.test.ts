import assert from 'node:assert/strict';
import fc from 'fast-check';
import { type Node as YamlNode, Document, isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { parse, parseWithFaults } from '../../server/src/text/parse.ts';
import { type Node, dataOf, keyText } from '../../server/src/text/syntax.ts';
import { contentOf } from '../../server/src/site/item.ts';
import { pieceStart } from '../../server/src/site/folder.ts';
import { folderOf } from '../site.ts';

const FILE = 'harrow-lane.site.yaml';

interface Leaf {
  readonly path: string;
  readonly value: unknown;
  readonly start: number;
  readonly end: number;
}

/** Every scalar of the items of a file, as the pieces give it. */
function leaves(text: string): Leaf[] {
  const found: Leaf[] = [];
  const walk = (node: Node, path: string, offset: number): void => {
    if (node.kind === 'sequence') node.items.forEach((item, index) => walk(item, `${path}/${index}`, offset));
    else if (node.kind === 'mapping')
      for (const { key, value } of node.entries) walk(value, `${path}/${keyText(key)}`, offset);
    else found.push({ path, value: node.value, start: node.start + offset, end: node.end + offset });
  };
  const inList = new Map<string, number>();
  const file = folderOf({ [FILE]: text }).get(FILE);
  assert.ok(file !== undefined);
  for (const piece of file.cut.pieces) {
    for (const { section, key, node } of contentOf(piece).items) {
      const index = inList.get(section) ?? 0;
      inList.set(section, index + 1);
      walk(node, `${section}/${key === undefined ? index : keyText(key)}`, pieceStart(file, piece));
    }
  }
  return found;
}

/** The same by the general library, from the whole file at once. */
function leavesByLibrary(text: string): Leaf[] {
  const document = parseDocument(text, { schema: 'core' });
  assert.deepEqual(document.errors, []);
  const found: Leaf[] = [];
  const walk = (node: YamlNode | null, path: string): void => {
    if (isSeq(node)) node.items.forEach((item, index) => walk(item as YamlNode, `${path}/${index}`));
    else if (isMap(node))
      for (const { key, value } of node.items)
        walk(value as YamlNode, `${path}${path === '' ? '' : '/'}${String(isScalar(key) ? key.value : key)}`);
    else if (isScalar(node))
      found.push({ path, value: node.value, start: node.range?.[0] ?? -1, end: node.range?.[1] ?? -1 });
  };
  walk(document.contents, '');
  return found;
}

describe('Parsing', () => {
  // Source: the library `yaml`, as a general tool.
  it('piece by piece gives the values and places that the whole file has for the library', () => {
    fc.assert(
      fc.property(sites(), (text) => {
        // Where a block scalar ends is a matter of its trailing lines.
        const all = leavesByLibrary(text);
        assert.deepEqual(
          leaves(text).map(({ path, value, start }) => ({ path, value, start })),
          all.map(({ path, value, start }) => ({ path, value, start })),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('fast and with faults come to the same', () => {
    fc.assert(
      // But for the effort, which is of what looks for faults.
      fc.property(sites(), (text) => {
        assert.deepEqual({ ...parse(text), effort: 0 }, { ...parseWithFaults(text), effort: 0 });
      }),
      { numRuns: 300 },
    );
  });

  it('of anything never throws, and stays within the text', () => {
    const part = fc.constantFrom(
      'a',
      ': ',
      '- ',
      '{',
      '}',
      '[',
      ']',
      ', ',
      '"',
      "'",
      '&a ',
      '*a',
      '<<',
      '\n',
      '\n  ',
      '\t',
      '# ',
      '| ',
      '>\n',
      '!t ',
      '? ',
      '%',
      '---',
      '\r\n',
      '🐎',
    );
    fc.assert(
      fc.property(fc.array(part, { maxLength: 20 }), (parts) => {
        const text = parts.join('');
        const { root, problems } = parse(text);
        const within = ({ start, end }: { start: number; end: number }): void =>
          assert.ok(0 <= start && start <= end && end <= text.length, `${start}-${end}`);
        const walk = (node: Node): void => {
          within(node);
          if (node.kind === 'sequence') node.items.forEach(walk);
          if (node.kind === 'mapping') for (const { key, value } of node.entries) [key, value].forEach(walk);
        };
        problems.forEach(within);
        if (root !== undefined) walk(root);
      }),
      { numRuns: 2000 },
    );
  });

  it('follows anchors and merge keys; what stands in a mapping wins over what it takes over', () => {
    const { root } = parse('a: &cam {kind: camera, speed: 100 Mb/s}\nb: {<<: *cam, speed: 1 Gb/s}\nc: *cam\n');
    assert.deepEqual(root === undefined ? undefined : JSON.parse(JSON.stringify(dataOf(root))), {
      a: { kind: 'camera', speed: '100 Mb/s' },
      b: { speed: '1 Gb/s', kind: 'camera' },
      c: { kind: 'camera', speed: '100 Mb/s' },
    });
  });

  for (const [text, code, detail] of [
    ['a: 1\na: 2\n', 'duplicate-key', 'a'],
    ['a: *nowhere\n', 'unknown-alias', 'nowhere'],
    ['a: &a [*a]\n', 'cyclic-alias', 'a'],
    [`a: ${'['.repeat(100)}`, 'too-deep', 'nested more than 64 deep'],
    ['a: {b: 1\n', 'syntax', 'a closing } is missing'],
    ['a: [1, 2\n', 'syntax', 'a closing ] is missing'],
    ['a: "x\n', 'syntax', 'a closing " is missing'],
    ["a: 'x\n", 'syntax', "a closing ' is missing"],
    ['[a]: 1\n', 'key-not-plain', ''],
    ['a:\n  b: 1\n  c\n', 'syntax', 'a key is followed by a colon and a space'],
    ['a:\n\tb: 1\n', 'tab', 'a tab cannot indent; use spaces'],
  ] as const) {
    it(`says ${code} of ${JSON.stringify(text.slice(0, 20))}`, () => {
      const [problem] = parse(text).problems;
      assert.deepEqual([problem?.code, problem?.detail], [code, detail]);
    });
  }

  it('keeps what stands before and behind a fault', () => {
    const { root } = parse('{kind: camera, address: , speed 1, poe: {class: 3}');
    assert.deepEqual(root?.kind === 'mapping' ? root.entries.map(({ key }) => keyText(key)) : [], [
      'kind',
      'address',
      'speed 1',
      'poe',
    ]);
  });
});

/** Valid site files as people write them: braces or lines, comments, quotes, any indentation, either line end. */
function sites(): fc.Arbitrary<string> {
  const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,8}$/);
  const scalar: fc.Arbitrary<unknown> = fc.oneof(
    fc.constantFrom(
      '100 Mb/s',
      '192.168.20.31',
      'core/16',
      'yes',
      'no: not so',
      '# five',
      'two\nlines\n',
      "it's",
      '🐎',
      '',
      ' ',
      '0x1f',
      '1-8',
      '~',
      'null',
      '- a',
      '{',
      'true',
    ),
    fc.nat(5000),
    fc.boolean(),
    fc.constantFrom(29.97, 0.5, null),
  );
  const { value } = fc.letrec<{ value: unknown }>((tie) => ({
    value: fc.oneof(
      { maxDepth: 3 },
      scalar,
      fc.array(tie('value'), { maxLength: 3 }),
      fc.dictionary(name, tie('value'), { maxKeys: 4 }),
    ),
  }));
  const map = fc.dictionary(name, value, { minKeys: 1, maxKeys: 4 });
  const data = fc.record(
    { vlans: map, devices: map, streams: map, cables: fc.array(value, { minLength: 1, maxLength: 4 }), site: map },
    { requiredKeys: [] },
  );
  return fc
    .tuple(data, fc.constantFrom(2, 3, 4), fc.infiniteStream(fc.nat(7)), fc.boolean(), fc.boolean())
    .map(([site, indent, choices, indentSeq, crlf]) => {
      const document = new Document(site, { schema: 'core' });
      const next = (): number => choices.next().value ?? 0;
      const style = (node: unknown): void => {
        if (isScalar(node)) {
          const choice = next();
          if (choice === 0) node.comment = ' as measured';
          if (choice === 1 && typeof node.value === 'string' && !node.value.includes('\n')) node.type = 'QUOTE_DOUBLE';
        }
        if (!isMap(node) && !isSeq(node)) return;
        if (next() < 3) node.flow = true;
        for (const item of node.items) {
          const child = isMap(node) ? (item as { value: unknown }).value : item;
          style(child);
          if (next() === 0 && isMap(child)) child.commentBefore = ' below the house';
        }
      };
      if (isMap(document.contents)) {
        for (const section of document.contents.items) {
          style(section.value);
          if (isScalar(section.key) && next() < 2) section.key.spaceBefore = true;
        }
      }
      const text = document.toString({ indent, indentSeq, lineWidth: 60 });
      return crlf ? text.replaceAll('\n', '\r\n') : text;
    });
}
