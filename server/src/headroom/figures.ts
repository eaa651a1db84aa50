/** The sums of a plan that must not exceed a limit, compared as the rules do. */

import { oppositePort } from '../network/link.ts';
import { groupTables } from '../network/group-tables.ts';
import { sharesOf } from '../network/shares.ts';
import { uplinksOf } from '../network/uplinks.ts';
import type { Plan } from '../plan.ts';
import { portName } from '../site/model.ts';
import { bitRate, byteRate, bytes, threshold, voltAmperes, watts, asName } from '../text/words.ts';

export interface LimitFigure {
  readonly limit: 'power' | 'link' | 'volume' | 'write' | 'groups';
  readonly at: string;
  /** bit/s at peak, bytes, bytes/s at peak, mW or mVA, groups, or a share of the air. */
  readonly amount: number;
  /** The limit in the same unit; `undefined` where it is not known. */
  readonly most: number | undefined;
  /** Whether the amount is a share of the air. */
  readonly isAir?: boolean;
  /** What stops further growth, in words. */
  readonly words: string;
}

/** The figures by names that stay the same with more cameras. */
export function figuresOf(plan: Plan): ReadonlyMap<string, LimitFigure> {
  return new Map([
    ...links(plan),
    ...lines(plan),
    ...airs(plan),
    ...volumes(plan),
    ...power(plan),
    ...upses(plan),
    ...tables(plan),
  ]);
}

type Named = readonly [string, LimitFigure];

function links({ site, network }: Plan): Named[] {
  const { limit } = site.policies.linkLoad;
  return network.topology.links.flatMap((link) => {
    const { capacity, members } = link;
    return [link.a, link.b].flatMap((out): Named[] => {
      const at = `${portName(out)} → ${portName(oppositePort(link, out))}`;
      const most = capacity === undefined || capacity === 0 ? undefined : (limit * capacity) / 10_000;
      const words = `${at} reaches ${threshold(limit)} of ${bitRate(capacity ?? 0)}`;
      const whole: Named = [at, { limit: 'link', at, amount: network.load(link, out).line.peak, most, words }];
      const shares = most === undefined ? undefined : sharesOf(network, link, out);
      if (shares === undefined || most === undefined || capacity === undefined) return [whole];
      const cable = `one cable of ${at}`;
      const share = most / members.length;
      return [
        whole,
        [
          cable,
          {
            limit: 'link',
            at: cable,
            amount: shares.least,
            most: share,
            words: `${cable} reaches ${threshold(limit)} of ${bitRate(capacity / members.length)}`,
          },
        ],
      ];
    });
  });
}

/** Lines to the Internet. */
function lines({ site, network }: Plan): Named[] {
  const { limit } = site.policies.linkLoad;
  return uplinksOf(site.devices, network).flatMap(({ device, up, down }) =>
    [up, down].map(({ way, rate, load }): Named => {
      const at = `${device.name} ${way}`;
      const words = `${at} reaches ${threshold(limit)} of ${bitRate(rate ?? 0)}`;
      return [at, { limit: 'link', at, amount: load.peak, most: rate && (limit * rate) / 10_000, words }];
    }),
  );
}

/** Cells of access points that groups come to. */
function airs({ site, air }: Plan): Named[] {
  const { limit } = site.policies.airtime;
  return air.map(({ device, share }): Named => {
    const at = `the air of ${asName(device.name)}`;
    const words = `groups take ${threshold(limit)} of ${at}`;
    return [at, { limit: 'link', at, amount: share.peak, most: limit / 10_000, words, isAir: true }];
  });
}

function volumes({ site, storage }: Plan): Named[] {
  const { limit } = site.policies.volumeFill;
  return storage.volumes.flatMap(({ volume: { name, sustainedWrite }, usableBytes, bytesKept, writeRate }): Named[] => {
    const full = usableBytes === undefined || usableBytes === 0 ? undefined : (usableBytes / 10_000) * limit;
    const fast = sustainedWrite === 0 ? undefined : sustainedWrite;
    return [
      [
        `${name} kept`,
        {
          limit: 'volume',
          at: name,
          amount: bytesKept,
          most: full,
          words: `${asName(name)} reaches ${threshold(limit)} of ${bytes(usableBytes ?? 0)}`,
        },
      ],
      [
        `${name} written`,
        {
          limit: 'write',
          at: name,
          amount: writeRate.peak,
          most: fast,
          words: `${asName(name)} writes ${byteRate(sustainedWrite ?? 0)} at most`,
        },
      ],
    ];
  });
}

/** The watts and the volt-amperes of each UPS. */
function upses({ site, supply }: Plan): Named[] {
  if (!site.devices.some(({ ups }) => ups !== undefined)) return [];
  return supply().upses.flatMap(({ device: { name }, ups: { ratedPower, rated }, load, apparent }): Named[] => {
    const gives = (what: string, amount: number, most: number | undefined, words: string): Named[] =>
      most === undefined ? [] : [[`${name} ${what}`, { limit: 'power', at: name, amount, most, words }]];
    return [
      ...gives('load', load, ratedPower, `${asName(name)} gives ${watts(ratedPower ?? 0)} at most`),
      ...gives('apparent', apparent, rated, `${asName(name)} gives ${voltAmperes(rated ?? 0)} at most`),
    ];
  });
}

/** The group tables of switches that declare their size. */
function tables({ site, network }: Plan): Named[] {
  return [...groupTables(site, network)].map(([{ name, groupTable: most }, amount]): Named => {
    const words = `${asName(name)} keeps ${most ?? '?'} groups apart`;
    return [`${name} groups`, { limit: 'groups', at: name, amount, most, words }];
  });
}

function power({ poe }: Plan): Named[] {
  return poe.map(({ device: { name }, budget, allotted }): Named => {
    const words = `${asName(name)} feeds ${watts(budget ?? 0)} at most`;
    return [`${name} power`, { limit: 'power', at: name, amount: allotted, most: budget, words }];
  });
}
