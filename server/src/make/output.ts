/** An output that can be made from a plan for the equipment: files only. */

import type { Plan } from '../plan.ts';
import type { Place } from '../site/item.ts';

export interface Output {
  /** Its word on the command line, and the folder of its files. */
  readonly kind: string;
  /** Its title in the editor. */
  readonly title: string;
  /** The purpose of the files, in one line. */
  readonly summary: string;
  /** The things that it is made for one by one: servers, switches … Empty where it is made for the whole site. */
  subjects(plan: Plan): readonly string[];
  /** Makes the files of one subject, or of all. The same plan gives the same bytes. */
  make(plan: Plan, subject?: string): Made;
}

export interface Made {
  readonly files: readonly MadeFile[];
  /** Parts that could not be made, and why; the rest is made. */
  readonly refused: readonly Refusal[];
  /** Further steps and cautions for the user. */
  readonly notes: readonly string[];
}

export interface MadeFile {
  /** Below the output folder, with forward slashes: `recorder/10-cams.network`. */
  readonly path: string;
  readonly text: string;
  readonly executable?: boolean;
}

export interface Refusal {
  /** The place in the site. */
  readonly at: Place;
  /** Says what cannot be made, why, and what to do. */
  readonly message: string;
  /** The rule by which a check finds the cause. */
  readonly rule: string;
  /** The site asks for something impossible, so a check reports it before anything is made. */
  readonly isAsked?: true;
}

/** Several parts as one, in their order, each note once. */
export function together(parts: readonly Made[]): Made {
  return {
    files: parts.flatMap(({ files }) => files),
    refused: parts.flatMap(({ refused }) => refused),
    notes: [...new Set(parts.flatMap(({ notes }) => notes))],
  };
}

/** Nothing made, with the reason. */
export function refusal(refused: Refusal): Made {
  return { files: [], refused: [refused], notes: [] };
}

/** Each file once, where several parts need the same one. */
export function once(files: readonly MadeFile[]): readonly MadeFile[] {
  return [...new Map(files.map((file) => [file.path, file])).values()];
}
