import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { check, fixAll } from '../server/src/check.ts';
import { type Mark, differences, readMarks } from './marks.ts';
import { type Texts, diagnosticsOf, folderOf, foundByFile } from './site.ts';

/** Sites, each a file or a folder of them, in which every finding of every rule is marked. */
const fixtures = new URL('fixtures/', import.meta.url);

interface Fixture {
  readonly texts: Texts;
  readonly marks: ReadonlyMap<string, readonly Mark[]>;
}

function read(name: string, isFolder: boolean): Fixture {
  const files = isFolder ? readdirSync(new URL(`${name}/`, fixtures)).map((file) => `${name}/${file}`) : [name];
  const marked = files.map((file) => [file, readMarks(readFileSync(new URL(file, fixtures), 'utf8'), true)] as const);
  return {
    texts: Object.fromEntries(marked.map(([file, { text }]) => [file, text])),
    marks: new Map(marked.map(([file, { marks }]) => [file, marks])),
  };
}

function changed({ texts, marks }: Fixture, text: (text: string) => string, mark: (mark: Mark) => Mark): Fixture {
  return {
    texts: Object.fromEntries(Object.entries(texts).map(([file, own]) => [file, text(own)])),
    marks: new Map([...marks].map(([file, own]) => [file, own.map(mark)])),
  };
}

/** A byte order mark is a character of the first line. */
function behindMark(mark: Mark): Mark {
  return mark.line === 0 ? { ...mark, start: mark.start + 1, end: mark.end + 1 } : mark;
}

function assertFound({ texts, marks }: Fixture): void {
  for (const [file, found] of foundByFile(texts, diagnosticsOf(texts)))
    assert.deepEqual(differences(found, marks.get(file) ?? []), [], file);
}

describe('Fixtures', () => {
  for (const entry of readdirSync(fixtures, { withFileTypes: true })) {
    const fixture = read(entry.name, entry.isDirectory());
    describe(entry.name, () => {
      it('has the findings that are marked, and no others', () => assertFound(fixture));
      it('has the same with lines that end in CR and LF', () =>
        assertFound(
          changed(
            fixture,
            (text) => text.replaceAll('\n', '\r\n'),
            (mark) => mark,
          ),
        ));
      it('has the same behind a byte order mark', () =>
        assertFound(changed(fixture, (text) => `\ufeff${text}`, behindMark)));

      it('stays whole under all safe fixes, which leave none to apply', () => {
        const { texts: once } = fixAll(folderOf(fixture.texts));
        const { texts: twice, fixes } = fixAll(folderOf(Object.fromEntries(once)));
        assert.equal(fixes, 0);
        assert.deepEqual(twice, once);
      });
    });
  }
});

/** Texts that are too large or too deep to keep as files. */
describe('Input without measure', () => {
  const site = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';
  const MEGABYTE = 1_000_000;
  const cases: Readonly<Record<string, string>> = {
    'a value of a megabyte': `site:\n  name: ${'x'.repeat(MEGABYTE)}\n${site}`,
    'a name of a megabyte': `streams:\n  ${'x'.repeat(MEGABYTE)}: {source: ${'y'.repeat(MEGABYTE)}}\n${site}`,
    'a quantity of a megabyte': `volumes:\n  archive: {host: paddock-cam, capacity: ${'9'.repeat(MEGABYTE)} TB}\n${site}`,
    'a bracket that is opened ten thousand times': `vlans:\n  video: ${'['.repeat(10_000)}\n${site}`,
    'a list in a list ten thousand times': `vlans:\n  video:\n    ${'- '.repeat(10_000)}x\n${site}`,
    'a quote that is never closed': `vlans:\n  video: {id: "${'x\n   '.repeat(100_000)}\n${site}`,
    'ten thousand lines that are no YAML': `${'<p>camera</p>\n'.repeat(10_000)}${site}`,
    'ten thousand keys of one mapping': `vlans:\n  video: {${Array.from({ length: 10_000 }, (_, i) => `k${i}: 1`).join(', ')}}\n${site}`,
    'control characters and lone surrogates': `vlans:\n  video: {id: "\u0000\u0007\ud83d"}\n  \u0001\u001b[31m: {id: 20}\n${site}`,
  };

  for (const [name, text] of Object.entries(cases)) {
    it(`${name}: the rest is read, and messages stay short`, () => {
      const diagnostics = diagnosticsOf({ 'harrow-lane.site.yaml': text });
      assert.ok(
        diagnostics.some(({ rule, message }) => rule.id === 'unknown-key' && message.includes('adress')),
        'the rest is not read',
      );
      for (const { message } of diagnostics)
        assert.ok(message.length < 2000, `a message of ${message.length} characters`);
      assert.ok(
        diagnostics.every(({ message }) => !message.includes('a fault of Plumbline')),
        diagnostics.map(({ message }) => message).join('\n'),
      );
    });
  }

  it('a file that cannot be read is reported, and what it may declare is not missed', () => {
    const folder = folderOf({ 'a.site.yaml': 'streams:\n  paddock: {source: paddock-cam}\n' });
    folder.setUnreadable('b.site.yaml', 'permission denied');
    const found = check(folder).diagnostics.map(({ rule, message }) => `${rule.id}: ${message}`);
    assert.ok(
      found.includes(
        'unreadable-file: This file cannot be read: permission denied. What it declares is missing from the site.',
      ),
    );
    assert.ok(!found.some((one) => one.startsWith('unknown-name')));
  });
});
