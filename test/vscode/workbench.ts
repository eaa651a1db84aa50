// The workbench as a person at the keyboard meets it: its contents, and the keys that act on it.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { repository } from '../../client/open/install.ts';
import { eventually } from './eventually.ts';

const screenshots = join(repository, 'dist', 'screenshots');

/** Time between two tries, ms, and the most tries. */
const AGAIN = 8000;
const MOST_TRIES = 8;

export class Workbench {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** The squiggles of any severity drawn in the editor in front, of what is scrolled into view. */
  squiggles(): Locator {
    return this.page.locator('.editor-group-container.active [class*="squiggly-"]');
  }

  /** The words drawn above those squiggles. */
  async squiggledWords(): Promise<string[]> {
    // In the page: the characters that have their middle within a squiggle, in the line that it is drawn in.
    const words: string[] = await this.squiggles().evaluateAll((squiggles) =>
      squiggles.map((squiggle) => {
        const mark = squiggle.getBoundingClientRect();
        const height = mark.top + mark.height / 2;
        const document = squiggle.ownerDocument;
        let word = '';
        for (const line of document.querySelectorAll('.editor-group-container.active .view-line')) {
          const { top, bottom } = line.getBoundingClientRect();
          if (height < top || height >= bottom) continue;
          const range = document.createRange();
          const texts = document.createTreeWalker(line, 4 /* text nodes */);
          for (let node = texts.nextNode(); node; node = texts.nextNode()) {
            for (let index = 0; index < node.data.length; index += 1) {
              range.setStart(node, index);
              range.setEnd(node, index + 1);
              const { left, right } = range.getBoundingClientRect();
              const middle = (left + right) / 2;
              if (mark.left <= middle && middle <= mark.right) word += node.data[index];
            }
          }
        }
        return word;
      }),
    );
    return words.map(plain);
  }

  /** Rows of the problems panel that hold a text. */
  problems(text: string | RegExp): Locator {
    return this.page.locator('.markers-panel .monaco-list-row').filter({ hasText: text });
  }

  /**
   * Narrows the problems panel to what holds a text, and returns once it has. It does so a moment after the last key,
   * so a text that is filled in again and again would never take effect.
   */
  async filterProblems(text: string): Promise<void> {
    const input = this.page.locator('.panel .viewpane-filter input');
    if ((await input.inputValue()) !== text) await input.fill(text);
    const others = this.problems(/\[Ln /).filter({
      hasNot: this.page.locator('.related-info-resource'),
      hasNotText: text,
    });
    if (text === '') return;
    // The editor takes the filter a moment after the last key, and now and then misses one: then it is typed again.
    for (let tries = 1; ; tries++) {
      try {
        await others.first().waitFor({ state: 'detached', timeout: AGAIN });
        return;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
        await input.fill('');
        await input.fill(text);
      }
    }
  }

  /** Clicks, once no hover is over the target: one that the mouse has left behind goes when it moves away. */
  async click(target: Locator, clickCount = 1): Promise<void> {
    for (let tries = 1; ; tries++) {
      await this.page.mouse.move(0, 0);
      try {
        await this.page.locator('.monaco-hover:visible').first().waitFor({ state: 'hidden', timeout: AGAIN });
        await target.click({ clickCount, timeout: AGAIN });
        return;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
      }
    }
  }

  /** Opens a file from the explorer. */
  async open(name: string): Promise<void> {
    await this.click(this.page.locator('.explorer-folders-view .monaco-list-row').filter({ hasText: name }), 2);
    await this.page.locator('.tab.active').filter({ hasText: name }).waitFor();
  }

  /** Runs a command by its title, from the palette, which lists what can be run when it opens. */
  async command(title: string): Promise<void> {
    const row = this.page.locator('.quick-input-widget:visible .monaco-list-row').filter({ hasText: title }).first();
    for (let tries = 1; ; tries++) {
      const input = await this.box('F1');
      await input.fill(`>${title}`);
      try {
        await row.waitFor({ timeout: AGAIN });
        break;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
        await this.page.keyboard.press('Escape');
      }
    }
    await this.click(row);
  }

  /** Opens the box at the top of the window by a key, which is pressed again where the window has missed it. */
  private async box(key: string): Promise<Locator> {
    const input = this.page.locator('.quick-input-widget:visible input');
    for (let tries = 1; ; tries++) {
      await this.page.keyboard.press(key);
      try {
        await input.waitFor({ timeout: AGAIN });
        return input;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
      }
    }
  }

  /** Presses Enter in a box that says so, until it goes: one that has just come may not be listening yet. */
  async enter(words: string): Promise<void> {
    const box = this.page.locator('.quick-input-widget:visible').filter({ hasText: words });
    await box.waitFor();
    await eventually(async () => {
      if (await box.isVisible()) await box.locator('input').first().press('Enter');
      await box.waitFor({ state: 'hidden', timeout: 2000 });
    });
  }

  /** Puts the cursor on a line and column, both from 1, and scrolls to it. */
  async goTo(line: number, column: number): Promise<void> {
    for (let tries = 1; ; tries++) {
      const input = await this.box('Control+G');
      try {
        await input.fill(`:${line}:${column}`, { timeout: AGAIN });
        await input.press('Enter', { timeout: AGAIN });
        await input.waitFor({ state: 'hidden', timeout: AGAIN });
        return;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
      }
    }
  }

  /** Moves the mouse to where the cursor stands, until the hover that appears passes a check. */
  async hoverAtCursor(check: (text: string) => void): Promise<void> {
    const shown = this.page.locator('.editor-group-container.active .cursors-layer .cursor').first();
    // A hover goes, or is about another line, where the text moves; then the mouse comes again, to where the cursor is
    // by now.
    for (let tries = 1; ; tries++) {
      const cursor = await shown.boundingBox();
      if (!cursor) throw new Error('the cursor is not to be seen');
      await this.page.mouse.move(cursor.x + 60, cursor.y + 60);
      await this.page.mouse.move(cursor.x + 4, cursor.y + cursor.height / 2, { steps: 8 });
      try {
        await this.hovers().first().waitFor({ timeout: AGAIN });
        // The answers of a language server may be still to come.
        await eventually(async () => check(plain((await this.hovers().allInnerTexts()).join('\n'))), AGAIN / 1000);
        return;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
      }
    }
  }

  private hovers(): Locator {
    return this.page.locator('.monaco-hover:visible .monaco-hover-content');
  }

  /** The actions of the light bulb at the cursor. */
  async lightBulb(): Promise<Locator> {
    const offers = this.page.locator('.action-widget:visible').first().locator('.monaco-list-row');
    // The editor passes over the key while it is busy.
    for (let tries = 1; ; tries++) {
      await this.page.keyboard.press('Control+.');
      try {
        await offers.first().waitFor({ timeout: AGAIN });
        return offers;
      } catch (error) {
        if (tries === MOST_TRIES) throw error;
        await this.page.keyboard.press('Escape');
      }
    }
  }

  /** The hover of the item beside the language's name. */
  async languageStatus(): Promise<string> {
    const told = this.page.locator('.hover-language-status:visible');
    await this.page.mouse.move(0, 0); // an open hover is not updated
    await told.first().waitFor({ state: 'hidden', timeout: AGAIN });
    await this.page.locator('[id="status.languageStatus"]').hover();
    await told.first().waitFor({ timeout: AGAIN });
    return plain((await told.allInnerTexts()).join('\n'));
  }

  /** Puts the keyboard back into the editor. */
  focusEditor(): Promise<void> {
    return this.page.keyboard.press('Control+1');
  }

  save(): Promise<void> {
    return this.page.keyboard.press('Control+S');
  }

  /** Leaves a picture in dist/screenshots. */
  async picture(name: string): Promise<void> {
    mkdirSync(screenshots, { recursive: true });
    await this.page.screenshot({ path: join(screenshots, `${name}.png`) });
  }
}

/** Text as written: the editor draws spaces as no-break spaces. */
function plain(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}
