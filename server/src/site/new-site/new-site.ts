/** Small sites to start from; each checks clean. */

import { buildings } from './buildings.ts';
import { flat } from './flat.ts';
import { twoCards } from './two-cards.ts';

/** The name of its one file. */
export const NEW_SITE_FILE = 'home.site.yaml';

export interface NewSite {
  readonly title: string;
  /** What is in it. */
  readonly description: string;
  /** Its text, with the time zone that its recordings are named by. */
  readonly text: (zone: string) => string;
}

/** The sites by the word that the command line takes; the simplest first. */
export const NEW_SITES = {
  'flat': {
    title: 'One network',
    description: 'two cameras, a server and a screen on one switch',
    text: flat,
  },
  'two-cards': {
    title: 'Two cards',
    description: 'a server with a card in the house and one beside the cameras',
    text: twoCards,
  },
  'buildings': {
    title: 'Several buildings',
    description: 'a switch in each of two buildings, and fibre between them',
    text: buildings,
  },
} as const satisfies Readonly<Record<string, NewSite>>;
