import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { grouped } from '../../grouped.ts';
import { list } from '../../text/words.ts';
import type { CoaxRun } from '../../television/run.ts';
import { type Fix, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type CableEnd, type Connector, type Site, connectorAt, endName } from '../../site/model.ts';

/** The connectors for the four planes, and their meanings. */
const PLANES: Readonly<Record<string, string>> = {
  vl: 'vertical low',
  vh: 'vertical high',
  hl: 'horizontal low',
  hh: 'horizontal high',
};

export const planesSwapped: Rule = {
  id: 'planes-swapped',
  severity: 'error',
  summary: 'An output of a quattro LNB leads to an input of a multiswitch for another plane.',
  why: `The multiswitch gives a receiver the input that it asks for by its voltage and its tone, whatever comes there. With
two coaxes swapped a receiver tunes to the right frequency of the wrong plane, and finds another programme or none. The
connectors have the same names at both: vl, vh, hl and hh. Join like with like.`,
  source: 'EN 61319-1: 13 V vertical, 18 V horizontal, 22 kHz the high band; from memory',
  check({ plan, site }: RuleContext, report: Report): void {
    const astray: Astray[] = [];
    for (const run of plan.television.runs) {
      for (const [from, to] of [
        [run.a, run.b],
        [run.b, run.a],
      ] as const) {
        const { device } = from;
        if (device.kind !== 'lnb' || device.aerial?.lnb !== 'quattro' || to.device.kind !== 'multiswitch') continue;
        if (from.name !== to.name && from.name in PLANES && to.name in PLANES) astray.push({ run, from, to });
      }
    }
    for (const all of grouped(astray, ({ to }) => to.device).values()) {
      const [one, ...others] = all;
      const pair = others.find((each) => each.from.name === one?.to.name && each.to.name === one.from.name);
      if (one !== undefined) report(findingOf(site, one, { others, pair: others.length === 1 ? pair : undefined }));
    }
  },
};

/** A coax from a plane to another. */
interface Astray {
  readonly run: CoaxRun;
  readonly from: Connector;
  readonly to: Connector;
}

/** The finding for all such coaxes at one multiswitch; `pair` where just two are swapped. */
function findingOf(
  site: Site,
  one: Astray,
  { others, pair }: { readonly others: readonly Astray[]; readonly pair: Astray | undefined },
): Finding {
  const words = ({ from, to }: Astray): string => `${nameOf(from)} leads to ${nameOf(to)}`;
  const asked = PLANES[one.to.name] ?? one.to.name;
  const got = PLANES[one.from.name] ?? one.from.name;
  const todo = pair === undefined ? 'Join like with like' : 'Swap the two coaxes';
  const all = [one, ...others];
  return {
    at: placeOfEnd(site, one),
    message: `${list(all.map(words))}: who asks for ${asked} gets ${got}${pair === undefined ? '' : ', and the other way round'}. ${todo}.`,
    acceptAt: [...new Set(all.flatMap(({ from, to }) => [nameOf(from), nameOf(to), from.device.name, to.device.name]))],
    related: others.map((other) => ({ at: placeOfEnd(site, other), message: words(other) })),
    fixes: () => (pair === undefined ? [] : swapped(site, one, pair)),
  };
}

function nameOf({ device, name }: Connector): string {
  return `${device.name}/${name}`;
}

function endAt(site: Site, { run: { cable }, to }: Astray): CableEnd | undefined {
  return connectorAt(site, cable.from) === to ? cable.from : cable.to;
}

function placeOfEnd(site: Site, astray: Astray): ReturnType<typeof placeOf> {
  return placeOf(astray.run.cable.item, endAt(site, astray)?.keyPath ?? []);
}

function swapped(site: Site, one: Astray, other: Astray): Fix[] {
  const [first, second] = [endAt(site, one), endAt(site, other)];
  if (first === undefined || second === undefined) return [];
  const text = (end: CableEnd): string => scalarText(endName(end), true);
  return [
    {
      title: `Swap ${endName(first)} and ${endName(second)}`,
      safe: false,
      edits: [
        setValue(one.run.cable.item, first.keyPath, text(second)),
        setValue(other.run.cable.item, second.keyPath, text(first)),
      ],
    },
  ];
}

const DEVICES = `devices:
  dish: {kind: lnb, type: quattro}
  house-switch: {kind: multiswitch, ways: 4}
`;

export const examples: readonly Example[] = [
  {
    bad: `
${DEVICES}cables:
  - {from: dish/vl, to: house-switch/vl, type: coax-6, length: 8 m}
  - {from: dish/vh, to: house-switch/hl, type: coax-6, length: 8 m}
#                       ^^^^^^^^^^^^^^^ dish/vh leads to house-switch/hl and dish/hl leads to house-switch/vh
  - {from: dish/hl, to: house-switch/vh, type: coax-6, length: 8 m}
  - {from: dish/hh, to: house-switch/hh, type: coax-6, length: 8 m}
`,
    fixed: `
${DEVICES}cables:
  - {from: dish/vl, to: house-switch/vl, type: coax-6, length: 8 m}
  - {from: dish/vh, to: house-switch/vh, type: coax-6, length: 8 m}
  - {from: dish/hl, to: house-switch/hl, type: coax-6, length: 8 m}
  - {from: dish/hh, to: house-switch/hh, type: coax-6, length: 8 m}
`,
  },
];
