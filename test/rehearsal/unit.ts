// A unit of systemd, read by the rules that systemd documents: systemd.syntax(7), systemd.service(5) "Command lines",
// systemd.unit(5) "Specifiers". test/make/media/units.test.ts holds it against systemd itself.

export class Unit {
  readonly name: string;
  private readonly values = new Map<string, string[]>();

  constructor(name: string, text: string) {
    this.name = name;
    let section = '';
    for (const line of text.split('\n')) {
      const header = /^\[(.*)\]$/.exec(line);
      if (header !== null) section = header[1] ?? '';
      const [, key, value] = /^([A-Za-z]+)=(.*)$/.exec(line) ?? [];
      if (key === undefined || value === undefined) continue;
      const full = `${section}.${key}`;
      this.values.set(full, [...(this.values.get(full) ?? []), value]);
    }
  }

  /** The values of a setting as they are written. */
  all(section: string, key: string): readonly string[] {
    return this.values.get(`${section}.${key}`) ?? [];
  }

  one(section: string, key: string): string | undefined {
    return this.all(section, key).at(-1);
  }

  /** What the program is given, for each command of `ExecStart` or `ExecStartPre`. */
  commands(key: string): readonly (readonly string[])[] {
    return this.all('Service', key).map((line) => words(line).map(withoutVariables));
  }

  environment(): Record<string, string> {
    const pairs = this.all('Service', 'Environment')
      .flatMap(words)
      .map((word) => [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)]);
    return Object.fromEntries(pairs) as Record<string, string>;
  }
}

const ESCAPES: Readonly<Record<string, string>> = {
  'a': '\u0007',
  'b': '\b',
  'f': '\f',
  'n': '\n',
  'r': '\r',
  't': '\t',
  'v': '\u000b',
  '\\': '\\',
  '"': '"',
  "'": "'",
  's': ' ',
};

/** Words are parted by white space but within quotes; C escapes hold within and without; %% is a per cent sign. */
export function words(line: string): string[] {
  const found: string[] = [];
  let word: string | undefined;
  let quote = '';
  for (let at = 0; at < line.length; at++) {
    const mark = line[at] ?? '';
    if (quote === '' && /\s/.test(mark)) {
      if (word !== undefined) found.push(word);
      word = undefined;
    } else if (mark === quote) quote = '';
    else if (quote === '' && (mark === '"' || mark === "'")) {
      quote = mark;
      word ??= '';
    } else if (mark === '\\') {
      const [escape = '', hex] = /^\\(?:x([0-9a-f]{2})|.)/.exec(line.slice(at)) ?? [];
      const text = hex === undefined ? ESCAPES[escape.slice(1)] : String.fromCharCode(Number.parseInt(hex, 16));
      if (text === undefined) throw new Error(`systemd knows no ${escape} in ${line}`);
      word = (word ?? '') + text;
      at += escape.length - 1;
    } else word = (word ?? '') + mark;
  }
  if (quote !== '') throw new Error(`a quote is not closed in ${line}`);
  if (word !== undefined) found.push(word);
  return found.map((each) =>
    each.replace(/%(.)?/g, (specifier) => {
      if (specifier !== '%%') throw new Error(`the specifier ${specifier} in ${line}`);
      return '%';
    }),
  );
}

/** $$ is a dollar sign; nothing that we make has a variable. */
function withoutVariables(word: string): string {
  return word.replace(/\$(.)?/gu, (variable) => {
    if (variable !== '$$') throw new Error(`the variable ${variable} in ${word}`);
    return '$';
  });
}
