/**
 * Interface counters: the names of the Interfaces MIB, and how far a counter advances between two readings.
 *
 * Sources: RFC 2863 (the MIB; its text not at hand, names and meanings from memory), RFC 3635 §3.2.5 (on Ethernet the
 * octets of a frame from its destination address to its check sequence; from memory), RFC 2578 §7.1.6, §7.1.10
 * (counters of 32 and 64 bits wrap to 0; only their differences mean something; from memory).
 */

/** The columns of ifTable and ifXTable, and sysUpTime of RFC 3418, that the audit reads. */
export const IF_MIB = {
  name: ['ifName', 'ifDescr'],
  received: { hc: 'ifHCInOctets', plain: 'ifInOctets' },
  sent: { hc: 'ifHCOutOctets', plain: 'ifOutOctets' },
  /** bit/s, at most 4,294,967,295; and in units of 1,000,000 bit/s. */
  speed: { plain: 'ifSpeed', high: 'ifHighSpeed' },
  lost: ['ifInDiscards', 'ifInErrors', 'ifOutDiscards', 'ifOutErrors'],
  /** The value of sysUpTime when the counters were last reset. */
  discontinuity: 'ifCounterDiscontinuityTime',
  /** Hundredths of a second since the agent started. */
  upTime: 'sysUpTime',
} as const;

/** The value of ifSpeed for a speed above its range (RFC 2863, ifSpeed). */
export const SPEED_BEYOND = 4_294_967_295;

export interface Counter {
  readonly value: bigint;
  readonly bits: 32 | 64;
}

export type Advance =
  | { readonly octets: number }
  /** `began-anew`: it fell by more than a wrap can explain. `too-far`: it may have wrapped more than once. */
  | { readonly unknown: 'began-anew' | 'too-far' };

/**
 * How far a counter advanced.
 *
 * @param most that the interface can have counted in the meantime. Where that is not known, a counter of 32 bits gives
 *   no figure, and one of 64 bits is assumed not to wrap
 */
export function advance(before: Counter, after: Counter, most: number | undefined): Advance {
  if (before.bits !== after.bits) return { unknown: 'began-anew' };
  const size = 1n << BigInt(before.bits);
  const distance = Number((after.value - before.value + size) % size);
  const fell = after.value < before.value;
  if (most === undefined) {
    if (before.bits === 32) return { unknown: 'too-far' };
    return fell ? { unknown: 'began-anew' } : { octets: distance };
  }
  if (distance + Number(size) <= most) return { unknown: 'too-far' };
  return fell && distance > most ? { unknown: 'began-anew' } : { octets: distance };
}
