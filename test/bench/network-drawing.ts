/** How long the picture of a network takes, from its plan to the page that is shown, warm. */

import { performance } from 'node:perf_hooks';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { networkPicture } from '../../server/src/draw/network.ts';
import { drawingPage } from '../../server/src/draw/page.ts';
import { planOf } from '../../server/src/plan.ts';
import { siteOf } from '../site-of.ts';
import { type Spread, spread } from './spread.ts';

const WARM = 3;
const TIMES = 20;
/** Switches that hang on one. */
const BELOW = 8;

/** Milliseconds. @param cameras at each switch */
export function networkDrawing(switches: number, cameras: number): Spread {
  const plan = planOf(siteOf(house(switches, cameras)));
  const draw = (): string => drawingPage(networkPicture.draw(plan, '', USUAL_OPTIONS));
  for (let i = 0; i < WARM; i++) draw();
  return spread(
    Array.from({ length: TIMES }, () => {
      const start = performance.now();
      draw();
      return performance.now() - start;
    }),
  );
}

/** Switches in a tree with two further cables, and a camera with a stream at each of their other ports. */
function house(switches: number, cameras: number): string {
  const devices: string[] = [];
  const cables: string[] = [];
  const streams: string[] = [];
  for (let at = 0; at < switches; at++) {
    devices.push(
      `  s${at}: {kind: switch, igmp-snooping: true, spanning-tree: true, ports: {1-${cameras + 20}: {speed: 1 Gb/s}}}`,
    );
    if (at > 0)
      cables.push(
        `  - {from: s${at}/${cameras + 1}, to: s${Math.floor((at - 1) / BELOW)}/${cameras + 2 + ((at - 1) % BELOW)}}`,
      );
    for (let port = 1; port <= cameras; port++) {
      const name = `${at}-${port}`;
      devices.push(`  cam${name}: {kind: camera, speed: 100 Mb/s, address: 10.0.${at}.${port}}`);
      cables.push(`  - {from: s${at}/${port}, to: cam${name}}`);
      streams.push(
        `  view${name}: {source: cam${name}, transport: rtsp, port: 554, video: {codec: h264, bitrate: 4 Mb/s}, receivers: [cam0-1]}`,
      );
    }
  }
  for (const [one, other] of [
    [1, 1],
    [2, 2],
  ] as const)
    cables.push(`  - {from: s${switches - one}/${cameras + 15}, to: s${other}/${cameras + 16}}`);
  return `devices:\n${devices.join('\n')}\ncables:\n${cables.join('\n')}\nstreams:\n${streams.join('\n')}\n`;
}
