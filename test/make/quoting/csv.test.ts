// Held against the reader that comes with Python.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { type Cell, csv } from '../../../server/src/make/quoting/csv.ts';
import { visible } from '../../../server/src/text/visible.ts';
import { needs } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { readCsv } from '../read-csv.ts';

describe('CSV', () => {
  it('is read as it was meant by another program, whatever stands in it', function () {
    needs(this, 'python3');
    const record = fc.tuple(hostileText, fc.oneof(hostileText, fc.integer()), hostileText);
    fc.assert(
      fc.property(fc.array(record, { minLength: 1, maxLength: 200 }), (records) => {
        const [[head, ...rows] = []] = readCsv(csv(['a', 'b', 'c'], records));
        assert.deepEqual(head, ['a', 'b', 'c']);
        assert.deepEqual(
          rows.map((row) => row.map(withoutMark)),
          records.map((each) => each.map(asRead)),
        );
        // Of which a spreadsheet could make a formula: https://owasp.org/www-community/attacks/CSV_Injection, from memory.
        const texts = rows.flatMap((row, index) => row.filter((_, at) => typeof records[index]?.[at] === 'string'));
        for (const text of texts) assert.doesNotMatch(text, /^[=+\-@\t\r＝＋－＠]/);
      }),
      { numRuns: 10 },
    );
  });

  it('marks what a spreadsheet would work out, and leaves numbers alone', () => {
    assert.equal(
      csv(
        ['name', 'figure'],
        [
          ['=1+1', -3],
          ['-', 7],
        ],
      ),
      "name,figure\r\n'=1+1,-3\r\n'-,7\r\n",
    );
  });

  it('ends each record as RFC 4180 §2 has it, and quotes by its rules', () => {
    assert.equal(csv(['a'], [['x, "y"']]), 'a\r\n"x, ""y"""\r\n');
  });
});

function withoutMark(text: string): string {
  return text.replace(/^'(?=[=+\-@＝＋－＠])/, '');
}

function asRead(cell: Cell): string {
  return withoutMark(typeof cell === 'number' ? String(cell) : visible(cell, 1000));
}
