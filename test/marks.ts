/** Marks in YAML: comment lines that say which findings the line above has, and where. */

export interface Mark {
  /** Line, and columns within it, all from 0; `end` is behind the last character. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** The rule, where the findings of all rules are marked. */
  readonly rule: string | undefined;
  /** Part of the message. */
  readonly message: string;
}

const MARK = /^\s*#\s*(?:(\^+)|want\s+(\d+)-(\d+))\s(.*)$/;
const RULE = /^\s*([a-z0-9-]+): (.*)$/;

/** `text` without its mark lines, and the marks; `named` where each mark begins with a rule and a colon. */
export function readMarks(text: string, named: boolean): { text: string; marks: Mark[] } {
  const kept: string[] = [];
  const marks: Mark[] = [];
  for (const line of text.split('\n')) {
    const match = MARK.exec(line.replace(/\r$/, ''));
    if (match === null) {
      kept.push(line);
      continue;
    }
    const [, carets, from, to, rest = ''] = match;
    const range =
      carets === undefined
        ? { start: Number(from) - 1, end: Number(to) - 1 }
        : { start: line.indexOf('^'), end: line.indexOf('^') + carets.length };
    const [, rule, message = ''] = named ? (RULE.exec(rest) ?? []) : [undefined, undefined, rest.trim()];
    if (named && rule === undefined) throw new Error(`no rule in the mark ${line}`);
    marks.push({ line: kept.length - 1, ...range, rule, message });
  }
  return { text: kept.join('\n'), marks };
}

export interface Found extends Mark {
  readonly rule: string;
}

/** Findings without a mark and marks without a finding, in words; empty where both agree. */
export function differences(found: readonly Found[], marks: readonly Mark[]): string[] {
  const left = [...marks];
  const unmarked = found.filter((finding) => {
    const index = left.findIndex((mark) => agrees(mark, finding));
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
  return [
    ...unmarked.map((finding) => `found, not marked: ${shown(finding)}`),
    ...left.map((mark) => `marked, not found: ${shown(mark)}`),
  ];
}

function agrees(mark: Mark, finding: Found): boolean {
  return (
    mark.line === finding.line &&
    mark.start === finding.start &&
    mark.end === finding.end &&
    (mark.rule === undefined || mark.rule === finding.rule) &&
    finding.message.includes(mark.message)
  );
}

function shown({ line, start, end, rule, message }: Mark): string {
  return `line ${line + 1}, want ${start + 1}-${end + 1} ${rule === undefined ? '' : `${rule}: `}${message}`;
}
