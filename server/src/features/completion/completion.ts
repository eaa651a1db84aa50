/** Completion at the cursor, in half-typed text too: keys, words, names that fit, free addresses, units. */

import type { Checked } from '../../lint/check.ts';
import { type SiteText, placeInFile } from '../../site/folder.ts';
import type { Place } from '../../site/item.ts';
import { type Schema, under } from '../../site/shape.ts';
import { keyOffers } from './keys.ts';
import { columnsAbove } from './columns-above.ts';
import { type Offer, literally } from './offer.ts';
import { exampleOffers, sectionSnippets } from './snippets.ts';
import { isList, isMapping } from './types.ts';
import { valueOffers } from './values.ts';
import { type CompletionContext, textAtCursor, wantedAt } from './wanted.ts';

export interface Completion {
  /** The text that is replaced. */
  readonly at: Place;
  /** The best first. */
  readonly offers: readonly Offer[];
  /** Whether typing more would bring other offers. */
  readonly isPartial: boolean;
}

export interface CompletionOptions {
  /** Whether keys and words of the schema are offered, or left to another extension. */
  readonly schemaFeatures: boolean;
  /** Whether an empty line where nothing fits is completed as in the nearest column where something does. */
  readonly anyColumn?: boolean;
}

/** The most offers that are sent. */
const MAX_OFFERS = 1000;

/** `offset` counts UTF-16 units from the start of the file. */
export function complete(
  checked: Checked,
  file: SiteText,
  offset: number,
  options: CompletionOptions,
): Completion | undefined {
  const found = completeIn(checked, file, offset, options);
  if (options.anyColumn !== true || (found?.offers.length ?? 0) > 0) return found;
  for (const column of columnsAbove(file, offset)) {
    const moved = completeIn(checked, file, offset, options, column);
    if (moved !== undefined && moved.offers.length > 0)
      return { ...moved, offers: moved.offers.map((offer) => indented(offer, ' '.repeat(column))) };
  }
  return found;
}

function completeIn(
  checked: Checked,
  file: SiteText,
  offset: number,
  { schemaFeatures }: CompletionOptions,
  column?: number,
): Completion | undefined {
  const wanted = wantedAt(checked, file, offset, column);
  if (wanted === undefined) return undefined;
  const found = offersFor(wanted).filter(({ kind }) => schemaFeatures || !OF_THE_SCHEMA.includes(kind));
  const space = wanted.cursor.needsSpace ? ' ' : '';
  const comma = commaBehind(wanted);
  return {
    at: placeInFile(file, wanted),
    offers: found.slice(0, MAX_OFFERS).map((offer) => between(offer, space, comma)),
    isPartial: found.length > MAX_OFFERS,
  };
}

function indented(offer: Offer, indent: string): Offer {
  const { label, insert = label } = offer;
  return { ...offer, insert: insert.replace(/^/gm, indent) };
}

/** The offer with a space before and a comma behind it, where they are missing; the cursor stays before the comma. */
function between(offer: Offer, space: string, comma: string): Offer {
  if (space === '' && comma === '') return offer;
  const { label, insert = label, isSnippet = false } = offer;
  if (comma === '') return { ...offer, insert: `${space}${insert}` };
  return { ...offer, isSnippet: true, insert: `${space}${isSnippet ? insert : `${literally(insert)}$0`}${comma}` };
}

/** A comma, where the offer goes in front of another key inside brackets. */
function commaBehind({ cursor, file, end }: CompletionContext): string {
  if (!cursor.inFlow || cursor.at !== 'key' || cursor.hasColon) return '';
  const [behind = ''] = /^[ \t]*./.exec(file.text.slice(end, end + 80)) ?? [];
  const next = behind.trim();
  return next === '' || /[,}\]#]/.test(next) ? '' : behind.startsWith(' ') ? ',' : ', ';
}

const OF_THE_SCHEMA: readonly Offer['kind'][] = ['section', 'key', 'snippet', 'word'];

function offersFor(wanted: CompletionContext): Offer[] {
  const { cursor, schema } = wanted;
  if (cutsSection(wanted)) return [];
  switch (cursor.at) {
    case 'key':
      return [...keyOffers(wanted, schema), ...(isSection(wanted) ? sectionSnippets(wanted) : [])];
    case 'element':
      return elements(wanted, schema, '- ');
    case 'start':
      if (isList(schema)) {
        const element = under(schema, 0);
        if (isSection(wanted)) return sectionSnippets(wanted);
        return element === undefined ? [] : elements({ ...wanted, keyPath: [...wanted.keyPath, 0] }, element, '- ');
      }
      if (isMapping(schema)) {
        const keys = keyOffers(wanted, schema);
        if (isSection(wanted)) return [...keys, ...sectionSnippets(wanted)];
        const whole = elements(wanted, schema, '');
        // Behind a dash as on the line of the next one: the whole element first.
        return typeof cursor.path.at(-1) === 'number' ? [...whole, ...keys] : [...keys, ...whole];
      }
      return valueOffers(wanted, schema);
    case 'value':
      return values(wanted, schema);
  }
}

function values(wanted: CompletionContext, schema: Schema): Offer[] {
  // The items of a section go on the lines below it.
  if (isSection(wanted)) return [];
  const own = valueOffers(wanted, schema);
  if (isList(schema)) {
    const element = under(schema, 0);
    if (element === undefined || isMapping(element)) return exampleOffers(wanted, schema);
    return valueOffers({ ...wanted, keyPath: [...wanted.keyPath, 0] }, element).map((offer) => ({
      ...offer,
      insert: `[${offer.insert ?? offer.label}$0]`,
      isSnippet: true,
    }));
  }
  const examples = exampleOffers(wanted, schema);
  // `poe` of a switch is a word, of any other device a mapping.
  return isMapping(schema) && textAtCursor(wanted, ['kind']) !== 'switch'
    ? [...examples, ...own]
    : [...own, ...examples];
}

/** A whole element of a list, with its dash where that is still to come. */
function elements(wanted: CompletionContext, schema: Schema, dash: string): Offer[] {
  const offers = isMapping(schema) ? exampleOffers(wanted, schema) : valueOffers(wanted, schema);
  return offers.map((offer) => ({ ...offer, insert: `${dash}${offer.insert ?? offer.label}` }));
}

/** Whether a section on this empty line would take over what stands below it of another one. */
function cutsSection({ cursor, file, typed, end }: CompletionContext): boolean {
  if (cursor.path.length > 0 || typed !== '' || cursor.hasColon) return false;
  // The first line below that is neither empty nor a remark.
  const [, first] = /\n(?![ \t]*(?:#|\r?$))(.)/m.exec(file.text.slice(end)) ?? [];
  return first === ' ' || first === '-';
}

function isSection({ cursor }: CompletionContext): boolean {
  return cursor.path.length === 1;
}
