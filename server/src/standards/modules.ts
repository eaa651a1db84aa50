/**
 * Modules for the cages of switches and cards: what each kind of Ethernet needs between its two ends.
 *
 * Sources: 1000BASE-SX and -LX, IEEE 802.3 clause 38, secondary (a glossary's table of 802.3z by fibre); 100BASE-FX,
 * 10GBASE-LR and -ER secondary (a university's table of media); 10GBASE-LRM, clause 68, secondary (a maker's manual
 * with the table of 802.3aq); 10GBASE-SR and 40GBASE-SR4 on OM3 and OM4 secondary (Ethernet Alliance, 2012);
 * 1000BASE-BX10 secondary (a dictionary and a maker's manual). All else is from memory of the clauses that are named;
 * none was read.
 */

import type { CableType, Reach, Verified } from './cabling.ts';

export type Medium = 'copper' | 'multimode' | 'single-mode' | 'direct-attach';

export type ModuleName = keyof typeof modules;

export interface Module {
  /** bit/s */
  readonly speed: number;
  readonly medium: Medium;
  /** How many fibres one link takes; `undefined` for copper. */
  readonly fibres: number | undefined;
  /** The nominal wavelengths in nm that it sends and receives; `undefined` for copper. */
  readonly sends: number | undefined;
  readonly hears: number | undefined;
  readonly clause: string;
  readonly verified: Verified;
  /** Metres by the types of cable that it is specified for; empty for copper, whose reach the cable sets. */
  readonly reach: Readonly<Partial<Record<CableType, number>>>;
}

const M = 1e6;
const G = 1e9;
const MEMORY = 'from memory';
const SECOND = 'secondary';

/** Two fibres, one each way, with the same wavelength in both. */
function pair(
  speed: number,
  medium: Medium,
  wavelength: number,
  [clause, verified]: readonly [string, Verified],
  reach: Module['reach'],
): Module {
  return { speed, medium, fibres: 2, sends: wavelength, hears: wavelength, clause, verified, reach };
}

/** One fibre for both ways, with a wavelength each. */
function single(speed: number, [sends, hears]: readonly [number, number], clause: string, verified: Verified): Module {
  return { speed, medium: 'single-mode', fibres: 1, sends, hears, clause, verified, reach: { os2: 10_000 } };
}

function copper(speed: number, clause: string): Module {
  const nothing = { fibres: undefined, sends: undefined, hears: undefined };
  return { speed, medium: 'copper', ...nothing, clause, verified: MEMORY, reach: {} };
}

const modules = {
  '100base-fx': pair(100 * M, 'multimode', 1310, ['clause 26', SECOND], {
    om1: 2000,
    om2: 2000,
    om3: 2000,
    om4: 2000,
    om5: 2000,
  }),
  '100base-lx10': pair(100 * M, 'single-mode', 1310, ['clause 58', MEMORY], { os2: 10_000 }),
  '100base-bx10-d': single(100 * M, [1550, 1310], 'clause 58', MEMORY),
  '100base-bx10-u': single(100 * M, [1310, 1550], 'clause 58', MEMORY),
  '1000base-t': copper(G, 'clause 40'),
  '1000base-sx': pair(G, 'multimode', 850, ['clause 38', SECOND], { om1: 275, om2: 550, om3: 550, om4: 550, om5: 550 }),
  '1000base-lx': pair(G, 'single-mode', 1310, ['clause 38', SECOND], {
    om1: 550,
    om2: 550,
    om3: 550,
    om4: 550,
    om5: 550,
    os2: 5000,
  }),
  '1000base-lx10': pair(G, 'single-mode', 1310, ['clause 59', MEMORY], {
    om1: 550,
    om2: 550,
    om3: 550,
    om4: 550,
    om5: 550,
    os2: 10_000,
  }),
  '1000base-bx10-d': single(G, [1490, 1310], 'clause 59', SECOND),
  '1000base-bx10-u': single(G, [1310, 1490], 'clause 59', SECOND),
  '2.5gbase-t': copper(2.5 * G, 'clause 126'),
  '10gbase-t': copper(10 * G, 'clause 55'),
  '10gbase-sr': pair(10 * G, 'multimode', 850, ['clause 52', SECOND], {
    om1: 33,
    om2: 82,
    om3: 300,
    om4: 400,
    om5: 400,
  }),
  '10gbase-lrm': pair(10 * G, 'multimode', 1310, ['clause 68', SECOND], {
    om1: 220,
    om2: 220,
    om3: 220,
    om4: 220,
    om5: 220,
  }),
  '10gbase-lr': pair(10 * G, 'single-mode', 1310, ['clause 52', SECOND], { os2: 10_000 }),
  '10gbase-er': pair(10 * G, 'single-mode', 1550, ['clause 52', SECOND], { os2: 40_000 }),
  '10gbase-br10-d': single(10 * G, [1330, 1270], 'clause 158', MEMORY),
  '10gbase-br10-u': single(10 * G, [1270, 1330], 'clause 158', MEMORY),
  '25gbase-sr': pair(25 * G, 'multimode', 850, ['clause 112', MEMORY], { om3: 70, om4: 100, om5: 100 }),
  '25gbase-lr': pair(25 * G, 'single-mode', 1310, ['clause 114', MEMORY], { os2: 10_000 }),
  '40gbase-sr4': {
    ...pair(40 * G, 'multimode', 850, ['clause 86', SECOND], { om3: 100, om4: 150, om5: 150 }),
    fibres: 8,
  },
  '40gbase-lr4': pair(40 * G, 'single-mode', 1310, ['clause 87', MEMORY], { os2: 10_000 }),
} as const satisfies Readonly<Record<string, Module>>;

export function moduleNamed(name: string): Module | undefined {
  return Object.hasOwn(modules, name) ? modules[name as ModuleName] : undefined;
}

export const MODULE_NAMES = Object.keys(modules) as ModuleName[];

/** Whether each of two modules receives the wavelength that the other sends. */
export function meet(a: Module, b: Module): boolean {
  return a.medium === 'copper'
    ? b.medium === 'copper'
    : a.speed === b.speed && a.fibres === b.fibres && a.sends === b.hears && b.sends === a.hears;
}

/** How far a module reaches over a type of cable; `undefined` where it is not made for that. */
export function reachOf(name: string, module: Module, type: CableType): Reach | undefined {
  const metres = module.reach[type];
  if (metres === undefined) return undefined;
  return { metres, basis: name.toUpperCase(), source: `IEEE 802.3 ${module.clause}`, verified: module.verified };
}

/** The medium that a type of cable is. */
export function mediumOf(type: CableType): Medium {
  if (type === 'dac') return 'direct-attach';
  if (type === 'os2') return 'single-mode';
  return type.startsWith('om') ? 'multimode' : 'copper';
}
