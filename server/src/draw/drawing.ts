/** What a picture consists of, before it is SVG: marks on a plane in CSS pixels, and a table that says the same. */

import type { Measured } from '../audit/measured.ts';
import type { Plan } from '../plan.ts';
import type { Name } from '../report/page/cells.ts';

export type { Measured, Name };

/** A kind of picture. */
export interface DrawingKind {
  /** Its word on the command line. */
  readonly kind: string;
  /** As the editor lists it. */
  readonly title: string;
  /** What it answers, in one line. */
  readonly summary: string;
  /** It is drawn of the whole site, and has no subjects. */
  readonly isOfSite?: boolean;
  /** Of the whole site: whether it has anything of that kind; without it, every site has. */
  isThere?(plan: Plan): boolean;
  /** Whether it can show one VLAN or one stream, with the rest standing back. */
  readonly narrows?: boolean;
  /** What is measured that it shows. */
  readonly measured?: {
    /** In a folder of recordings, or in files of counters. */
    readonly from: 'recordings' | 'counters';
    readonly needed: boolean;
    /** Whether what was read has something of a subject. */
    has(measured: Measured, subject: string): boolean;
  };
  /** What it can be drawn of, by name, as the site stands. */
  subjects(plan: Plan): readonly string[];
  /** Whether another name means one of these: the end of a cable, its label. */
  means?(plan: Plan, name: string): boolean;
  /** @param subject one of the subjects; empty where it is of the whole site */
  draw(plan: Plan, subject: string, wanted: DrawingOptions): Drawing;
}

/** The subjects that a kind of drawing has in this site; an empty text means the whole site. */
export function subjectsOf(kind: DrawingKind, plan: Plan): readonly string[] {
  if (kind.isOfSite !== true) return kind.subjects(plan);
  return kind.isThere?.(plan) === false ? [] : [''];
}

/** Whether it can be drawn of what somebody names. */
export function canDraw(kind: DrawingKind, plan: Plan, name: string): boolean {
  return subjectsOf(kind, plan).includes(name) || kind.means?.(plan, name) === true;
}

/** What a person may want to see of it; a kind heeds what applies to it. */
export interface DrawingOptions {
  /** Loads as they usually are, or those to plan for. */
  readonly rate: 'nominal' | 'peak';
  /** Only what is of this VLAN. */
  readonly vlan?: string | undefined;
  /** Only what is of this stream. */
  readonly stream?: string | undefined;
  readonly measured?: Measured | undefined;
}

/** As it is drawn where nobody says otherwise. */
export const USUAL_OPTIONS: DrawingOptions = { rate: 'peak' };

/** The same plan gives the same drawing. */
export interface Drawing {
  readonly title: string;
  /** What is to be seen, in a sentence or two, for those who do not see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** How wide it is on paper, mm, where it is printed at the size of what it shows; else as the page has room. */
  readonly paper?: number;
  readonly marks: readonly Mark[];
  /** All that the picture shows. */
  readonly tables: readonly Table[];
}

/** How a mark looks; `style.ts` has the colours, and every one differs by more than its colour. */
export type Look =
  /** Without a look of its own: ink on paper. */
  | 'plain'
  /** Of less weight: captions, leads. */
  | 'quiet'
  /** What the picture is about. */
  | 'main'
  /** There, and carries nothing. */
  | 'idle'
  /** Over what the site warns at; goes with the sign △. */
  | 'warn'
  /** Over a limit, or does not work; goes with the sign ▲. */
  | 'bad'
  /** Is to be there, and is not. */
  | 'lost'
  /** Comes without being asked for. */
  | 'unwanted'
  /** Stays visible behind what is shown. */
  | 'faded'
  /** Of a box: as long as a figure beside it is large, on a rail that is the whole. */
  | 'gauge'
  | 'rail';

export type Mark = Box | Line | Words | Thing;

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point {
  readonly mark: 'box';
  readonly width: number;
  readonly height: number;
  readonly look: Look;
  readonly round?: number;
}

/** From point to point. */
export interface Line {
  readonly mark: 'line';
  readonly points: readonly Point[];
  readonly look: Look;
  /** Of the corners between the points. */
  readonly round?: number;
  /** Points to where it leads. */
  readonly arrow?: boolean;
}

/** A line of text; `x`, `y` is on its base line, at its start, middle or end. */
export interface Words extends Point {
  readonly mark: 'words';
  readonly text: string;
  readonly look: Look;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly strong?: boolean;
  /** Pixels that it has room for: a longer text is shortened in its middle, and whole in its title. */
  readonly maxWidth?: number;
}

/** Marks that stand for one thing of the site: it has a label, can be chosen, and leads to where it is declared. */
export interface Thing {
  readonly mark: 'thing';
  readonly at: Name;
  /** What it is, for who does not see it: `switch`, `port`. */
  readonly role: string;
  /** As the hover says. */
  readonly label: string;
  readonly marks: readonly Mark[];
}

export interface Table {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly Row[];
}

export interface Row {
  /** The things that it is about: in a page these lead to it. */
  readonly things: readonly Name[];
  readonly cells: readonly Cell[];
}

/** Words, a figure, or names that lead to where they are declared. */
export type Cell = string | { readonly figure: string } | { readonly names: readonly Name[] };

export function deviceNamed(name: string): Name {
  return { names: 'devices', name };
}

export function portNamed(name: string): Name {
  return { names: 'ports', name };
}

export function streamNamed(name: string): Name {
  return { names: 'streams', name };
}
