import assert from 'node:assert/strict';
import { type PoeFigures, poeOf } from '../../server/src/network/poe.ts';
import { networkOf } from '../../server/src/network/network.ts';
import { siteOf } from '../site-of.ts';

function powerFrom(text: string): PoeFigures[] {
  const site = siteOf(text);
  return poeOf(site.devices, networkOf(site).topology.linkAt);
}

/** One device at core/1; mW that core sets aside. */
function drawOf(port: string, device: string, cable = ''): number | undefined {
  return powerFrom(`
devices:
  core: {kind: switch, poe-budget: 130 W, ports: {1: {${port}}}}
  paddock-cam: {kind: camera${device}}
cables:
  - {from: core/1, to: paddock-cam${cable}}
`)[0]?.allotted;
}

// What each class takes at the switch: the Ethernet Alliance's "Overview of 802.3bt" (April 2018), secondary; class 0
// from memory. That a switch serves a bigger device at its own highest class: the same paper.
describe('Power over Ethernet', () => {
  for (const [own, watts] of [
    [0, 15.4],
    [1, 4],
    [2, 7],
    [3, 15.4],
    [4, 30],
    [5, 45],
    [6, 60],
    [7, 75],
    [8, 90],
  ] as const) {
    it(`sets ${watts} W aside for a device of class ${own}`, () => {
      assert.equal(drawOf('poe: bt-type-4', `, poe: {class: ${own}}`), watts * 1000);
    });
  }

  it('sets aside no more than the port gives: 15.4 W for a device of class 4 at 802.3af', () => {
    assert.equal(drawOf('poe: af', ', poe: {class: 4}'), 15_400);
    assert.equal(drawOf('poe: at', ', poe: {class: 5}'), 30_000);
  });

  it('takes the lowest class that gives what a device draws, where it declares no class; class 0 where neither', () => {
    assert.equal(drawOf('poe: at', ', poe: {power: 6 W}'), 7000);
    assert.equal(drawOf('poe: at', ', poe: {power: 13.5 W}'), 30_000);
    assert.equal(drawOf('poe: at', ', poe: {}'), 15_400);
  });

  it('counts nothing at a port that feeds nothing, for a device that draws nothing, and over fibre', () => {
    assert.equal(drawOf('speed: 1 Gb/s', ', poe: {class: 3}'), 0);
    assert.equal(drawOf('poe: at', ''), 0);
    assert.equal(drawOf('poe: at', ', poe: {class: 3}', ', type: os2'), 0);
    assert.equal(drawOf('poe: at', ', poe: {class: 3}', ', type: cat6'), 15_400);
  });

  it('adds up each switch, and one switch that feeds another', () => {
    const sources = powerFrom(`
devices:
  core: {kind: switch, poe-budget: 130 W, ports: {1-8: {poe: at}}}
  barn: {kind: switch, ports: {1: {poe: {class: 4}}, 2-5: {poe: af}}}
  gate-cam: {kind: camera, poe: {class: 2}}
  yard-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: barn/1}
  - {from: core/2, to: yard-cam}
  - {from: barn/2, to: gate-cam}
`);
    assert.deepEqual(
      sources.map(({ device, budget, allotted }) => [device.name, budget, allotted]),
      [
        ['core', 130_000, 45_400],
        ['barn', undefined, 7000],
      ],
    );
  });
});
