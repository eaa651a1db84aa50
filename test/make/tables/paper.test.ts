// The pages in a browser, as wide as a sheet of paper between its margins: nothing is cut off, no row is torn apart.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { after, before, describe, it } from 'mocha';
import type { Browser } from 'playwright-core';
import { addressPlan } from '../../../server/src/make/addresses/address-plan.ts';
import { cableLabels } from '../../../server/src/make/wiring/cable-labels.ts';
import { patchSchedule } from '../../../server/src/make/wiring/patch-schedule.ts';
import { portTable } from '../../../server/src/make/wiring/port-table.ts';
import type { Plan } from '../../../server/src/plan.ts';
import { unavailable } from '../../availability.ts';
import { chromiumPath, launchBrowser } from '../../vscode/browser.ts';
import { inFolder, planOfData, planOfTexts, sampleTexts } from '../made.ts';

const LONG = 'x'.repeat(200);

/** Everything as long as it may be, in words without a place to break them and in sentences. */
function longSite(): Plan {
  const words = 'a description that goes on '.repeat(8).trim();
  return planOfData({
    site: { name: LONG },
    vlans: {
      [LONG]: {
        'id': 4094,
        'subnet': '192.168.120.0/24',
        'dhcp-pool': '192.168.120.100-192.168.120.199',
        'description': LONG,
      },
    },
    devices: {
      [LONG]: {
        'kind': 'switch',
        'location': LONG,
        'model': words,
        'address': '192.168.120.2',
        'poe-budget': '130 W',
        'ports': {
          [LONG]: { speed: '1 Gb/s', trunk: [LONG], description: words, poe: 'at' },
          '1-3': { vlan: LONG, description: LONG },
        },
      },
      [`${LONG}y`]: {
        kind: 'camera',
        address: '192.168.120.31',
        mac: '02:00:00:00:20:31',
        speed: '100 Mb/s',
        location: words,
        poe: { class: 3 },
      },
    },
    cables: [
      {
        from: `${LONG}/${LONG}`,
        to: `${LONG}y`,
        type: 'cat6a',
        length: '84.5 m',
        label: LONG,
        description: LONG,
        through: [`panel/${LONG}`, 'panel/2'],
      },
    ],
    streams: {
      [LONG]: {
        source: `${LONG}y`,
        group: '239.192.120.31',
        port: 5004,
        receivers: [LONG, `${LONG}y`],
        video: { bitrate: '6 Mb/s' },
      },
    },
  });
}

describe('pages for paper', function () {
  let browser: Browser | undefined;
  before(async function () {
    const path = chromiumPath();
    if (path === undefined) unavailable(this, 'there is no Chromium: it is in the package chromium');
    browser = await launchBrowser(path);
  });
  after(() => browser?.close());

  const plans: readonly (readonly [string, () => Plan])[] = [
    ['the sample', () => planOfTexts(sampleTexts('harrow-lane'))],
    ['the first draft', () => planOfTexts(sampleTexts('first-draft'))],
    ['names and texts of 200 characters', longSite],
  ];
  for (const [title, plan] of plans) {
    it(`are as wide as the paper: ${title}`, async () => {
      const page = await browser?.newPage();
      assert.ok(page !== undefined);
      await page.emulateMedia({ media: 'print' });
      const files = [portTable, patchSchedule, cableLabels, addressPlan]
        .flatMap((output) => output.make(plan()).files)
        .filter(({ path }) => path.endsWith('.html'));
      await inFolder(files, async (folder) => {
        for (const { path } of files) {
          // A4 in CSS pixels, less the margins of 12 mm: 273 mm across or 186 mm (ISO 216: 297 mm by 210 mm).
          const across = readFileSync(join(folder, path), 'utf8').includes('size: landscape');
          await page.setViewportSize({ width: Math.floor(((across ? 273 : 186) / 25.4) * 96), height: 700 });
          await page.goto(pathToFileURL(join(folder, path)).href);
          const { wide, view } = await page.evaluate<{ wide: number; view: number }>(
            '({ wide: document.documentElement.scrollWidth, view: document.documentElement.clientWidth })',
          );
          assert.ok(wide <= view, `${path} is ${wide} pixels wide, the paper ${view}`);
          const whole = await page.evaluate<boolean>(
            '[...document.querySelectorAll("tr")].every((row) => getComputedStyle(row).breakInside === "avoid")',
          );
          assert.ok(whole, path);
        }
      });
      await page.close();
    });
  }
});
