/**
 * How many disks' worth of space a set of equal disks leaves for data.
 *
 * Sources: which levels survive what, md(4), read; the formulas from memory, and with them every textbook.
 */

export type Redundancy = 'none' | 'mirror' | 'raid5' | 'raid6' | 'raid10';

/** The fewest disks that each kind is made of. */
export const leastDisks: Readonly<Record<Redundancy, number>> = {
  none: 1,
  mirror: 2,
  raid5: 3,
  raid6: 4,
  raid10: 4,
};

/**
 * The number of disks' worth of data, or undefined where so many disks do not make such a set.
 *
 * RAID 10 is a stripe over mirrored pairs, so it needs an even number. Linux's md can also spread two copies over an
 * odd number of disks and then offers half of all; as few other systems can, such a set is not accepted here.
 */
export function usableDisks(redundancy: Redundancy, disks: number): number | undefined {
  if (!Number.isInteger(disks) || disks < leastDisks[redundancy]) {
    return undefined;
  }
  switch (redundancy) {
    case 'none':
      return disks;
    case 'mirror':
      return 1;
    case 'raid5':
      return disks - 1;
    case 'raid6':
      return disks - 2;
    case 'raid10':
      return disks % 2 === 0 ? disks / 2 : undefined;
  }
}

/** How many disks of such a set, whichever they are, may fail without loss; the same sources. */
export function disksThatMayFail(redundancy: Redundancy, disks: number): number {
  switch (redundancy) {
    case 'none':
      return 0;
    case 'mirror':
      return disks - 1;
    case 'raid6':
      return 2;
    case 'raid5':
    case 'raid10':
      return 1;
  }
}
