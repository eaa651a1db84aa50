/** Comma-separated values (RFC 4180, read): records of one line each. */

/**
 * The fields of a record. A field in quotes may hold commas, and quotes that are doubled; one that holds a line break
 * is not read. `undefined` where a quote is not closed, or something follows it that is no comma.
 */
export function csvFields(line: string): string[] | undefined {
  const fields: string[] = [];
  let at = 0;
  for (;;) {
    if (line.charAt(at) === '"') {
      const quoted = /"((?:[^"]|"")*)"(?=,|$)/y;
      quoted.lastIndex = at;
      const match = quoted.exec(line);
      if (match === null) return undefined;
      fields.push((match[1] ?? '').replaceAll('""', '"'));
      at = quoted.lastIndex;
    } else {
      const comma = line.indexOf(',', at);
      const end = comma === -1 ? line.length : comma;
      fields.push(line.slice(at, end));
      at = end;
    }
    if (at >= line.length) return fields;
    at++;
  }
}
