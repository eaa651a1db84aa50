/** Volumes, power over Ethernet and the air of access points. */

import type { Plan } from '../../plan.ts';
import { isRateKnown } from '../../site/media.ts';
import { bitRate, bytes, days, watts } from '../../text/words.ts';
import { isSizeKnown, sizeWords } from '../answer/storage.ts';
import { shareWords } from '../answer/words.ts';
import { WHOLE, boundsOf } from '../bounds.ts';
import { type Cell, type Naming, type Row, figure, shareCell, signWords, table } from './cells.ts';

export function volumesSection({ site, storage }: Plan, naming: Naming): string {
  const bounds = boundsOf(site.policies.volumeFill);
  return table({
    title: 'Volumes',
    note: `Full after: with nothing deleted. ${signWords(bounds)}`,
    head: ['Volume', 'Usable', 'A day', 'Kept', 'Of the volume', 'Full after'],
    rows: storage.volumes.flatMap(
      ({ volume, usableBytes, bytesPerDay, bytesKept, daysUntilFull, recordings }): Row[] => {
        const isKnown = recordings.every(({ recording }) => isSizeKnown(site, recording));
        const isKept = isKnown && recordings.every(({ recording }) => recording.keep !== undefined);
        const share = (kept: number | undefined): number | undefined =>
          usableBytes === undefined || usableBytes === 0 || kept === undefined ? undefined : kept / usableBytes;
        return [
          {
            cells: [
              { html: naming({ names: 'volumes', name: volume.name }) },
              figure(usableBytes === undefined ? '?' : bytes(usableBytes)),
              figure(sizeWords(bytesPerDay, isKnown)),
              figure(sizeWords(bytesKept, isKept)),
              shareCell(share(bytesKept), bounds, isKept),
              figure(
                recordings.length === 0 ? 'never' : daysUntilFull === undefined || !isKnown ? '?' : days(daysUntilFull),
              ),
            ],
          },
          ...recordings.map(({ recording, bytesPerDay: daily, bytesKept: own }): Row => {
            const isOwnKnown = isSizeKnown(site, recording);
            return {
              cells: [
                { html: naming({ names: 'recordings', name: recording.name }) },
                figure(''),
                figure(sizeWords(daily, isOwnKnown)),
                figure(own === undefined ? 'all' : sizeWords(own, isOwnKnown)),
                figure(own === undefined ? '?' : shareWords(own, usableBytes ?? 0, isOwnKnown)),
                figure(''),
              ],
              part: true,
            };
          }),
        ];
      },
    ),
  });
}

export function poeSection({ poe }: Plan, naming: Naming): string {
  return table({
    title: 'Power over Ethernet',
    note: 'What each switch sets aside for the devices that it feeds. ▲ over the budget.',
    head: ['Switch', 'Draw', 'Budget', 'Of the budget'],
    rows: poe.map(({ device, budget, allotted }) => ({
      cells: [
        { html: naming({ names: 'devices', name: device.name }) },
        figure(watts(allotted)),
        figure(budget === undefined ? '?' : watts(budget)),
        shareCell(budget === undefined || budget === 0 ? undefined : allotted / budget, WHOLE),
      ],
    })),
  });
}

export function airSection({ air, site }: Plan, naming: Naming): string {
  const bounds = boundsOf(site.policies.airtime);
  return table({
    title: 'Air',
    note: `The share of its time that an access point sends groups, at its basic rate. ${signWords(bounds)}`,
    head: ['Access point', 'Sent at', 'Nominal', 'Peak'],
    rows: air.flatMap(({ device, share, streams }): Row[] => {
      const isKnown = (own: typeof streams): boolean => own.every(({ stream }) => isRateKnown(site, stream));
      const part = (value: number, known: boolean): Cell => figure(shareWords(value, 1, known));
      return [
        {
          cells: [
            { html: naming({ names: 'devices', name: device.name }) },
            figure(bitRate(device.basicRate)),
            part(share.nominal, isKnown(streams)),
            shareCell(share.peak, bounds, isKnown(streams)),
          ],
        },
        ...streams.map((own) => ({
          cells: [
            { html: naming({ names: 'streams', name: own.stream.name }) },
            figure(''),
            part(own.share.nominal, isKnown([own])),
            part(own.share.peak, isKnown([own])),
          ],
          part: true,
        })),
      ];
    }),
  });
}
