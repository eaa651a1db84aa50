import { LEXEMES, type SyntaxProblem } from '../../text/parse.ts';
import type { Piece } from '../../text/cut.ts';
import { visible } from '../../text/visible.ts';
import { count, list, asName } from '../../text/words.ts';
import { MOST_SLOW, type SiteText, type Unread, placeInFile, pieceStart } from '../../site/folder.ts';
import { MOST_ENTRIES, MOST_IN_BRACKETS, type PieceProblem, type Place, contentOf } from '../../site/item.ts';
import { SECTION_NAMES } from '../../site/shape.ts';
import { nearest } from '../../text/nearest.ts';
import { firstLine } from '../../site/places.ts';
import { capital } from '../../site/shape-words.ts';
import type { ShowAfter, Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Fix, fixOf } from '../../site/edit.ts';

export const yamlSyntax: Rule = {
  id: 'yaml-syntax',
  severity: 'error',
  isSlip: true,
  showAfter: 'line',
  summary: 'Part of the file is not YAML, or belongs to no section.',
  why: `What cannot be read is ignored: the device, cable or stream is missing from every sum. The rest of the file is read
and checked all the same. Indent with spaces, the entries of one mapping in the same
column; write a space after each colon and comma; close every bracket and quote.`,
  source: 'YAML 1.2.2',
  check({ files }: RuleContext, report: Report): void {
    for (const file of files) {
      let strays: Piece[] = [];
      for (const piece of file.unusual) {
        const last = strays[strays.length - 1];
        const isNext = last !== undefined && pieceStart(file, last) + last.text.length === pieceStart(file, piece);
        if (last !== undefined && (piece.role !== 'stray' || !isNext)) {
          report(belongsNowhere(file, strays));
          strays = [];
        }
        if (piece.role === 'stray') {
          strays.push(piece);
          continue;
        }
        for (const problem of contentOf(piece).problems) {
          if (problem.problem === 'second-document') report(secondDocument({ piece, ...span(problem) }));
          if (problem.problem === 'not-a-section') report(noSections(firstLine({ piece, ...span(problem) })));
        }
        faults(piece, report);
      }
      if (strays.length > 0) report(belongsNowhere(file, strays));
      for (const one of file.unread) report({ at: one.at, word: () => unread(one) });
    }
  },
};

function unread({ at, why }: Unread): Finding {
  return { at: firstLine(at), message: UNREAD[why], acceptAt: [] };
}

const UNREAD: Readonly<Record<Unread['why'], string>> = {
  slow:
    'This is not read: it has a fault, an anchor, an alias, a tag or a block of text, as ' +
    `${MOST_SLOW.toLocaleString('en')} words and signs of the site have already. Put those right, or write them without.`,
  brackets:
    `This and what follows in these brackets is not read: ${MOST_IN_BRACKETS.toLocaleString('en')} entries come ` +
    'before it.',
  entries:
    `Nothing is read from here on: the site has more than ${MOST_ENTRIES.toLocaleString('en')} entries, and none needs ` +
    'as many.',
};

function span({ at: { start, end } }: PieceProblem): { start: number; end: number } {
  return { start, end };
}

/** Reports the first fault of a piece, as the others mostly follow from it; without one, its aliases. */
function faults(piece: Piece, report: Report): void {
  const { problems } = contentOf(piece).tree;
  if (problems.length === 0) return;
  const first = problems
    .filter(({ code }) => !isAlias(code) && code !== 'duplicate-key')
    .sort((a, b) => a.start - b.start)[0];
  for (const problem of first === undefined ? aliasFaults(problems) : [first]) {
    const indent = isAlias(problem.code) ? undefined : tabbed(piece, problem.start);
    if (indent !== undefined) {
      report(byTab(indent));
      continue;
    }
    const at = firstLine(visiblePlace({ piece, start: problem.start, end: Math.min(problem.end, piece.text.length) }));
    report({
      at,
      showAfter: dueOf(problem, at),
      message: sentence(problem),
      acceptAt: [],
      fixes: () => fixesOf(problem, at),
    });
  }
}

/** The faults of aliases, but only the first of those that grow without bound, as it makes the others grow. */
function aliasFaults(problems: readonly SyntaxProblem[]): SyntaxProblem[] {
  const large = problems.find(({ code }) => code === 'alias-too-large');
  return problems.filter(
    (problem) => isAlias(problem.code) && (problem.code !== 'alias-too-large' || problem === large),
  );
}

/** The indentation of the line that a fault is in, where it has a tab. */
function tabbed(piece: Piece, offset: number): Place | undefined {
  const start = piece.text.lastIndexOf('\n', offset - 1) + 1;
  const indent = /^ *\t[ \t]*/.exec(piece.text.slice(start))?.[0];
  return indent === undefined ? undefined : { piece, start, end: start + indent.length };
}

/** The finding for tabs in all lines of the piece: one line alone would not match the others. */
function byTab(at: Place): Finding {
  const edits = [...at.piece.text.matchAll(/^ *\t[ \t]*/gm)].map(({ index, 0: indent }) => ({
    at: { piece: at.piece, start: index, end: index + indent.length },
    text: indent.replaceAll('\t', '  '),
  }));
  return {
    at,
    showAfter: 'keystroke',
    message: 'YAML does not allow tabs for indentation. Use spaces.',
    acceptAt: [],
    fixes: () => fixOf('Indent with two spaces for each tab', ...edits),
  };
}

/** A character missing at the end of a line or of the piece is marked at the last character before it. */
function visiblePlace({ piece, start, end }: Place): Place {
  if (piece.text.slice(start, end).trim() !== '' || piece.text.slice(0, start).trim() === '')
    return { piece, start, end };
  const last = piece.text.slice(0, start).trimEnd().length;
  return { piece, start: last - 1, end: last };
}

function isAlias(code: SyntaxProblem['code']): boolean {
  return code === 'unknown-alias' || code === 'cyclic-alias' || code === 'alias-too-large';
}

function sentence({ code, detail }: SyntaxProblem): string {
  const name = visible(detail, 40);
  switch (code) {
    case 'unknown-alias':
      return (
        `There is no anchor &${name} before this alias. Put the anchor where the value first appears, or write ` +
        'the value itself.'
      );
    case 'cyclic-alias':
      return (
        `The alias *${name} is inside the value that it refers to, so it never ends. Write out the value that is ` +
        'meant.'
      );
    case 'alias-too-large':
      return (
        `With the alias *${name} written out, this grows beyond what is read. Use fewer aliases that refer to ` +
        'others.'
      );
    case 'too-deep':
      return 'This is nested too deeply to be read; a site needs six levels. Is a closing bracket missing?';
    case 'too-long':
      return (
        `Nothing is read from here on: this entry has more than ${LEXEMES.toLocaleString('en')} words and ` +
        'signs. Put each device, cable and stream on a line of its own, without brackets around them, so that each is ' +
        'read by itself.'
      );
    case 'key-not-plain':
      return 'A key is plain text followed by a colon.';
    case 'tab':
    case 'syntax':
      return capital(visible(detail)).replace(/(?<![.?])$/, '.');
    case 'duplicate-key':
      return `${asName(name)} appears twice.`;
  }
}

function fixesOf({ code }: SyntaxProblem, at: Place): Fix[] {
  const source = at.piece.text.slice(at.start, at.end);
  const joined = /^([A-Za-z0-9_-]+):(?=[^\s:/])/.exec(source);
  if (code === 'syntax' && joined !== null) {
    const behind = at.start + joined[0].length;
    return [
      {
        title: 'Write a space after the colon',
        safe: true,
        edits: [{ at: { ...at, start: behind, end: behind }, text: ' ' }],
      },
    ];
  }
  return [];
}

/** An open bracket or quote may be closed by the end of the item, a key gets its colon on its line. */
function dueOf({ code, isOpen, start }: SyntaxProblem, { piece, end }: Place): ShowAfter {
  if (code === 'tab' || code === 'too-deep') return 'keystroke';
  // A fault marked at the end of a line comes from the lines below.
  return isOpen === true || code === 'key-not-plain' || piece.text.slice(end, start).includes('\n') ? 'item' : 'line';
}

function secondDocument(at: Place): Finding {
  return {
    at,
    message: 'A second document starts here and is not read. Remove the line, or put what follows into its own file.',
    acceptAt: [],
  };
}

function noSections(at: Place): Finding {
  return {
    at,
    message: `A site file consists of sections, which start in the first column: ${list(SECTION_NAMES, 'or')}.`,
    acceptAt: [],
  };
}

/** White space that a piece begins with; none where it has nothing else. */
function indentOf(piece: Piece | undefined): number {
  return Math.max(0, piece?.text.search(/\S/) ?? 0);
}

/** The finding for a run of lines outside of any section. */
function belongsNowhere(file: SiteText, strays: readonly Piece[]): Finding {
  const indent = strays[0] === undefined ? undefined : tabbed(strays[0], 0);
  if (indent !== undefined) return byTab(indent);
  const [first, last] = [strays[0], strays[strays.length - 1]];
  const start = first === undefined ? 0 : pieceStart(file, first);
  const end = last === undefined ? 0 : pieceStart(file, last) + last.text.trimEnd().length;
  const at = firstLine(
    placeInFile(file, {
      start: start + indentOf(first),
      end: start + Math.max(indentOf(first), first?.text.trimEnd().length ?? 0),
    }),
  );
  const lines = file.text.slice(start, end).split(/\r\n|\r|\n/).length;
  const near = nearest(at.piece.text.slice(at.start, at.end), SECTION_NAMES)[0]?.name;
  const more = lines > 1 ? `, and so ${lines === 2 ? 'does the one' : `do the ${count(lines - 1, 'line')}`} below` : '';
  const what =
    near === undefined
      ? `A section starts in the first column: ${list(
          SECTION_NAMES.map((name) => `${name}:`),
          'or',
        )}.`
      : `Did you mean ${near}:?`;
  return { at, message: `The line belongs to no section${more}. ${what}`, acceptAt: [] };
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31
# want 52-53 A closing } is missing.
  stable-cam: {kind: camera, address: 192.168.20.32}
`,
    good: `
devices:
  paddock-cam: {kind: camera, address: 192.168.20.31}
  stable-cam: {kind: camera, address: 192.168.20.32}
`,
  },
  {
    bad: `
devices:
  paddock-cam:
    kind:camera
#   ^^^^^^^^^^^ A key and its colon stand on one line; is a colon missing?
    address: 192.168.20.31
`,
    fixed: `
devices:
  paddock-cam:
    kind: camera
    address: 192.168.20.31
`,
  },
  {
    bad: `
device
# want 1-7 The line belongs to no section, and so does the one below. Did you mean devices:?
  paddock-cam: {kind: camera}
`,
    good: `
devices:
  paddock-cam: {kind: camera}
`,
  },
];
