/** The rules of the audit of counters. */

import type { RuleInfo } from '../../lint/rule.ts';

export const counterRules = {
  above: {
    id: 'port-above-plan',
    severity: 'warning',
    summary: 'A port carried more than the streams that are planned there.',
    why: `Something sends more than it is declared to, or is sent where nobody wants it: an encoder set to a higher bit
rate, a viewer that the site does not know, a group that a switch without IGMP snooping floods. What the plan says of
links, disks and days does not hold then. It is a warning where the busiest stretch was above the planned peak, and
information where only the average was above the planned average. Correct the encoder or the switch, or declare in the
site what is really sent. The stream that is named is the one whose rate fits the difference best: a guess from
figures, to be looked at before anything is changed.`,
    source:
      'Octets: RFC 2863 §6 (ifInOctets, ifOutOctets), RFC 3635 §3.2.5 (with the check sequence); Linux counts without.',
  },
  below: {
    id: 'port-below-plan',
    severity: 'warning',
    summary: 'A port carried less than the streams that are planned there.',
    why: `A stream that is planned has not come: its camera is off, a receiver has not joined, a switch does not know
who wants it, or it was not running all the time. It is a warning where the rate of one stream, of two or of all fits
what is missing, and information where none does: a quiet picture needs less than the declared rate, so the declared
rate may only be too high. The stream that is named is a guess from figures: look whether it arrives.`,
    source: 'Octets: RFC 2863 §6, RFC 3635 §3.2.5.',
  },
  unplanned: {
    id: 'port-not-planned',
    severity: 'warning',
    summary: 'A port carried traffic, but nothing is connected to it in the site.',
    why: `The site does not know the port, or no cable at it, so nothing of what it carries is in the plan. Declare the
port and its cable; where the operating system calls a port by another name than the site does, say that name by
\`interface\`.`,
    source: 'Common practice.',
  },
  dropped: {
    id: 'port-drops',
    severity: 'warning',
    summary: 'A port dropped frames or received damaged ones.',
    why: `A lost frame is a torn picture: multicast is not sent again. Discards come of bursts that are longer than the
port's queue, or of a port slower than what is sent to it; errors come of a damaged cable or plug, of one too long, or
of two ends that disagree on duplex. Frames that Linux drops on receipt are not counted here, since it counts those too
that nothing on the host has asked for.`,
    source: 'RFC 2863 §6: ifInDiscards, ifInErrors, ifOutDiscards, ifOutErrors.',
  },
  unknown: {
    id: 'counter-too-small',
    severity: 'warning',
    summary: 'A counter of 32 bits may have wrapped more than once between two samples.',
    why: `A counter of 32 bits is full after 4.29 GB: in 34 s at 1 Gb/s. Where samples lie further apart than that,
nobody can tell how often it began anew, and the port is not compared in that time. Take samples more often, or read
the counters of 64 bits, ifHCInOctets and ifHCOutOctets.`,
    source: 'RFC 2863 §3.1.6: 64-bit counters for interfaces above 20 Mb/s; §6: ifCounterDiscontinuityTime.',
  },
} as const satisfies Record<string, RuleInfo>;
