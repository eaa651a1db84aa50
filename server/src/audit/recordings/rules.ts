/** The rules of the audit of recordings. */

import type { RuleInfo } from '../../lint/rule.ts';

const BY_NAME = 'Times are those of the names, which the recorder gives when it opens a file: strftime(3).';

export const recordingRules = {
  absent: {
    id: 'recording-absent',
    severity: 'error',
    summary: 'A recording has no file.',
    why: `Nothing of it is kept, which is commonly noticed when it is needed. Look whether the recorder runs, and
whether its files have the names that \`file\` says: files with other names are reported as unplanned.`,
  },
  stopped: {
    id: 'recording-stopped',
    severity: 'error',
    summary: 'No file of a recording has been begun for longer than one lasts.',
    why: `It is not being recorded any more. Look at the recorder's log, and whether the camera can be reached. Where
the folder is a copy, \`--now\` says when it was made.`,
    source: BY_NAME,
  },
  gap: {
    id: 'recording-gap',
    severity: 'warning',
    summary: 'Between files of a recording is time that none of them has.',
    why: `A file that follows later than the one before can last, by \`segment\` and the keyframe interval, leaves a
gap. Look in the recorder's log what happened then: the camera, the network or the recorder was off, or two files got
one name and the second overwrote the first.`,
    source: `${BY_NAME} A segment ends at the first keyframe at or after its time: FFmpeg's segment muxer, measured.`,
  },
  short: {
    id: 'segment-short',
    severity: 'information',
    summary: 'Files of a recording are shorter than planned: it stopped and began anew.',
    why: `Each time the stream stops or the recorder is started again, a file ends early. Now and then that is to be
expected; where it makes more than two short files a day it is a warning. A recorder that cuts by the clock makes two
each time, one before and one after; the first of a recording, and the first after a gap, do not count.`,
    source: `${BY_NAME} How many are too many: common practice, no source.`,
  },
  length: {
    id: 'segment-length-differs',
    severity: 'warning',
    summary: 'Most files of a recording are longer or shorter than planned.',
    why: `The recorder cuts otherwise than \`segment\` says, or keyframes are further apart than declared; or two
recorders write to one folder. The number of files, and what is lost when one is damaged, follow from the length.
Correct the recorder or \`segment\`.`,
    source: BY_NAME,
  },
  overlap: {
    id: 'recording-overlap',
    severity: 'warning',
    summary: 'Two files of a recording have the same time.',
    why: `Two recorders write at once, or the clock was put back. It takes twice the room, and files of one name
overwrite each other.`,
    source: `${BY_NAME} Where lengths were not read, they are taken from sizes and the rate of the files before.`,
  },
  repeatedHour: {
    id: 'repeated-hour-recorded',
    severity: 'warning',
    summary: 'The hour that clocks showed twice is lost in part, or nobody can tell which of the two a file is of.',
    why: `Names without an offset from UTC come again when clocks go back: a file of the second pass overwrites that
of the first, or lies between them. Add \`%z\` to \`file\` before the next time. What is lost stays lost; files
of the two passes can be distinguished by the time when each was last written to, as long as they were not copied.`,
    source: `IANA time-zone database. ${BY_NAME}`,
  },
  clock: {
    id: 'recorder-clock',
    severity: 'warning',
    summary: "The names of a recording's files tell times that cannot be.",
    why: `They lie in the future or before 2000, or clocks of the site's zone never showed them, or the file was last
written to before the time of its name. The recorder's clock was wrong, or keeps another zone than the site says. Such
files are deleted too early or never, and prove nothing. Set the clock by NTP, and the zone.`,
    source: `IANA time-zone database. ${BY_NAME}`,
  },
  empty: {
    id: 'file-empty',
    severity: 'warning',
    summary: 'Files of a recording have no byte in them.',
    why: `The recorder opened a file and got nothing, or the disk was full. The file that is being written may be
empty, and is not reported.`,
  },
  damaged: {
    id: 'file-damaged',
    severity: 'warning',
    summary: 'Files of a recording cannot be read by ffprobe.',
    why: `A file in MP4 that was cut short, by a power cut say, has no index and will not play. Only files that
\`--probe\` looked into are reported. Matroska, MPEG-TS and fragmented MP4 can be read up to where they end.`,
  },
  unplanned: {
    id: 'file-unplanned',
    severity: 'information',
    summary: 'A volume holds files that no recording plans.',
    why: `They take room that the plan does not have, and nothing deletes them. Recordings of a name that was given up
are commonly kept for longer than anybody may. Delete or move them, or declare what writes them.`,
  },
  unreadable: {
    id: 'folder-unreadable',
    severity: 'warning',
    summary: 'A folder of a volume could not be looked into.',
    why: 'What is in it has not been audited. Run the audit as a user who may read it.',
  },
  keptTooLong: {
    id: 'kept-too-long',
    severity: 'warning',
    summary: 'A recording is kept for longer than planned.',
    why: `What is older than \`keep\` is not deleted: the volume fills, and where people are in the picture, keeping
it may be against the law. Look whether the deletion runs. A day more than \`keep\` is allowed for the time until it
runs next, an hour more than \`at-most\`.`,
    source: 'How long a deletion may be due: common practice, no source.',
  },
  keptTooShort: {
    id: 'kept-too-short',
    severity: 'warning',
    summary: 'A recording is deleted before its time.',
    why: `It has been recorded for longer than its oldest file is old, as \`--since\` or a folder of an earlier day
shows that was emptied. Something deletes files too early, commonly because the volume is full.`,
  },
  bitRate: {
    id: 'recorded-bitrate-differs',
    severity: 'warning',
    summary: 'A recording takes more or less room than the declared bit rate.',
    why: `Days until a disk is full follow from what is declared. It is a warning where more is written, and
information where less is. Take the measured figure into the site, or correct the camera.`,
    source: 'Bytes over time of whole segments; up to 10 % either way is not reported (common practice, no source).',
  },
  reserve: {
    id: 'volume-below-reserve',
    severity: 'warning',
    summary: 'A volume has less free than its reserve.',
    why: `A file system that is full loses what is being written, and is slow before. Delete what nobody plans, or keep
less.`,
  },
  fills: {
    id: 'volume-fills',
    severity: 'warning',
    summary: 'A volume will be full before its recordings reach the time that they are to be kept.',
    why: `At the measured rates, what is still to be written before anything is due for deletion is more than there is
room for. Keep less, lower the rates or add disks.`,
  },
  smaller: {
    id: 'volume-smaller',
    severity: 'warning',
    summary: 'The file system at the path of a volume is smaller than planned.',
    why: `A disk may not be mounted, so that everything is written to the system's own; or the capacity in the site is
wrong. A tenth less is allowed for what the file system itself needs.`,
    source: 'statfs(2); the tenth: common practice, no source.',
  },
  volumeAbsent: {
    id: 'volume-absent',
    severity: 'error',
    summary: 'The path of a volume is not on the machine that has its other volumes.',
    why: 'Its disk is not mounted, or the path is wrong: nothing of it was audited, and nothing may be recorded there.',
  },
} as const satisfies Record<string, RuleInfo>;
