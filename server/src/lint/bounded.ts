/**
 * What a rule finds, as much of it as somebody reads and an editor can show: a site with thousands of mistakes of one
 * kind has one mistake. Of a piece, and of the whole site, the first are given and how many more there are; so what is
 * wrong throughout one piece does not hide the others.
 */

import type { Piece } from '../text/cut.ts';
import type { Finding, Unworded } from './rule.ts';

/** Findings of one rule; of more than `most` in the site, or `named` in a piece, `named` are given. */
export interface Bounds {
  readonly most: number;
  readonly named: number;
}

export const UNBOUNDED: Bounds = { most: Infinity, named: Infinity };

export class BoundedFindings {
  private readonly bounds: Bounds;
  private readonly kept: (Finding | Unworded)[] = [];
  /** There is none until something is found: most rules find nothing. */
  private counts: Map<Piece, number> | undefined;
  private total = 0;

  constructor(bounds: Bounds) {
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

  /** Whether there are more than are given. */
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
    `There are ${more.toLocaleString('en')} more of these, from here on: only the first ${named} are named. They ` +
    'may well have one cause.';
  return { ...next, message, about: [], related: [], fixes: () => [] };
}
