/** What can be made from a plan for the equipment: files, never an action. */

import type { Plan } from '../plan.ts';
import type { Place } from '../site/item.ts';

export interface Output {
  /** The word for it on the command line, and the folder that its files go to. */
  readonly kind: string;
  /** What it is, in the editor's list. */
  readonly title: string;
  /** One line: what the files are for. */
  readonly summary: string;
  /** What it can be made for alone: servers, switches, streams … Empty where it is for the whole site at once. */
  subjects(plan: Plan): readonly string[];
  /** The same plan gives the same bytes. Of one subject where it is named, otherwise of all. */
  make(plan: Plan, subject?: string): Made;
}

export interface Made {
  readonly files: readonly MadeFile[];
  /** What could not be made, and why; the rest is. */
  readonly refused: readonly Refusal[];
  /** What the person has to do or to know besides: cautions among it. */
  readonly notes: readonly string[];
}

export interface MadeFile {
  /** Below the folder that is asked for, with forward slashes: `recorder/10-cams.network`. */
  readonly path: string;
  readonly text: string;
  readonly executable?: boolean;
}

export interface Refusal {
  /** What of the site it is about. */
  readonly at: Place;
  /** What cannot be made, why, and what to do. */
  readonly message: string;
}

/** Several put together, in their order. */
export function together(parts: readonly Made[]): Made {
  return {
    files: parts.flatMap(({ files }) => files),
    refused: parts.flatMap(({ refused }) => refused),
    notes: [...new Set(parts.flatMap(({ notes }) => notes))],
  };
}

/** Nothing but a refusal. */
export function refusal(refused: Refusal): Made {
  return { files: [], refused: [refused], notes: [] };
}

/** What several parts bring along alike is written once. */
export function once(files: readonly MadeFile[]): readonly MadeFile[] {
  return [...new Map(files.map((file) => [file.path, file])).values()];
}
