/** The lines at the top of every file: where it comes from, and where to change it. */

import type { Site } from '../site/model.ts';
import { visible } from '../text/visible.ts';

/**
 * Lines without comment signs. No date and no path, so that the same site gives the same bytes anywhere.
 *
 * @param command how to make it again: `make networkd recorder`
 */
export function header(site: Site, command: string): string[] {
  return [
    `Made by plumbline from the site ${visible(site.name ?? 'without a name')}.`,
    `Changes belong in its *.site.yaml files; then: plumbline ${command}`,
  ];
}

/** Lines as comments, each with a line end. */
export function commented(sign: string, lines: readonly string[]): string {
  return lines.map((line) => `${sign} ${line}\n`).join('');
}
