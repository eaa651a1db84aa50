/** What can be made from a plan for the equipment: files only. */

import type { Plan } from '../plan.ts';
import type { Place } from '../site/item.ts';

export interface Output {
  /** Its word on the command line, and the folder of its files. */
  readonly kind: string;
  /** As the editor lists it. */
  readonly title: string;
  /** What the files are for, in one line. */
  readonly summary: string;
  /** What it can be made for one by one: servers, switches, streams … Empty where it is made for the whole site. */
  subjects(plan: Plan): readonly string[];
  /** For one subject, or for all. The same plan gives the same bytes. */
  make(plan: Plan, subject?: string): Made;
}

export interface Made {
  readonly files: readonly MadeFile[];
  /** What could not be made, and why; the rest is made all the same. */
  readonly refused: readonly Refusal[];
  /** What the person must do and know besides, cautions included. */
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
  /** What cannot be made, why, and what to do. */
  readonly message: string;
  /** The rule by which a check finds the cause. */
  readonly rule: string;
  /** What the site asks for cannot be had, whoever sets it up: a check tells of it before anything is made. */
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
