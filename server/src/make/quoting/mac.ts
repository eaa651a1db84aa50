/** Six octets in small hexadecimal digits with colons, however they were written. */
export function macAddress(text: string): string {
  return text.toLowerCase().replaceAll('-', ':');
}
