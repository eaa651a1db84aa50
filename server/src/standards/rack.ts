/**
 * Racks of 19 inches: IEC 60297-3-100, the same as EIA-310 (figures from secondary pages). All in millimetres.
 */

/** The height of a unit. */
export const UNIT = 44.45;

/** The width of a front panel. */
export const PANEL_WIDTH = 482.6;

/** The clear width between the posts. */
export const OPENING = 450;

/** From hole to hole along a post; the three make a unit. */
export const HOLES: readonly number[] = [15.875, 15.875, 12.7];

/** The height of a front panel of so many units: a little less than the units, to leave play (from memory). */
export function panelHeight(units: number): number {
  return units * UNIT - 0.8;
}
