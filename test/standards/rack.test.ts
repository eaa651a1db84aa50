import assert from 'node:assert/strict';
import { HOLES, OPENING, PANEL_WIDTH, UNIT, panelHeight } from '../../server/src/standards/rack.ts';

// Source: IEC 60297-3-100 and EIA-310, which were made in inches: a unit is 1 3/4 in, a panel 19 in; holes are 5/8, 5/8
// and 1/2 in apart. The inch is 25.4 mm.
describe('Racks of 19 inches', () => {
  const inches = (number: number): number => Number((number * 25.4).toFixed(4));

  it('have units of an inch and three quarters', () => assert.equal(UNIT, inches(1.75)));

  it('have panels of 19 inches', () => assert.equal(PANEL_WIDTH, inches(19)));

  it('have three holes a unit', () => {
    assert.deepEqual(HOLES, [inches(0.625), inches(0.625), inches(0.5)]);
    assert.equal(
      HOLES.reduce((sum, hole) => sum + hole),
      UNIT,
    );
  });

  it('have less room between the posts than a panel is wide', () => assert.ok(OPENING < PANEL_WIDTH));

  // Source: heights of panels as catalogues give them, from memory: 43.65 mm for one unit, 88.1 mm for two.
  it('have panels a little lower than their units', () => {
    assert.equal(Number(panelHeight(1).toFixed(2)), 43.65);
    assert.equal(Number(panelHeight(2).toFixed(2)), 88.1);
  });
});
