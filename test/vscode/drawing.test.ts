// A drawing beside the text, as a person meets it in a browser: by mouse and by keyboard, in light, dark and contrast.
import assert from 'node:assert/strict';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { blocksOf } from '../../client/src/pages/hover-words.ts';
import { check } from '../../server/src/check.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { namedHover } from '../../server/src/features/hover/named.ts';
import { planOf } from '../../server/src/plan.ts';
import { contrast } from '../draw/contrast.ts';
import { picture } from '../draw/picture.ts';
import { eventually } from './eventually.ts';
import { inBrowser } from './in-browser.ts';

describe('a drawing beside the text, in a browser', () => {
  const editor = inBrowser({ file: 'devices.site.yaml', theme: 'Light Modern', width: 1500 });
  const { inPage, chooseTheme } = editor;

  function thing(at: string): Locator {
    return inPage().locator(`.drawing [data-at="${at}"]`).first();
  }

  const focused = (): Promise<string> =>
    inPage()
      .locator('body')
      .evaluate((body) => body.ownerDocument.activeElement?.getAttribute('data-at') ?? '');

  async function drawAll(kind: string): Promise<void> {
    const { page } = editor.workbench;
    await page.locator('.tab').filter({ hasText: 'devices.site.yaml' }).first().click();
    await editor.workbench.command('Plumbline: Draw');
    const pick = page.locator('.quick-input-widget:visible');
    await pick.locator('input').fill(kind);
    await editor.workbench.click(pick.locator('.monaco-list-row').first());
    await pick.locator('.monaco-list-row').filter({ hasText: /^All/ }).first().waitFor();
    await editor.workbench.click(pick.locator('.monaco-list-row').first());
  }

  it('is the one that the command line draws', async () => {
    await drawAll('network');
    await thing('core/16').waitFor();
    const printed = picture(
      svgFile(networkPicture.draw(planOf(readSite(editor.folder).folder.site()), '', USUAL_OPTIONS)),
    );
    const shown = await inPage()
      .locator('.drawing [data-at]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    assert.deepEqual(
      shown,
      printed.things.map(({ label }) => label),
    );
  });

  it('leads from a thing to its place by mouse, and marks the thing that the cursor is at', async () => {
    await thing('stable/3').locator('text').nth(1).click();
    const line = editor.workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(editor.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () =>
      assert.match(devices.split('\n')[Number(await line.first().innerText()) - 1] ?? '', /^ +1-6: /),
    );
    // One key declares six ports: the first of them is the one that is marked.
    await eventually(async () => assert.match((await thing('stable/1').getAttribute('class')) ?? '', /here/));
    const at = devices.split('\n').findIndex((text) => /^ {2}gate-cam:/.test(text));
    await editor.workbench.goTo(at + 1, 5);
    // A camera is at a port of its switch.
    await eventually(async () => assert.match((await thing('core/1').getAttribute('class')) ?? '', /here/));
  });

  it('is one stop of the tab key, and arrows lead to each thing once', async () => {
    const stops = inPage().locator('.drawing [tabindex="0"]');
    assert.equal(await stops.count(), 1);
    await stops.first().focus();
    await editor.workbench.page.keyboard.press('Home');
    const all = await inPage()
      .locator('.drawing [data-at]')
      .evaluateAll((things) => things.map((one) => one.getAttribute('data-at') ?? ''));
    const walked = [await focused()];
    while (walked.length < all.length) {
      await editor.workbench.page.keyboard.press('ArrowDown');
      walked.push(await focused());
    }
    assert.deepEqual(walked, all);
    await editor.workbench.page.keyboard.press('ArrowLeft');
    assert.equal(await focused(), all.at(-2));
    assert.equal(await stops.count(), 1);
    await editor.workbench.page.keyboard.press('Home');
    assert.equal(await focused(), 'core');
  });

  it('shows what has the focus, and leads there by Enter', async () => {
    const stroke = (): Promise<string> =>
      thing('core')
        .locator('rect')
        .first()
        .evaluate((rect) => rect.ownerDocument.defaultView?.getComputedStyle(rect).strokeWidth ?? '');
    assert.equal(await stroke(), '3px');
    await editor.workbench.page.keyboard.press('Enter');
    const line = editor.workbench.page.locator('.editor-group-container.active .active-line-number');
    const devices = await readFile(join(editor.folder, 'devices.site.yaml'), 'utf8');
    await eventually(async () =>
      assert.match(devices.split('\n')[Number(await line.first().innerText()) - 1] ?? '', /^ {2}core:/),
    );
  });

  it('says what the editor says of a thing, where the mouse rests on it and where the keys have come to', async () => {
    const hover = inPage().locator('.hover');
    const { plan } = check(readSite(editor.folder).folder);
    const says = async (names: string, name: string): Promise<void> => {
      const wanted = blocksOf(namedHover(plan, names, name)).flatMap((block) =>
        'rows' in block ? block.rows.flat() : [block],
      );
      await eventually(async () =>
        assert.deepEqual(
          await hover.locator('p, th, td').allTextContents(),
          wanted.map(({ text }) => text),
        ),
      );
    };
    await thing('core/5').locator('text').first().hover();
    await says('ports', 'core/5');
    assert.equal(await thing('core/5').getAttribute('aria-describedby'), await hover.getAttribute('id'));
    // It stays while the mouse is on it, and goes when that leaves.
    await hover.hover();
    await says('ports', 'core/5');
    await editor.workbench.page.mouse.move(0, 0);
    await hover.waitFor({ state: 'detached' });
    await thing('core').focus();
    await says('devices', 'core');
    await editor.workbench.picture('hover of a drawing');
    await editor.workbench.page.keyboard.press('ArrowDown');
    await says('ports', 'core/1');
    await editor.workbench.page.keyboard.press('Escape');
    await hover.waitFor({ state: 'detached' });
    assert.equal(await focused(), 'core/1');
  });

  it('follows an edit, and keeps the focus and where it is scrolled to', async () => {
    await thing('stable/2').focus();
    const scrolled = (): Promise<number> =>
      inPage()
        .locator('body')
        .evaluate((body) => body.ownerDocument.defaultView?.scrollY ?? 0);
    const before = await scrolled();
    const file = join(editor.folder, 'devices.site.yaml');
    const text = await readFile(file, 'utf8');
    await writeFile(file, `${text}  swallow: {kind: camera, address: 192.168.20.99}\n`);
    await thing('swallow').waitFor();
    assert.equal(await focused(), 'stable/2');
    assert.equal(await scrolled(), before);
  });

  for (const theme of ['Light Modern', 'Dark Modern', 'Default High Contrast', 'Default High Contrast Light'])
    it(`can be read in ${theme}`, async () => {
      await chooseTheme(theme);
      const colour = (of: Locator, part: 'fill' | 'stroke' | 'backgroundColor'): Promise<string> =>
        of.evaluate((one, name) => one.ownerDocument.defaultView?.getComputedStyle(one)[name] ?? '', part);
      await eventually(async () => {
        const background = editor.workbench.page.locator('.editor-group-container .monaco-editor-background').first();
        const paper = await colour(inPage().locator('.drawing'), 'backgroundColor');
        assert.equal(paper, await colour(background, 'backgroundColor'));
        for (const at of ['core', 'stable', 'core/1']) {
          for (const text of await thing(at).locator('text').all())
            assert.ok(
              contrast(await colour(text, 'fill'), await colour(thing('core').locator('rect').first(), 'fill')) >= 4.5,
              at,
            );
        }
        assert.ok(contrast(await colour(thing('core').locator('rect').first(), 'stroke'), paper) >= 3);
        for (const line of await inPage().locator('.drawing path').all())
          assert.ok(contrast(await colour(line, 'stroke'), paper) >= 3);
      });
      await editor.workbench.picture(`drawing ${theme}`);
    });
});
