/** Which keys of a device go beside `ports`. */

const FORWARDS = ['switch', 'access-point', 'media-converter'];

/** The keys of the port, in a device of one port. */
const OF_THE_PORT = ['address', 'mac', 'speed', 'poe'];

/** Whether the key makes sense beside the existing ones; every key does while the kind is not known. */
export function fitsBeside(key: string, kind: string | undefined, beside: readonly string[]): boolean {
  if (kind === undefined) return true;
  // The address by which a switch is managed belongs to none of its ports.
  const ofThePort = FORWARDS.includes(kind) ? OF_THE_PORT.filter((own) => own !== 'address') : OF_THE_PORT;
  if (key === 'ports') return !ofThePort.some((own) => beside.includes(own));
  return !ofThePort.includes(key) || !beside.includes('ports');
}
