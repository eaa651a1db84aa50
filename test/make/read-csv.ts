// CSV as the reader that comes with Python has it, in its strict way.
import { execFileSync } from 'node:child_process';

const READER = `
import csv, io, json, sys
text = sys.stdin.buffer.read().decode('utf-8')
json.dump(list(csv.reader(io.StringIO(text, newline=''), strict=True)), sys.stdout)
`;

export function readCsv(text: string): string[][] {
  return JSON.parse(execFileSync('python3', ['-c', READER], { input: text, encoding: 'utf8' })) as string[][];
}
