/** A playlist as libxml2 reads it, validated by the grammar of XSPF. */

import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unavailable } from '../../availability.ts';
import { inFolder } from '../made.ts';

export function needsXmllint(context: Mocha.Context): void {
  if (spawnSync('xmllint', ['--version']).status !== 0)
    unavailable(context, 'xmllint (libxml2-utils) is not installed');
}

/** What libxml2 says of a playlist, and the titles as it reads them. */
export function validated(xml: string): Promise<{ readonly complaints: string; readonly texts: string }> {
  return inFolder([], (folder) => {
    const file = join(folder, 'playlist.xspf');
    writeFileSync(file, xml);
    const grammar = fileURLToPath(new URL('./xspf-1.rng', import.meta.url));
    const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '--relaxng', grammar, file], {
      encoding: 'utf8',
    });
    const { stdout } = spawnSync('xmllint', ['--nonet', '--xpath', '//*[local-name()="title"]/text()', file], {
      encoding: 'utf8',
    });
    return { complaints: status === 0 ? '' : stderr, texts: stdout };
  });
}
