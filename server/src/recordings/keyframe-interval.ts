import type { Recording, Site } from '../site/model.ts';

/** Of what is recorded, in milliseconds; `undefined` where the site does not say. */
export function keyframeIntervalOf({ streamByName, mediaOf }: Site, { stream: name }: Recording): number | undefined {
  const stream = name === undefined ? undefined : streamByName.get(name);
  return stream === undefined ? undefined : mediaOf(stream).video?.keyframeInterval;
}
