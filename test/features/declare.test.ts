// What is named and not there is declared with what its uses tell of it, and no new mistake comes of that.
import assert from 'node:assert/strict';
import { NEW_SITES } from '../../server/src/site/new-site/new-site.ts';
import { cut } from '../../server/src/text/cut.ts';
import { type Texts, diagnosticsOf, edited } from '../site.ts';

const NEW_SITE = NEW_SITES.flat.text('Europe/London');
const sections = ['devices', 'vlans', 'streams', 'volumes'];

/** Each thing of the new site, and the site without it. */
const things = ((): { name: string; section: string; texts: Texts }[] => {
  const { pieces, starts } = cut({ uri: 'a' }, NEW_SITE);
  return pieces.flatMap(({ text, section }, index) => {
    const start = starts[index] ?? 0;
    const name = /^ {2}([a-z-]+):/.exec(text)?.[1] ?? '';
    const without = NEW_SITE.slice(0, start) + NEW_SITE.slice(start + text.trimEnd().length + 1);
    return sections.includes(section) ? [{ name, section, texts: { a: without } }] : [];
  });
})();

function declaredIn(texts: Texts, name: string): { title: string; texts: Texts } | undefined {
  for (const { rule, fixes } of diagnosticsOf(texts)) {
    if (rule.id !== 'unknown-name') continue;
    const fix = fixes?.().find(({ title }) => title.startsWith('Declare ') && title.split(' ')[2] === name);
    if (fix !== undefined) return { title: fix.title, texts: edited(texts, fix.edits) };
  }
  return undefined;
}

const errorsOf = (texts: Texts): string[] =>
  diagnosticsOf(texts)
    .filter(({ severity }) => severity === 'error')
    .map(({ rule, message }) => `${rule.id}: ${message}`);

describe('Declaring what is named', () => {
  for (const { name, section, texts } of things) {
    const isNamed = new RegExp(`[ [/]${name}[\\s,\\]}/]`).test(texts['a'] ?? '');
    if (isNamed && !(section === 'streams' && name === 'gate-shown'))
      it(`gives ${name} of ${section} back, with nothing wrong but what is not there yet`, () => {
        const declared = declaredIn(texts, name);
        assert.ok(declared !== undefined);
        const before = new Set(errorsOf(texts));
        // What hung on the name is looked at now, and may lack what the thing had: a power supply, a port, an address.
        const fresh = errorsOf(declared.texts).filter((error) => !before.has(error));
        const own = fresh.filter((error) => /^(?:unknown|wrong|malformed|duplicate|yaml|no-such|port-not)/.test(error));
        assert.deepEqual(own, [], declared.texts['a']);
        assert.equal(declaredIn(declared.texts, name), undefined);
      });
  }

  it('takes the kind from the use, and the style of the file', () => {
    const titles = things.flatMap(({ name, texts }) => declaredIn(texts, name)?.title ?? []);
    assert.deepEqual(titles, [
      'Declare VLAN video',
      'Declare device core as a switch',
      'Declare device gate-cam as a camera',
      'Declare device yard-cam as a camera',
      'Declare device recorder as a server',
      'Declare device hall-screen as a display',
      'Declare stream gate',
      'Declare stream yard',
      'Declare volume archive',
    ]);
    const alone = declaredIn({ a: 'cables:\r\n    - {from: barn/3, to: barn/4}\r\n' }, 'barn');
    assert.equal(
      alone?.texts['a'],
      'cables:\r\n    - {from: barn/3, to: barn/4}\r\n\r\ndevices:\r\n    barn: {kind: switch, ports: {3: {}, 4: {}}}\r\n',
    );
  });
});
