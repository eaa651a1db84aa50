/** Names in the configuration of dnsmasq, where a comma separates fields and # starts a comment. */

/**
 * A device's name as a label of a host name: letters, digits and hyphens, no hyphen at either end, at most 63
 * characters (RFC 952, RFC 1123 §2.1, RFC 1035 §2.3.1; from memory). An underscore becomes a hyphen or, at an end, is
 * left out, and a capital becomes a small letter, as host names ignore case.
 *
 * @returns `undefined` for a name that cannot become a label
 */
export function hostLabel(name: string): string | undefined {
  const label = name
    .toLowerCase()
    .replaceAll('_', '-')
    .replace(/^-+|-+$/g, '');
  return /^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(label) ? label : undefined;
}
