/** Which keys go with which kind of device. */

const FORWARDS = ['switch', 'access-point', 'media-converter'];

const ONLY_OF: Readonly<Record<string, readonly string[]>> = {
  'igmp-snooping': ['switch', 'access-point'],
  'unregistered-multicast': ['switch', 'access-point'],
  'spanning-tree': ['switch', 'access-point'],
  'spanning-tree-priority': ['switch', 'access-point'],
  'poe-budget': ['switch', 'media-converter', 'router'],
  'multicast-routing': ['router'],
};

/** The keys of the port, in a device of one port. */
const OF_THE_PORT = ['address', 'mac', 'speed', 'poe'];

/** Whether the key makes sense beside those that are there; all do while the kind is not known. */
export function fitsDevice(key: string, kind: string | undefined, beside: readonly string[]): boolean {
  if (kind === undefined) return true;
  if (kind === 'patch-panel') return ['ports', 'description', 'model', 'location'].includes(key);
  const only = ONLY_OF[key];
  if (only !== undefined && !only.includes(kind)) return false;
  if (key === 'ports')
    return !OF_THE_PORT.some((own) => beside.includes(own) && !(own === 'address' && FORWARDS.includes(kind)));
  if (!OF_THE_PORT.includes(key) || !beside.includes('ports')) return true;
  // The address by which a switch is managed belongs to none of its ports.
  return key === 'address' && FORWARDS.includes(kind);
}
