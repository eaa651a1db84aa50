// The report in a browser: on a phone nothing is cut off, and on paper headings stay with their tables.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'mocha';
import type { Browser } from 'playwright-core';
import { readSite } from '../../server/src/cli/sites.ts';
import { networkInReport } from '../../server/src/draw/in-report.ts';
import { reportHtml } from '../../server/src/report/html.ts';
import { asText } from '../../server/src/report/page/cells.ts';
import { unavailable } from '../availability.ts';
import { chromiumPath, launchBrowser } from '../vscode/browser.ts';
import { planOf } from '../../server/src/plan.ts';
import { planFrom } from './paddock.ts';

/** As long as a name may be, without a place to break it. */
const LONG = 'x'.repeat(63);
const LONG_NAMES = `
site: {name: ${LONG}}
devices: {${LONG}: {kind: switch, poe-budget: 3 W, ports: {${LONG}: {speed: 1 Gb/s}}}, y${LONG.slice(1)}: {kind: camera, speed: 1 Gb/s}}
cables: [{from: ${LONG}/${LONG}, to: y${LONG.slice(1)}}]
streams: {${LONG}: {source: y${LONG.slice(1)}, group: 239.192.120.31, port: 5004, receivers: [${LONG}]}}
`;

describe('the report in a browser', function () {
  let browser: Browser | undefined;
  before(async function () {
    const path = chromiumPath();
    if (path === undefined) unavailable(this, 'there is no Chromium: it is in the package chromium');
    browser = await launchBrowser(path);
  });
  after(() => browser?.close());

  const sample = planOf(readSite('samples/harrow-lane').folder.site());

  for (const width of [390, 640, 1100])
    it(`cuts nothing off at ${width} px`, async () => {
      assert.ok(browser);
      const page = await browser.newPage({ viewport: { width, height: 800 } });
      for (const plan of [sample, planFrom(LONG_NAMES)]) {
        await page.setContent(reportHtml(plan, [], asText, networkInReport(plan, asText)));
        // In the page: what reaches beyond its right edge. The heads are there for those who hear the page, and a wide
        // picture scrolls within the page.
        const beyond = await page
          .locator('body *:not(thead, thead *, figure *)')
          .evaluateAll(
            (all, edge) =>
              all.filter((one) => one.getBoundingClientRect().right > edge + 0.5).map((one) => one.outerHTML),
            width,
          );
        assert.deepEqual(beyond, []);
        const drawn = await page.locator('html').evaluate((html) => html.scrollWidth);
        assert.equal(drawn, width);
      }
      await page.close();
    });

  it('keeps headings with their tables on paper', async () => {
    assert.ok(browser);
    const page = await browser.newPage({ viewport: { width: 700, height: 900 } });
    await page.emulateMedia({ media: 'print' });
    await page.setContent(reportHtml(sample, []));
    // Columns break like pages (CSS Fragmentation 3 §3.1), and a column has a place that can be asked for.
    for (const height of [500, 560, 620, 680, 740, 800, 860, 920, 980, 1040]) {
      const apart = await page.locator('body').evaluate((body, pageHeight) => {
        body.style.cssText = `height: ${pageHeight}px; column-width: 700px; column-gap: 0; column-fill: auto`;
        return [...body.querySelectorAll('section')]
          .filter((section) => {
            const parts = ['h2', '.note', 'thead', 'tbody tr'].map((part) => section.querySelector(part));
            const columns = parts.flatMap((part) =>
              part === null ? [] : [Math.floor(part.getBoundingClientRect().left / 700)],
            );
            return new Set(columns).size > 1;
          })
          .map((section) => section.querySelector('h2')?.textContent);
      }, height);
      assert.deepEqual(apart, [], `pages of ${height} px`);
    }
    await page.close();
  });
});
