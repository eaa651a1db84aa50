/** Lines above a stream: who gets it, and how many more like it would fit; above an outlet the weakest multiplex. */

import { headroomWords, streamHeadrooms } from '../report/headroom.ts';
import { count, few } from '../text/words.ts';
import type { Checked } from '../lint/check.ts';
import type { SiteText } from '../site/folder.ts';
import { type Item, type Place, contentOf, headOf } from '../site/item.ts';
import { decibels, level } from '../text/radio-words.ts';
import type { Stream } from '../site/model.ts';

export interface Lens {
  readonly at: Place;
  readonly title: string;
}

export function lenses(checked: Checked, file: SiteText): Lens[] {
  const { site } = checked.plan;
  const headrooms = streamHeadrooms(checked.plan);
  return file.cut.pieces
    .flatMap((piece) => contentOf(piece).items)
    .flatMap((item) => {
      if (item.section === 'devices') return outlet(checked, item);
      if (item.section !== 'streams') return [];
      const stream = site.streamByName.get(item.name);
      if (stream?.item !== item) return [];
      const limit = headrooms.get(stream);
      return [
        { at: headOf(item), title: receivers(checked, stream) },
        ...(limit === undefined ? [] : [{ at: headOf(item), title: headroomWords(limit) }]),
      ];
    });
}

/** Above an outlet its weakest multiplex. */
function outlet({ plan: { television, site } }: Checked, item: Item): Lens[] {
  const device = site.deviceByName.get(item.name);
  if (device?.kind !== 'outlet' || device.item !== item) return [];
  const points = television.reception.outlets.find(({ at }) => at.device === device)?.points ?? [];
  const [weakest] = [...points].sort((a, b) => (a.margin ?? Infinity) - (b.margin ?? Infinity));
  if (weakest?.margin === undefined) return [];
  const { multiplex, level: here } = weakest.signal;
  return [{ at: headOf(item), title: `weakest ${multiplex.name} ${level(here)}, margin ${decibels(weakest.margin)}` }];
}

function receivers({ plan }: Checked, stream: Stream): string {
  const { reaches, unreached } = plan.network.delivery(stream);
  const without =
    unreached.length === 0
      ? ''
      : `; ${few(unreached.map(({ receiver }) => receiver))} ${unreached.length === 1 ? 'gets' : 'get'} nothing`;
  return reaches.length === 0
    ? `reaches nobody${without}`
    : `${count(reaches.length, 'receiver')}: ${few(reaches)}${without}`;
}
