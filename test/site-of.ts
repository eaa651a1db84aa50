/** A site of one file, for tests of computed figures. */

import assert from 'node:assert/strict';
import { type Port, type Site, portName } from '../server/src/site/model.ts';
import { folderOf } from './site.ts';

/** All of the text must fit the site language. */
export function siteOf(text: string): Site {
  const site = folderOf({ 'file:///harrow-lane/all.site.yaml': text }).site();
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
