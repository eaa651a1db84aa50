/** The rules of the audit of a probed stream. */

import type { RuleInfo } from '../../lint/rule.ts';

const WHAT_FOLLOWS = `Loads of links, fill of disks and the lengths of recorded files follow from what is declared.
Correct the camera or encoder, or take what was measured into the site.`;

export const probeRules = {
  missing: {
    id: 'media-missing',
    severity: 'warning',
    summary: 'A stream has no video or no audio, although it is declared to.',
    why: `Whoever watches sees or hears less than is planned, or the site plans more than there is. ${WHAT_FOLLOWS}`,
  },
  undeclared: {
    id: 'media-undeclared',
    severity: 'warning',
    summary: 'A stream has video or audio that is not declared.',
    why: `It takes room on links and disks that the plan does not have. Sound is also a matter of its own where people
are: many places have stricter law for recording what is said than for pictures. Turn it off in the camera, or declare
it. ${WHAT_FOLLOWS}`,
  },
  codec: {
    id: 'codec-differs',
    severity: 'warning',
    summary: 'A stream is encoded otherwise than declared.',
    why: `A screen or a recorder that was chosen for the declared codec may show or keep nothing. ${WHAT_FOLLOWS}`,
  },
  size: {
    id: 'size-differs',
    severity: 'warning',
    summary: 'The pictures of a stream are of another size than declared.',
    why: `Less is seen than was planned for, or more is sent. ${WHAT_FOLLOWS}`,
  },
  frameRate: {
    id: 'frame-rate-differs',
    severity: 'warning',
    summary: 'A stream has another number of pictures per second than declared.',
    why: `Many cameras send fewer pictures in poor light, so look at it by day too. ${WHAT_FOLLOWS}`,
    source: 'Pictures that come within 2 % of the declared number count as that many; common practice, no source.',
  },
  keyframeInterval: {
    id: 'keyframe-interval-differs',
    severity: 'warning',
    summary: 'The keyframes of a stream are further apart or closer together than declared.',
    why: `A recording is cut at keyframes only, and a screen shows nothing before it has one; more of them than are
needed cost bit rate. ${WHAT_FOLLOWS}`,
  },
  bitRate: {
    id: 'bitrate-differs',
    severity: 'warning',
    summary: 'A stream sends more or less than the declared bit rate.',
    why: `It is a warning where more is sent, and information where less is, which a quiet picture does too: measure
when much moves, for a minute at least. ${WHAT_FOLLOWS}`,
  },
  peak: {
    id: 'peak-bitrate-exceeded',
    severity: 'warning',
    summary: 'A stream sends more at its busiest than the declared peak.',
    why: `The busiest stretch as long as a keyframe interval, a second at least, is held against \`peak-bitrate\`. Links
that are laid out for the peak may drop packets. ${WHAT_FOLLOWS}`,
  },
  sampleRate: {
    id: 'sample-rate-differs',
    severity: 'warning',
    summary: 'The audio of a stream has another sample rate than declared.',
    why: `What takes only the declared rate plays it too slowly, too fast or not at all. ${WHAT_FOLLOWS}`,
  },
  channels: {
    id: 'channels-differ',
    severity: 'warning',
    summary: 'The audio of a stream has another number of channels than declared.',
    why: `Uncompressed sound takes more bit rate with each channel, and a player may not take so many. ${WHAT_FOLLOWS}`,
  },
} as const satisfies Record<string, RuleInfo>;
