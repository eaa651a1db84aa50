/** User and password of a camera: in a file on the server that systemd hands to the service alone. */

import type { Device } from '../../site/model.ts';
import { SETTINGS } from './service.ts';

export function credentialLines(name: string | undefined): readonly string[] {
  return name === undefined ? [] : [`LoadCredential=${name}:${SETTINGS}/credentials/${name}`];
}

export function credentialNotes(name: string | undefined, { name: host }: Device): readonly string[] {
  if (name === undefined) return [];
  const file = `${SETTINGS}/credentials/${name}`;
  return [`On ${host}, ${file} must hold the user in its first line and the password in its second. Make it with \`install -D -m 0600 /dev/null ${file}\` before you write it, so that nobody but root can read it. A unit that ends with 243/CREDENTIALS lacks it.`];
}
