/** The rules of the audit of announcements. */

import type { RuleInfo } from '../../lint/rule.ts';

export const announcementRules = {
  missing: {
    id: 'stream-not-announced',
    severity: 'warning',
    summary: 'A multicast stream is not announced.',
    why: `Players and recorders that take their list from announcements do not show it. Make its description anew, look
whether the announcer runs (\`systemctl status 'plumbline-announce-*'\`), and whether the capture was taken where
announcements arrive: a switch that snoops sends them only to who has joined their group.`,
    source: 'RFC 2974 §3.1: each session is announced again after at most 4/3 of the interval, read',
  },
  unplanned: {
    id: 'announced-unplanned',
    severity: 'warning',
    summary: 'A session is announced that no stream of the site is.',
    why: `Something sends in this network that the loads do not count, or its announcement was forgotten when it was taken
out. Add the stream, or end what announces it.`,
  },
  otherwise: {
    id: 'announced-otherwise',
    severity: 'error',
    summary: 'A stream is announced with another group, port, TTL, codec or source than it is planned with.',
    why: `Who follows the announcement joins the wrong group, listens on the wrong port or cannot decode, and gets no
picture. Make the description anew where the site is right, or correct the site.`,
    source: 'RFC 8866 §5.7, §5.14, §6.6; RFC 4570 §3 (source), read',
  },
  twice: {
    id: 'announced-twice',
    severity: 'warning',
    summary: 'Several sessions or announcers announce one group.',
    why: `Either two senders use one group, and receivers get both mixed, or one stream is announced by two hosts, which
will differ as soon as one of them is forgotten. End one of them.`,
    source: 'RFC 8866 §5.2: the o= line tells sessions apart, read',
  },
  rarely: {
    id: 'announced-too-rarely',
    severity: 'warning',
    summary: 'A stream is announced less often than it should be.',
    why: `Whoever starts to listen waits longer for it, and after ten intervals without one it counts as gone. Announcements
get lost where links are full or a switch does not know who listens; or the announcer has stopped.`,
    source: 'RFC 2974 §3.1, §4: at most 4/3 of the interval apart; read, and from memory',
  },
  often: {
    id: 'announced-too-often',
    severity: 'information',
    summary: 'A stream is announced more often than it may be.',
    why: `All announcements of a group together are to stay below 4000 bit/s unless it is agreed otherwise, so that any
link can carry them. Give the announcer its usual interval.`,
    source: 'RFC 2974 §3.1: at least 2/3 of the interval apart, read',
  },
  withdrawn: {
    id: 'announcement-withdrawn',
    severity: 'warning',
    summary: 'The announcement of a planned stream was withdrawn.',
    why: `Players take it off their list. The announcer was ended, or the description taken away; start it again, or take the
stream out of the site.`,
    source: 'RFC 2974 §4 (explicit deletion), from memory',
  },
  elsewhere: {
    id: 'announced-elsewhere',
    severity: 'warning',
    summary: 'A stream is announced on another group than that of its scope.',
    why: `Sessions are announced on the highest address of their scope: 239.255.255.255 for 239.255.0.0/16, 239.195.255.255 for
239.192.0.0/14, and 224.2.127.254 for groups of global scope. Who looks there finds nothing.`,
    source: 'RFC 2974 §3, RFC 2365 §9, read',
  },
} as const satisfies Readonly<Record<string, RuleInfo>>;
