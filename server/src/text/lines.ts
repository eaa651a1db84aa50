import { leastWhere } from './bisect.ts';

/** Line and character from 0. */
interface Position {
  line: number;
  character: number;
}

/** Lines of a text, as the Language Server Protocol counts them: after `\n`, `\r\n` or a lone `\r`. */
export class Lines {
  private readonly starts: number[] = [0];
  private readonly length: number;

  constructor(text: string) {
    this.length = text.length;
    // Most texts have line feeds alone, and these are found fastest.
    if (text.includes('\r')) this.findAll(text);
    else for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) this.starts.push(at + 1);
  }

  private findAll(text: string): void {
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i);
      if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) this.starts.push(i + 1);
    }
  }

  /** Line and character from 0 of a UTF-16 offset; an offset past the end is at the end. */
  position(offset: number): Position {
    const at = Math.max(0, Math.min(offset, this.length));
    const line = leastWhere(1, this.starts.length, (next) => (this.starts[next] ?? 0) > at) - 1;
    return { line, character: at - (this.starts[line] ?? 0) };
  }

  /** The positions of two offsets. Most ranges are in one line, which is faster. */
  range(start: number, end: number): { start: Position; end: Position } {
    const from = this.position(start);
    const isInLine = start <= end && end < (this.starts[from.line + 1] ?? 0);
    return {
      start: from,
      end: isInLine ? { line: from.line, character: from.character + end - start } : this.position(end),
    };
  }

  /** Offset of a line and character from 0. */
  offset(line: number, character: number): number {
    const start = this.starts[line];
    if (start === undefined) return this.length;
    return Math.min(start + character, this.starts[line + 1] ?? this.length);
  }

  get count(): number {
    return this.starts.length;
  }
}
