// Pictures of drawings for the README, as the command line draws them, light and dark.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromiumPath, launchBrowser } from '../../test/vscode/browser.ts';
import { readSite } from '../../server/src/cli/sites.ts';
import { type DrawingKind, USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { streamWay } from '../../server/src/draw/stream.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { planOf } from '../../server/src/plan.ts';
import { fewColours } from './few-colours.ts';

const DRAWN: readonly {
  readonly name: string;
  readonly sample: string;
  readonly kind: DrawingKind;
  readonly subject: string;
}[] = [
  { name: 'network', sample: 'first-draft', kind: networkPicture, subject: '' },
  { name: 'stream', sample: 'harrow-lane', kind: streamWay, subject: 'porch-live' },
];

const chromium = chromiumPath();
if (!chromium) throw new Error('There is no Chromium on the PATH, and CHROMIUM names none.');
const folder = fileURLToPath(new URL('.', import.meta.url));
const browser = await launchBrowser(chromium);
const large = await mkdtemp(join(tmpdir(), 'plumbline-drawings-'));
try {
  for (const { name, sample, kind, subject } of DRAWN) {
    const site = fileURLToPath(new URL(`../../samples/${sample}`, import.meta.url));
    const drawing = kind.draw(planOf(readSite(site).folder.site()), subject, USUAL_OPTIONS);
    for (const colorScheme of ['light', 'dark'] as const) {
      const size = { width: Math.ceil(drawing.width), height: Math.ceil(drawing.height) };
      const page = await browser.newPage({ viewport: size, deviceScaleFactor: 1.5, colorScheme });
      await page.setContent(`<body style="margin: 0">${svgFile(drawing)}</body>`);
      const path = join(large, 'picture.png');
      await page.screenshot({ path, clip: { x: 0, y: 0, ...size } });
      fewColours(path, join(folder, `${name}-${colorScheme}.png`));
      await page.close();
    }
  }
} finally {
  await browser.close();
  await rm(large, { recursive: true });
}
