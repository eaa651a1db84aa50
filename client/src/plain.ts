/**
 * A message as plain text. The editor turns `[words](address)` in a message into a link, to commands too, and a name
 * in a site may be written like that.
 */
export function plain(message: string): string {
  return message.replaceAll('](', '] (');
}
