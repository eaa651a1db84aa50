/**
 * A message as text alone. The editor makes links, of commands too, of what is written as `[words](address)` in a
 * message, and a name in a site may be written so.
 */
export function plain(message: string): string {
  return message.replaceAll('](', '] (');
}
