/** A site of one file, for tests of what is computed from it. */

import assert from 'node:assert/strict';
import { SiteFolder } from '../server/src/site/folder.ts';
import { type Port, type Site, portName } from '../server/src/site/model.ts';

/** All of the text must fit the site language. */
export function siteOf(text: string): Site {
  const folder = new SiteFolder();
  folder.set('file:///harrow-lane/all.site.yaml', text);
  const site = folder.site();
  assert.deepEqual(
    site.items.flatMap(({ problems }) => problems),
    [],
  );
  return site;
}

export function portOf(site: Site, name: string): Port {
  const port = site.ports.find((candidate) => portName(candidate) === name);
  assert.ok(port !== undefined, `${name} is a port`);
  return port;
}
