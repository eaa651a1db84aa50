// The workbench as a person at the keyboard meets it: what is drawn, and the keys that act on it.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { repository } from '../../client/open/install.ts';

const screenshots = join(repository, 'dist', 'screenshots');

export class Workbench {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** The squiggles drawn in the editor in front. */
  squiggles(severity: 'error' | 'warning' | 'info'): Locator {
    return this.page.locator(`.editor-group-container.active .squiggly-${severity}`);
  }

  /** Rows of the problems panel that hold a text. */
  problems(text: string | RegExp): Locator {
    return this.page.locator('.markers-panel .monaco-list-row').filter({ hasText: text });
  }

  /** Opens a file from the explorer. */
  async open(name: string): Promise<void> {
    await this.page.locator('.explorer-folders-view .monaco-list-row').filter({ hasText: name }).dblclick();
    await this.page.locator('.tab.active').filter({ hasText: name }).waitFor();
  }

  /** Puts the cursor on a line and column, both from 1, and scrolls to it. */
  async goTo(line: number, column: number): Promise<void> {
    await this.page.keyboard.press('Control+G');
    const box = this.page.locator('.quick-input-widget:visible input');
    await box.fill(`:${line}:${column}`);
    await box.press('Enter');
    await box.waitFor({ state: 'hidden' });
  }

  /** Moves the mouse to where the cursor stands, and returns the text of the hover that appears. */
  async hoverAtCursor(): Promise<string> {
    const cursor = await this.page.locator('.editor-group-container.active .cursors-layer .cursor').first().boundingBox();
    if (!cursor) throw new Error('the cursor is not to be seen');
    await this.page.mouse.move(cursor.x + 60, cursor.y + 60);
    await this.page.mouse.move(cursor.x + 4, cursor.y + cursor.height / 2, { steps: 8 });
    const content = this.page.locator('.monaco-hover:visible .monaco-hover-content');
    await content.first().waitFor();
    return plain((await content.allInnerTexts()).join('\n'));
  }

  /** What the light bulb offers where the cursor stands. */
  async lightBulb(): Promise<Locator> {
    await this.page.keyboard.press('Control+.');
    const menu = this.page.locator('.action-widget:visible').first();
    await menu.locator('.monaco-list-row').first().waitFor();
    return menu.locator('.monaco-list-row');
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
