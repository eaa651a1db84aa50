// What systemd itself reads in a unit: `systemd-analyze verify` loads it, and says at its most talkative what it has
// loaded. Variables are put in later, when a command is run, so `$$` is still there.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Loaded {
  /** What it complains of; empty where the unit is right. */
  readonly complaints: string;
  /** The words of each command, by order. */
  readonly commands: readonly (readonly string[])[];
  /** Values of settings as systemd has them, by the name it prints. */
  readonly settings: ReadonlyMap<string, readonly string[]>;
}

/** Loads a unit. Our scripts are not installed here, nor may FFmpeg be: a program that is takes their places. */
export function loadedBySystemd(name: string, text: string): Loaded {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-unit-'));
  try {
    const program = join(folder, 'program');
    mkdirSync(folder, { recursive: true });
    writeFileSync(program, '#!/bin/sh\n');
    chmodSync(program, 0o755);
    const path = join(folder, name);
    writeFileSync(
      path,
      text.replace(/\/usr\/local\/lib\/plumbline\/[a-z-]+|(?<=^Exec\w+=)\/usr\/bin\/ffmpeg/gm, program),
    );
    const verify = (level: string): string => {
      const { stdout, stderr, status } = spawnSync('systemd-analyze', ['verify', '--man=no', path], {
        encoding: 'utf8',
        env: { ...process.env, SYSTEMD_LOG_LEVEL: level },
      });
      return level === 'debug' ? stdout : status === 0 ? stderr : `exit ${status}: ${stderr}`;
    };
    const dumped = verify('debug');
    const lines = dumped
      .slice(dumped.indexOf(`Unit ${name}`))
      .split('\n')
      .map((line) => line.replace(/^[\t ]*(-> )?/, ''));
    const settings = new Map<string, string[]>();
    for (const line of lines) {
      const [, key, value] = /^([A-Za-z ]+): ([^]*)$/.exec(line) ?? [];
      if (key !== undefined && value !== undefined) settings.set(key, [...(settings.get(key) ?? []), value]);
    }
    return { complaints: verify('info'), commands: (settings.get('Command Line') ?? []).map(shellWords), settings };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * systemd prints a command as a shell would take it: in double quotes, with a backslash before what is special there.
 */
function shellWords(line: string): string[] {
  return [...line.matchAll(/"((?:[^"\\]|\\[^])*)"|([^ "]+)/g)].map(([, quoted, plain]) =>
    quoted === undefined ? (plain ?? '') : unescaped(quoted),
  );
}

const ESCAPES: Readonly<Record<string, string>> = {
  n: '\n',
  t: '\t',
  r: '\r',
  a: '\u0007',
  b: '\b',
  f: '\f',
  v: '\u000b',
};

/** C escapes, those in octal of single bytes. */
function unescaped(text: string): string {
  const bytes: number[] = [];
  for (const [, octal, escape, plain = ''] of text.matchAll(/\\([0-7]{3})|\\([^])|([^\\]+)/g)) {
    if (octal !== undefined) bytes.push(Number.parseInt(octal, 8));
    else bytes.push(...Buffer.from(escape === undefined ? plain : (ESCAPES[escape] ?? escape)));
  }
  return Buffer.from(bytes).toString();
}
