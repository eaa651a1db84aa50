/** The names of a recording's files, if FFmpeg, date(1) and find(1) all read them alike. */

import { perObject } from '../../memo.ts';
import { type NameStep, stepsOf } from '../../recordings/name-steps.ts';
import { placeOf } from '../../site/item.ts';
import type { Recording, Volume } from '../../site/model.ts';
import { type Conversion, isSpecifier, parsePattern, resolution } from '../../standards/strftime.ts';
import { format } from '../../standards/strftime-format.ts';
import type { Refusal } from '../output.ts';
import { unitPath } from '../quoting/unit.ts';
import { zonedTime } from '../../standards/time-zone.ts';

export interface NamePattern {
  /** The mount point of the volume, without a slash at the end. */
  readonly volume: string;
  /** Below the volume, without `.` and empty parts. */
  readonly pattern: string;
  /** The pattern of its folder; empty where the files are in the volume itself. */
  readonly folder: string;
  /** The folders that all paths start with, without conversions. */
  readonly fixed: string;
  readonly steps: readonly NameStep[];
}

/** FFmpeg has room for 1023 bytes (libavformat/segment.c, from memory); Linux for 255 in each part (NAME_MAX). */
const LONGEST_PATH = 1023;
const LONGEST_PART = 255;

/** Names are longest on a Wednesday in September. */
const LONGEST_NAME = zonedTime('+0100', Date.UTC(2026, 8, 30, 21, 22, 22));

export function namePattern(recording: Recording, volume: Volume): NamePattern | Refusal {
  return patternsOf(recording)(volume);
}

const patternsOf = perObject((recording: Recording) => perObject((volume: Volume) => readPattern(recording, volume)));

function readPattern(recording: Recording, volume: Volume): NamePattern | Refusal {
  const root = mountPoint(volume);
  if (typeof root !== 'string') return root;
  const { name } = recording;
  const refuse = (rule: string, message: string): Refusal => ({
    rule,
    at: placeOf(recording.item, ['file']),
    message,
  });
  const parts = filePatternText(recording)
    .split('/')
    .filter((part) => part !== '' && part !== '.');
  const pattern = parts.join('/');
  const unknown = conversionsOf(pattern).find(({ specifier }) => !isSpecifier(specifier));
  if (unknown !== undefined)
    return refuse(
      'unknown-conversion',
      `The files of ${name} cannot have these names: strftime knows no ${unknown.text}. Take another conversion.`,
    );
  const why = unfit(pattern, root);
  if (why !== undefined) return refuse('file-pattern', `The files of ${name} cannot have these names: ${why}.`);
  const steps = stepsOf(pattern);
  if ('unreadable' in steps)
    return refuse(
      'file-pattern',
      `The files of ${name} cannot be told from others by their names: ${steps.unreadable}.`,
    );
  const folder = parts.slice(0, -1).join('/');
  const plain = parts.slice(0, -1);
  const moving = plain.findIndex((part) => part.includes('%'));
  return {
    volume: root,
    pattern,
    folder,
    fixed: (moving === -1 ? plain : plain.slice(0, moving)).join('/'),
    steps,
  };
}

/** The volume's path without a slash at the end, or why systemd does not take it. */
export function mountPoint({ item, name, path }: Volume): string | Refusal {
  const root = path.replace(/\/+/g, '/').replace(/(.)\/$/, '$1');
  const refuse = (message: string): Refusal => ({ rule: 'volume-path', at: placeOf(item, ['path']), message });
  if (root.split('/').some((part) => part === '.' || part === '..'))
    return refuse(`The path of ${name} has . or .. in it, which systemd does not take. Write it without.`);
  if (root === '/')
    return refuse(`${name} is the whole file system, where nothing is to be written or deleted. Say a folder.`);
  if (unitPath(root) === undefined)
    return refuse(
      `The path of ${name} cannot be written into a unit: it has a control character, a backslash, quotes of both ` +
        'kinds, or a part of more than 255 bytes. Mount it elsewhere.',
    );
  return root;
}

/** The declared file pattern, or a default one in a folder with the recording's name. */
export function filePatternText({ name, file }: Recording): string {
  return file ?? `${name}/%Y-%m-%d_%H-%M-%S%z.mkv`;
}

function conversionsOf(pattern: string): Conversion[] {
  return parsePattern(pattern).flatMap((part) => ('specifier' in part ? [part] : []));
}

const UNSEEN =
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/** Why the three programs would not write, find and delete the same files; `undefined` where they do. */
function unfit(pattern: string, root: string): string | undefined {
  if (pattern === '') return 'that is no name';
  if (UNSEEN.test(pattern) || /%[-_0^#]*\d*[EO]?[nt]/.test(pattern))
    return 'there is a line end or another control character in it. Take it out';
  if (pattern.split('/').includes('..')) return 'it leads out of the volume by `..`. Name a folder below the volume';
  if (pattern.replace(/%[-_0^#]*\d*[EO]?[A-Za-z%]/g, '').includes('%'))
    return 'a % stands for itself only as %%. Double it';
  const conversions = conversionsOf(pattern);
  const slashed = conversions.find(({ specifier }) => specifier === 'D' || specifier === 'x');
  if (slashed !== undefined) return `${slashed.text} brings slashes along, and so folders. Write %m, %d and %y`;
  if (conversions.some(({ width }) => width > LONGEST_PART))
    return `a conversion is wider than the ${LONGEST_PART} bytes of a name`;
  const finest = resolution(pattern.slice(0, Math.max(0, pattern.lastIndexOf('/'))));
  if (finest === 'second' || finest === 'minute')
    return `a folder for each ${finest} cannot be made ahead. Put no more than the hour into folders`;
  const longest = format(pattern, LONGEST_NAME, '+0100');
  const bytes = (text: string): number => new TextEncoder().encode(text).length;
  if (bytes(`${root}/${longest}`) > LONGEST_PATH)
    return `with ${root.slice(0, 40)} before it, it is longer than ${LONGEST_PATH} bytes. Shorten it`;
  if (longest.split('/').some((part) => bytes(part) > LONGEST_PART))
    return `a part of it is longer than ${LONGEST_PART} bytes. Shorten it`;
  return undefined;
}

/** A path escaped for strftime. */
export function unconverted(path: string): string {
  return path.replaceAll('%', '%%');
}
