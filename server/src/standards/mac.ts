/** A MAC address as it is usually written: six octets in lower-case hexadecimal digits, with colons. */
export function formatMac(text: string): string {
  return text.toLowerCase().replaceAll('-', ':');
}
