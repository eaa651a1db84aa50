/**
 * Places the files of a recording in time. Names have whole units, rounded down, but lengths are exact: so the names of
 * files that follow each other without a break narrow down, to less than a unit, when the first of them began.
 */

/** A file as it is named; all in milliseconds, `named` since 1970. */
export interface NamedFile {
  readonly named: number;
  readonly length: number;
}

export interface PlacedSegment<T> {
  readonly file: T;
  readonly start: number;
  readonly end: number;
}

export interface Break {
  readonly kind: 'gap' | 'overlap';
  readonly from: number;
  readonly to: number;
}

export interface Timeline<T> {
  readonly placed: readonly PlacedSegment<T>[];
  /** In order. In a gap there is no file, in an overlap there are two. */
  readonly breaks: readonly Break[];
}

/**
 * Milliseconds by which names and lengths may differ, as packets arrive unevenly (common practice, no source).
 */
export const JITTER = 500;

/**
 * Files that follow each other: the first began between `earliest` and `latest`, and was opened no sooner than
 * `opened`.
 */
interface Run {
  earliest: number;
  latest: number;
  readonly opened: number;
  length: number;
  files: { readonly offset: number; readonly at: number }[];
}

/**
 * @param files in the order of their names
 * @param unit that names are rounded down to, in milliseconds
 * @param backlog by which the first file of a run may begin before its name, in milliseconds
 */
export function timelineOf<T extends NamedFile>(files: readonly T[], unit: number, backlog: number): Timeline<T> {
  const runs: Run[] = [];
  for (const [at, { named, length }] of files.entries()) {
    const run = runs.at(-1);
    const earliest = Math.max(run?.earliest ?? -Infinity, named - (run?.length ?? 0));
    const latest = Math.min(run?.latest ?? Infinity, named + unit - (run?.length ?? 0));
    if (run === undefined || earliest >= latest) {
      runs.push({ earliest: named - backlog, latest: named + unit, opened: named, length, files: [{ offset: 0, at }] });
      continue;
    }
    run.files.push({ offset: run.length, at });
    Object.assign(run, { earliest, latest, length: run.length + length });
  }
  const placed: PlacedSegment<T>[] = [];
  const breaks: Break[] = [];
  let before: Run | undefined;
  for (const run of runs) {
    // It counts as begun when it was opened, unless the names of later files show that it began before.
    if (run.opened < run.latest) run.earliest = Math.max(run.earliest, run.opened);
    if (before !== undefined) breaks.push(...breakBetween(before, run));
    for (const { offset, at } of run.files) {
      const file = files[at];
      if (file !== undefined)
        placed.push({ file, start: run.earliest + offset, end: run.earliest + offset + file.length });
    }
    // The run that ends last counts: one may lie within another.
    if (before === undefined || run.earliest + run.length > before.earliest + before.length) before = run;
  }
  return { placed, breaks };
}

/** The gap or overlap that rounding of names does not explain. */
function breakBetween(before: Run, run: Run): Break[] {
  const [ended, began] = [before.earliest + before.length, run.earliest];
  if (run.earliest - (before.latest + before.length) > JITTER) return [{ kind: 'gap', from: ended, to: began }];
  if (ended - run.latest > JITTER)
    return [{ kind: 'overlap', from: began, to: Math.min(ended, run.earliest + run.length) }];
  return [];
}
