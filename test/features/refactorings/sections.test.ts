// Sections moved to files of their own, as texts before and after.
import assert from 'node:assert/strict';
import { assertSameSite, plain, refactored, titlesAt } from './refactored.ts';

const HOME = 'file:///harrow-lane/home.site.yaml';
const CABLES = 'file:///harrow-lane/cables.site.yaml';

const TWO = `# yaml-language-server: $schema=../../schemas/site.schema.json
# Harrow Lane, the barn alone.

devices:
  core: {kind: switch, ports: {1-4: {}}}   # under the stairs
  barn: {kind: switch, ports: {1-4: {}}}
  # gone: {kind: switch}

# Lengths are paced out.
cables:
  - {from: core/1, to: barn/1, type: cat6, length: 20 m}   # along the hedge

lint:
  rules: {cable-length: off}
`;

const ITEM = '- {from: core/1, to: barn/1, type: cat6, length: 20 m}   # along the hedge\n';

describe('Moving a section to its own file', () => {
  it('makes the file, with the line for another extension and the comment at its head', () => {
    const texts = { [HOME]: TWO.replace('cables:', 'cab$0les:') };
    const after = refactored(texts, 'Move cables to cables.site.yaml');
    assert.deepEqual(after, {
      [HOME]: `# yaml-language-server: $schema=../../schemas/site.schema.json
# Harrow Lane, the barn alone.

devices:
  core: {kind: switch, ports: {1-4: {}}}   # under the stairs
  barn: {kind: switch, ports: {1-4: {}}}
  # gone: {kind: switch}

lint:
  rules: {cable-length: off}
`,
      [CABLES]: `# yaml-language-server: $schema=../../schemas/site.schema.json

# Lengths are paced out.
cables:
  - {from: core/1, to: barn/1, type: cat6, length: 20 m}   # along the hedge
`,
    });
    assertSameSite(plain(texts), after);
  });

  it('keeps the ends of lines', () => {
    const texts = { [HOME]: TWO.replace('devices:', '$0devices:').replaceAll('\n', '\r\n') };
    const after = refactored(texts, 'Move devices');
    for (const text of Object.values(after)) assert.doesNotMatch(text, /[^\r]\n/);
    assertSameSite(plain(texts), after);
  });

  it('leaves the file well ended where it was the last section, and had no line feed behind it', () => {
    const texts = { [HOME]: TWO.replace('lint:', 'lint$0:').trimEnd() };
    const after = refactored(texts, 'Move lint');
    assert.match(after[HOME] ?? '', /along the hedge\n$/);
    assert.match(after['file:///harrow-lane/lint.site.yaml'] ?? '', /cable-length: off}\n$/);
    assertSameSite(plain(texts), after);
  });

  for (const [where, there, expected] of [
    [
      'as far in as its items',
      'cables:\n    - {from: core/2, to: barn/2}\n    # spare\n\nsite: {name: Barn}\n',
      `cables:\n    - {from: core/2, to: barn/2}\n    # spare\n    # Lengths are paced out.\n    ${ITEM}\nsite: {name: Barn}\n`,
    ],
    [
      'less far in',
      'cables:\n- {from: core/2, to: barn/2}',
      `cables:\n- {from: core/2, to: barn/2}\n# Lengths are paced out.\n${ITEM}`,
    ],
    [
      'behind a key without items',
      'cables:   # none yet\n',
      `cables:   # none yet\n  # Lengths are paced out.\n  ${ITEM}`,
    ],
    [
      'as a section of its own',
      'site: {name: Barn}\n',
      `site: {name: Barn}\n\n# Lengths are paced out.\ncables:\n  ${ITEM}`,
    ],
    ['alone in an empty file', '', `# Lengths are paced out.\ncables:\n  ${ITEM}`],
  ] as const) {
    it(`adds to the file that is there, ${where}`, () => {
      const texts = { [HOME]: TWO.replace('cables:', '$0cables:'), [CABLES]: there };
      const after = refactored(texts, 'Move cables');
      assert.equal(after[CABLES], expected);
      assertSameSite(plain(texts), after);
    });
  }

  it('takes the comment beside the key along', () => {
    const texts = {
      [HOME]: TWO.replace('cables:', 'cables$0:   # all'),
      [CABLES]: 'cables:\n  - {from: core/2, to: barn/2}\n',
    };
    assert.match(refactored(texts, 'Move cables')[CABLES] ?? '', /\n {2}# Lengths are paced out\.\n {2}# all\n/);
  });

  for (const [why, texts] of [
    ['it is the only section of the file', { [HOME]: 'cab$0les:\n  - {from: a, to: b}\n' }],
    ['the file has its name already', { [CABLES]: TWO.replace('cables:', '$0cables:') }],
    ['it has nothing in it', { [HOME]: 'devices:\n  a: {kind: camera}\ncab$0les:\n' }],
    [
      'a line is in no section',
      { [HOME]: TWO.replace('cables:', '$0cables:').replace('lint:', 'what is this\nlint:') },
    ],
    [
      'the section stands there in braces',
      { [HOME]: TWO.replace('cables:', '$0cables:'), [CABLES]: 'cables: [{from: core/2, to: barn/2}]\n' },
    ],
    [
      'a name is there already',
      {
        [HOME]: TWO.replace('devices:', '$0devices:'),
        'file:///harrow-lane/devices.site.yaml': 'devices:\n  core: {kind: switch}\n',
      },
    ],
    [
      'an alias elsewhere needs an anchor in it',
      {
        [HOME]: 'devices:\n  a: {kind: camera, description: &a here}\nstr$0eams:\n  b: {source: a, description: *a}\n',
      },
    ],
    ['the cursor is elsewhere', { [HOME]: TWO.replace('from: core', 'fr$0om: core') }],
  ] as const) {
    it(`is not offered where ${why}`, () => {
      assert.deepEqual(
        titlesAt(texts).filter((title) => title.startsWith('Move')),
        [],
      );
    });
  }

  it('moves anchors along with the aliases that need them', () => {
    const texts = {
      [HOME]: `site: {name: Barn}\n\nstre$0ams:\n  a: {source: x, video: &video {bitrate: 1 Mb/s}}\n  b: {source: y, video: *video}\n`,
    };
    assertSameSite(plain(texts), refactored(texts, 'Move streams'));
  });
});

describe('Splitting a file', () => {
  it('gives each section a file, and leaves what is said of the whole site', () => {
    const texts = { [HOME]: TWO.replace('cables:', '$0cables:') };
    const after = refactored(texts, 'Split this file: devices and cables to files of their own');
    assert.deepEqual(Object.keys(after).sort(), [CABLES, 'file:///harrow-lane/devices.site.yaml', HOME].sort());
    assert.equal(
      after[HOME],
      '# yaml-language-server: $schema=../../schemas/site.schema.json\n# Harrow Lane, the barn alone.\n\nlint:\n  rules: {cable-length: off}\n',
    );
    assertSameSite(plain(texts), after);
  });

  it('is not offered for what has two sections, one of which stays', () => {
    assert.deepEqual(
      titlesAt(TWO.replace(/devices:[^]*(?=# Lengths)/, '').replace('lint:', '$0lint:')).filter((title) =>
        title.startsWith('Split'),
      ),
      [],
    );
  });
});
