import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Client } from './client.ts';

/**
 * Waits until the server has answered what it was sent before, and has read and checked sites since.
 *
 * @param folders names of folders in `parent` that hold sites
 */
export async function hasSettled(server: Client, parent: string, folders: readonly string[]): Promise<void> {
  const text = 'devices:\n  paddock-cam: {kind: camera, address: 192.168.20.31}\n';
  const marker = await server.open(join(parent, 'marker.site.yaml'), text);
  for (let round = 0; round < 10; round++) {
    for (const own of folders)
      await server.connection.sendRequest('plumbline/outputs', { folder: pathToFileURL(join(parent, own)).href });
    await server.change(marker, `${text}# ${round}\n`);
    await server.diagnostics(marker);
  }
  await server.close(marker);
}
