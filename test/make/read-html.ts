// A page as read by Python's own parser.
import { execFileSync } from 'node:child_process';

const READER = `
import json, sys
from html.parser import HTMLParser

class Reader(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags, self.attributes, self.rows, self.open, self.headings, self.labels = set(), set(), [], [], [], 0

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes.update(f'{tag} {name}' for name, _ in attrs)
        if tag == 'tr': self.rows.append([])
        if tag in ('td', 'th'): self.rows[-1].append('')
        if tag in ('h1', 'h2'): self.headings.append('')
        if ('class', 'label') in attrs: self.labels += 1
        if tag not in ('meta', 'br', 'wbr'): self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag, tag

    def handle_data(self, data):
        if 'td' in self.open or 'th' in self.open: self.rows[-1][-1] += data
        if 'h1' in self.open or 'h2' in self.open: self.headings[-1] += data

pages = []
for page in json.load(sys.stdin):
    reader = Reader()
    reader.feed(page)
    reader.close()
    assert not reader.open, reader.open
    pages.append({'tags': sorted(reader.tags), 'attributes': sorted(reader.attributes), 'rows': reader.rows, 'headings': reader.headings, 'labels': reader.labels})
json.dump(pages, sys.stdout)
`;

export interface ReadPage {
  readonly tags: readonly string[];
  /** Each with its tag: `td class`. */
  readonly attributes: readonly string[];
  /** Of all tables, heads included. */
  readonly rows: readonly (readonly string[])[];
  readonly headings: readonly string[];
  readonly labels: number;
}

export function readPages(pages: readonly string[]): ReadPage[] {
  return JSON.parse(
    execFileSync('python3', ['-c', READER], { input: JSON.stringify(pages), encoding: 'utf8', maxBuffer: 1 << 28 }),
  ) as ReadPage[];
}
