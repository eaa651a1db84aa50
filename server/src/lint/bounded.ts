/**
 * Limits the findings of a rule to what a person reads and an editor can show: thousands of mistakes of one kind are
 * one mistake. The first findings of each piece, and of the whole site, are given, then the number of the others; so a
 * mistake throughout one piece does not hide those in other pieces.
 */

import type { Piece } from '../text/cut.ts';
import type { Finding, Unworded } from './rule.ts';

/** Limits for the findings of one rule: beyond `most` in the site, or `named` in a piece, only `named` are given. */
export interface FindingBounds {
  readonly most: number;
  readonly named: number;
}

export const UNBOUNDED: FindingBounds = { most: Infinity, named: Infinity };

export class BoundedFindings {
  private readonly bounds: FindingBounds;
  private readonly kept: (Finding | Unworded)[] = [];
  /** Made with the first finding: most rules find nothing. */
  private counts: Map<Piece, number> | undefined;
  private total = 0;

  constructor(bounds: FindingBounds) {
    this.bounds = bounds;
  }

  take(finding: Finding | Unworded): void {
    const { most, named } = this.bounds;
    const { piece } = finding.at;
    this.counts ??= new Map();
    const count = (this.counts.get(piece) ?? 0) + 1;
    this.counts.set(piece, count);
    this.total++;
    if (count <= named + 1 && this.kept.length <= most) this.kept.push(finding);
  }

  /** Whether there are more findings than are given. */
  get isCut(): boolean {
    return this.kept.length < this.total;
  }

  findings(): Finding[] {
    const { most, named } = this.bounds;
    const next = this.kept[named];
    if (this.kept.length > most && next !== undefined)
      return [...this.kept.slice(0, named).map(worded), others(next, this.total - named, named)];
    if (!this.isCut) return this.kept.map(worded);
    const nth = new Map<Piece, number>();
    return this.kept.map((finding) => {
      const { piece } = finding.at;
      const number = (nth.get(piece) ?? 0) + 1;
      nth.set(piece, number);
      return number > named ? others(finding, (this.counts?.get(piece) ?? 0) - named, named) : worded(finding);
    });
  }
}

function worded(finding: Finding | Unworded): Finding {
  return 'word' in finding ? finding.word() : finding;
}

/** Stands for a finding and all those behind it. */
function others(given: Finding | Unworded, more: number, named: number): Finding {
  const next = worded(given);
  const message =
    `There are ${more.toLocaleString('en')} more of these from here on; only the first ${named} are listed. They ` +
    'probably have one cause.';
  return { ...next, message, acceptAt: [], related: [], fixes: () => [] };
}
