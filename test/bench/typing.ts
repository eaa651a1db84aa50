/** How many keys of a right text leave a mistake marked, over the protocol: what a newcomer would see in red. */

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { NEW_SITES } from '../../server/src/site/new-site/new-site.ts';
import { Client } from '../lsp/client.ts';
import { ORDERS, type Script, inOrder, itemByItem, wholeFile } from '../typing/keys.ts';
import { type Tally, tally } from '../typing/typist.ts';

interface Typed {
  readonly what: string;
  /** The file that is typed, and those beside it. */
  readonly name: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly scripts: readonly Script[];
}

/** Each text as it is typed, one after the other; `folder` is on disk, and empty. */
export async function* typedTexts(
  command: readonly string[],
  folder: string,
): AsyncGenerator<Tally & { readonly what: string }> {
  const client = await Client.start(command);
  for (const [index, { what, name, texts, scripts }] of typedFiles().entries())
    yield { what, ...(await tally(client, join(folder, String(index)), scripts, { name, beside: texts })) };
  await client.stop();
}

function typedFiles(): Typed[] {
  const lane = filesOf('samples/harrow-lane');
  const houses = filesOf('test/houses');
  const name = 'home.site.yaml';
  return [
    ...Object.entries(NEW_SITES).flatMap(([like, site]) => {
      const text = site.text('Europe/London');
      return [
        { what: `new site, ${like}`, name, texts: {}, scripts: [wholeFile(text)] },
        { what: `new site, ${like}, item by item`, name, texts: {}, scripts: itemByItem(text, 'closing') },
      ];
    }),
    ...Object.entries(ORDERS).map(([order, sorted]) => ({
      what: `new site, two cards, ${order}`,
      name,
      texts: {},
      scripts: [inOrder(withoutComments(NEW_SITES['two-cards'].text('Europe/London')), sorted, 'closing')],
    })),
    ...Object.entries(lane).map(([own, text]) => ({
      what: `harrow-lane/${own}, item by item`,
      name: own,
      texts: lane,
      scripts: itemByItem(text),
    })),
    {
      what: `${Object.keys(houses).length} houses`,
      name,
      texts: {},
      scripts: Object.values(houses).map((text) => wholeFile(text)),
    },
  ];
}

function withoutComments(text: string): string {
  return text.replaceAll(/^ *#.*\n/gm, '').trimStart();
}

function filesOf(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder)
      .filter((name) => name.endsWith('.site.yaml'))
      .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
  );
}
