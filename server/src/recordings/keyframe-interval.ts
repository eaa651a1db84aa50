import type { Recording, Site } from '../site/model.ts';

/** Of what is recorded, in milliseconds; `undefined` where the site does not say. */
export function keyframeIntervalOf({ streamByName, media }: Site, { stream }: Recording): number | undefined {
  const index = stream === undefined ? undefined : streamByName.get(stream)?.index;
  return index === undefined ? undefined : media[index]?.video?.keyframeInterval;
}
