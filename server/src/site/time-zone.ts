/** The time zone that this computer's clock shows, by its IANA name; UTC where it has none. */
export function ownTimeZone(): string {
  const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  return zone === 'UTC' || !/^[A-Za-z]/.test(zone) ? 'Etc/UTC' : zone;
}
