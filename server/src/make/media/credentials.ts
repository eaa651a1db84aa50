/** User and password of a camera: in a file on the server that systemd passes to this service only. */

import type { Device } from '../../site/model.ts';
import { SETTINGS } from './service.ts';

export function credentialLines(name: string | undefined): readonly string[] {
  if (name === undefined) return [];
  return [
    `LoadCredential=${name}:${SETTINGS}/credentials/${name}`,
    '# It is kept there, until the service is stopped, that the camera refused them.',
    'RuntimeDirectory=%N',
    'RuntimeDirectoryPreserve=restart',
  ];
}

export function credentialNotes(name: string | undefined, { name: host }: Device): readonly string[] {
  if (name === undefined) return [];
  const file = `${SETTINGS}/credentials/${name}`;
  return [
    `On ${host}, ${file} must hold the user in its first line and the password in its second. Make it with ` +
      `\`install -D -m 0600 /dev/null ${file}\` before you write it, so that nobody but root can read it. A unit that ` +
      'ends with 243/CREDENTIALS lacks it. A camera that refuses them is asked again after a minute, as some lock out ' +
      'who asks often: stop the unit and start it to ask at once.',
  ];
}
