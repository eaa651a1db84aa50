/** The lines at the head of every file: where it comes from, and where changes belong. */

import type { Site } from '../site/model.ts';
import { visible } from '../text/visible.ts';

/**
 * Plain lines without the place's comment sign. No date and no path: the same site gives the same bytes anywhere.
 *
 * @param command how to make it again: `make networkd recorder`
 */
export function header(site: Site, command: string): string[] {
  return [
    `Made by plumbline from the site ${visible(site.name ?? 'without a name')}.`,
    `Changes belong in its *.site.yaml files; then: plumbline ${command}`,
  ];
}

/** The header as comment lines, with a last line end. */
export function commented(sign: string, lines: readonly string[]): string {
  return lines.map((line) => `${sign} ${line}\n`).join('');
}
